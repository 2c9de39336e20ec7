using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Porosity;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>"Mesopores of a stated size": a peak of the distribution there on the adsorption branch, of an isotherm that allows one.</summary>
/// <remarks>
/// By Kelvin's equation with the layer on the walls (Barrett, Joyner, Halenda 1951). A peak at 3.4 to 4.0 nm on desorption alone is the closing of the loop (from memory); 4V/A is an
/// average, no size.
/// </remarks>
internal sealed class PoreSize : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Largest relative distance of the size from the peak; no unit.</summary>
        public const double Within = 0.10;

        /// <summary>Smallest mesopore, nm (IUPAC; from memory).</summary>
        public const double SmallestMesopore = 2;

        /// <summary>Fewest points of both branches in the range of the loop, p/p0 0.42 to 0.985.</summary>
        public const int PointsInLoop = 15;

        /// <summary>Smallest share of the size by adsorption that desorption may show where a loop explains it; no unit.</summary>
        public const double LoopExplains = 0.5;

        /// <summary>p/p0 that the adsorption branch must reach; no unit.</summary>
        public const double ReachesX = 0.95;
    }

    /// <inheritdoc/>
    public string Id => "pore-size";

    /// <inheritdoc/>
    public string Wording => "{powder} has mesopores of {size}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("powder", "powder whose pores are meant", "HAp-Eu 5 %", null), new("size", "diameter of the pores", "11 nm", "nm")];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => SorptionStudy.Of(evidence).Powders.Select(p => (p.Name, Isotherm: Best(p))).Where(p => p.Isotherm is { Shape.IsMesoporous: true, ByAdsorption.Sizes.Mode: not null })
            .Select(p => Claim.Raised(Id, ("powder", p.Name), ("size", Phrase.Plain(Math.Round(p.Isotherm!.ByAdsorption!.Value.Sizes.Mode!.Value.Diameter, 1), "nm"))));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var powder = SorptionStudy.Of(evidence).Powder(claim.Words("powder"));
        var sentence = Phrase.Sentence(claim, Wording, ("powder", powder?.Name ?? claim.Words("powder") ?? "No powder"), ("size", claim.Words("size") ?? "no size"));
        var isotherm = powder is null ? null : Best(powder);
        var decision = claim.Words("powder") is null ? Decision.NotNamed(claim, "powder", "HAp-Eu 5 %")
            : claim.In("size", "nm") is not { } size ? Decision.NotNamed(claim, "size", "11 nm")
            : isotherm is null ? Decision.Missing($"There is no isotherm of {claim.Words("powder")}. Take one in, or correct the name.", Next())
            : Decide(size, Evidence(isotherm));
        return decision.On(claim, sentence, isotherm is null ? null : $"nitrogen at 77 K, adsorption branch, cylinders; {powder!.Name}, one portion of this batch", isotherm is null ? [] : [isotherm.Measurement.Id]);
    }

    /// <summary>Judges a size by what the branches show.</summary>
    /// <param name="size">Claimed diameter, nm.</param>
    /// <param name="seen">What the isotherm shows.</param>
    public static Decision Decide(double size, PoreEvidence seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        if (size < Limits.SmallestMesopore)
        {
            return new Decision(Ruling.Contradicted, $"{Phrase.With(size, "nm")} is a micropore (under {Phrase.With(Limits.SmallestMesopore, "nm")}): Kelvin's equation gives no size there.", "range of Kelvin's equation")
            {
                Numbers = [Deciding.Plain("claimed diameter", size, "nm")],
                Next = new NextExperiment("Measure argon at 87 K from p/p0 10⁻⁶ on, or give a micropore volume by the t-plot and no size.", null, [], "range of the method"),
            };
        }

        if (seen.Adsorption is not { } up)
        {
            return Decision.Missing(seen.Desorption is null ? "The isotherm has too few points above p/p0 0.42 for a distribution." : "Only the desorption branch gives a distribution: a peak there may be the closing of the loop.", Next(),
                seen.Desorption is { } only ? [new Question("Q09", $"Does the pore of {Phrase.With(only, "nm")} exist on the adsorption branch?")] : []);
        }

        var isThere = Near(size, up) || (size >= seen.StepFrom && size <= seen.StepTo);
        var onlyClosing = !isThere && seen.Desorption is >= PoreSizes.ClosureFrom and <= PoreSizes.ClosureTo and { } closing && Near(size, closing);
        // Condensation lags behind in open cylinders, and bottlenecks hold back on the way down: desorption then shows the smaller size, by up to a half.
        var isNear = seen.Desorption is { } beside && Near(beside, up);
        var agree = isNear || (seen is { Desorption: { } down, Loop: not null } && down < up && down >= Limits.LoopExplains * up);
        return new Decision(
            isThere ? Ruling.Holds : onlyClosing ? Ruling.Contradicted : Ruling.NotShownYet,
            $"On the adsorption branch the distribution peaks at {Phrase.With(up, "nm")} (step {Phrase.Span(seen.StepFrom, seen.StepTo, "nm")})"
                + (seen.Desorption is { } d ? $", on the desorption branch at {Phrase.With(d, "nm")}" : "")
                + (onlyClosing ? $". {Phrase.With(size, "nm")} stands on desorption alone, where the loop closes by cavitation." : $"; {Phrase.With(size, "nm")} is claimed."),
            $"peak of dV/dlog d within {Phrase.Number(100 * Limits.Within)} % or inside its step, adsorption branch")
        {
            Numbers = [Deciding.Plain("peak on adsorption", up, "nm"), .. seen.Desorption is { } other ? [Deciding.Plain("peak on desorption", other, "nm")] : Array.Empty<Deciding>(), Deciding.Plain("claimed diameter", size, "nm")],
            Gates =
            [
                new("type", seen.IsMesoporous, seen.IsMesoporous ? $"the isotherm is of type {seen.Type}" : $"the isotherm is {seen.Type}, no type IV, which Kelvin's equation needs"),
                new("top", seen.Top >= Limits.ReachesX, $"the adsorption branch ends at p/p0 {Phrase.Number(seen.Top)}; {Phrase.Number(Limits.ReachesX)} is needed"),
                new("points", seen.Points >= Limits.PointsInLoop, $"{Phrase.Count(seen.Points, "point")} lie in the range of the loop; {Phrase.Number(Limits.PointsInLoop)} are needed"),
                new("branches", agree, seen.Desorption is null ? "there is no desorption branch" : agree ? "the branches agree, or the loop explains the difference" : $"the branches differ by more than {Phrase.Number(100 * Limits.Within)} % and the loop does not explain it"),
                new("areas", seen.AreasAgree, seen.AreasAgree ? "the areas by pores and by BET agree" : $"the area of the pores and the BET area differ by more than {Phrase.Number(100 * PoreSizes.AreasAgreeWithin)} %"),
            ],
            Warnings = agree && !isNear ? [$"The size depends on the branch: {Phrase.With(up, "nm")} by adsorption, {Phrase.With(seen.Desorption!.Value, "nm")} by desorption. Name the branch with it."] : [],
            Questions =
            [
                .. seen.Desorption is >= PoreSizes.ClosureFrom and <= PoreSizes.ClosureTo ? [new Question("Q09", $"Does the pore of {Phrase.With(seen.Desorption.Value, "nm")} exist on the adsorption branch?")] : Array.Empty<Question>(),
                .. seen.Loop == "H3" ? [new Question("Q10", "Are these pores in the particle or spaces between particles, and does an ion care?")] : Array.Empty<Question>(),
            ],
            Next = Next(),
        };
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) <= Limits.Within * b;

    // The portion with most points in the loop speaks for the powder.
    private static SorptionIsotherm? Best(SorptionPowder powder) => powder.Isotherms.Where(i => i.Refused is null).OrderByDescending(Points).FirstOrDefault();

    private static int Points(SorptionIsotherm isotherm) => isotherm.Branches.Adsorption.Concat(isotherm.Branches.Desorption).Count(p => p.X is >= PoreSizes.LowestX and <= PoreSizes.HighestX);

    private static PoreEvidence Evidence(SorptionIsotherm isotherm)
    {
        var sizes = isotherm.ByAdsorption?.Sizes;
        var mode = sizes?.Mode;
        return new(mode?.Diameter, 2 * (mode?.SmallestRadius ?? 0), 2 * (mode?.LargestRadius ?? 0), isotherm.ByDesorption?.Mode?.Diameter, isotherm.Shape?.Type ?? "not classified", isotherm.Shape?.Loop,
            isotherm.Shape?.IsMesoporous == true, Points(isotherm), isotherm.Branches.Adsorption.IsEmpty ? 0 : isotherm.Branches.Adsorption[^1].X,
            isotherm.Bet?.Chosen is { } chosen && sizes is not null && Math.Abs(sizes.Area - chosen.Area) <= PoreSizes.AreasAgreeWithin * chosen.Area);
    }

    private static NextExperiment Next() => new("Measure the adsorption branch again with 10 further points between p/p0 0.35 and 0.9, and the desorption branch down to 0.3.", null, [], "points in the range of the loop");
}

/// <summary>What an isotherm shows of its pores.</summary>
/// <param name="Adsorption">Peak by the adsorption branch, nm; null without one.</param>
/// <param name="StepFrom">Lower end of the step of that peak, nm.</param>
/// <param name="StepTo">Upper end of it, nm.</param>
/// <param name="Desorption">Peak by the desorption branch, nm; null without one.</param>
/// <param name="Type">Type of the isotherm.</param>
/// <param name="Loop">Loop, or null.</param>
/// <param name="IsMesoporous">True for a type IV.</param>
/// <param name="Points">Points in the range of the loop, both branches.</param>
/// <param name="Top">Highest p/p0 of the adsorption branch; no unit.</param>
/// <param name="AreasAgree">True where the areas by pores and by BET agree.</param>
internal sealed record PoreEvidence(double? Adsorption, double StepFrom, double StepTo, double? Desorption, string Type, string? Loop, bool IsMesoporous, int Points, double Top, bool AreasAgree);
