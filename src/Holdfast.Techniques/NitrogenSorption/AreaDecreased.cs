using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>"The surface area of the doped powder is lower than that of its parent": the difference of the BET areas, fit, window, mass and portions included.</summary>
/// <remarks>
/// Two-sided 95 % interval of the difference, degrees of freedom after Welch and Satterthwaite over all sources. Both areas come from the same rule for the window. Single runs
/// count with 3 % at least (common practice), and cannot show it: analysts of the very same isotherms have differed more (J. W. M. Osterrieth et al., Adv. Mater. 34
/// (2022) 2201502, abstract).
/// </remarks>
internal sealed class AreaDecreased : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separately degassed portions of each powder.</summary>
        public const int Portions = 2;

        /// <summary>Smallest relative standard uncertainty of an area from one portion; no unit.</summary>
        public const double OfOne = 0.03;
    }

    private static readonly string[] OfParents = ["parent", "undoped", "pristine", "bare", "unmodified", "before"];

    /// <inheritdoc/>
    public string Id => "area-decreased";

    /// <inheritdoc/>
    public string Wording => "The surface area of {powder} is lower than that of {parent}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("powder", "powder whose area is claimed to be lower", "HAp-Eu 5 %", null),
        new("parent", "powder it is compared with", "HAp parent", null),
        new("added", "mass share of what was added to the parent, to compare per gram of parent", "5 %", "%"),
        new("no-matter", "difference too small to matter, fixed before the data were seen", "5 m2/g", "m2/g"),
    ];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
    {
        var powders = SorptionStudy.Of(evidence).Powders.Where(p => p.Area is not null).ToArray();
        // Only a name can say which of two powders came first.
        return powders.Where(p => IsParent(p.Name)).SelectMany(parent => powders.Where(p => !IsParent(p.Name) && (powders.Length == 2 || Words(p.Name).Intersect(Words(parent.Name)).Any()))
            .Select(p => Claim.Raised(Id, ("powder", p.Name), ("parent", parent.Name))));
    }

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var study = SorptionStudy.Of(evidence);
        var (powder, parent) = (study.Powder(claim.Words("powder")), study.Powder(claim.Words("parent")));
        var sentence = Phrase.Sentence(claim, Wording, ("powder", powder?.Name ?? claim.Words("powder") ?? "no powder"), ("parent", parent?.Name ?? claim.Words("parent") ?? "no powder"));
        var data = new[] { powder, parent }.OfType<SorptionPowder>().SelectMany(p => p.Isotherms).Select(i => i.Measurement.Id).ToArray();
        return Decided(claim, powder, parent).On(claim, sentence, Scope(powder, parent), data);
    }

    private static Decision Decided(Claim claim, SorptionPowder? powder, SorptionPowder? parent)
    {
        foreach (var (name, one) in new[] { ("powder", powder), ("parent", parent) })
        {
            if (claim.Words(name) is null)
                return Decision.NotNamed(claim, name, "HAp-Eu 5 %");
            if (one is null)
                return Decision.Missing($"There is no isotherm of {claim.Words(name)}. Take one in, or correct the name.", Next(Replication.WithoutPilot));
            if (one.Area is null)
                return Decision.Missing($"No isotherm of {one.Name} gives an area: {one.Isotherms[0].Refused?.Sentence ?? one.Isotherms[0].Bet?.Findings.FirstOrDefault(f => f.Weight == Weight.Stop)?.Sentence ?? "no window is consistent."}", Next(Replication.WithoutPilot));
        }

        double? share = claim.Words("added") is null ? 0 : claim.In("added", "%") / 100;
        if (share is not (>= 0 and < 1))
            return Decision.NotNamed(claim, "added", "5 %");
        var added = share.Value;
        var of = WithFloor(powder!);
        return Decide(of with { Value = of.Value / (1 - added), StandardError = of.StandardError / (1 - added) }, WithFloor(parent!), SameOutgassing(powder!, parent!), MassesKnown(powder!, parent!), claim.In("no-matter", "m2/g"), added);
    }

    /// <summary>Judges two areas.</summary>
    /// <param name="powder">Area of the powder, m²/g, per gram of parent where something was added.</param>
    /// <param name="parent">Area of the parent, m²/g.</param>
    /// <param name="sameOutgassing">Whether both were degassed alike; null where it is not recorded.</param>
    /// <param name="massesKnown">Whether the mass of every portion is recorded.</param>
    /// <param name="noMatter">Difference too small to matter, m²/g; null for none.</param>
    /// <param name="added">Mass share of what was added, 0 to 1; no unit.</param>
    public static Decision Decide(Estimate powder, Estimate parent, bool? sameOutgassing, bool massesKnown, double? noMatter, double added)
    {
        ArgumentNullException.ThrowIfNull(powder);
        ArgumentNullException.ThrowIfNull(parent);
        double vp = powder.StandardError * powder.StandardError, vq = parent.StandardError * parent.StandardError;
        var difference = new Estimate("difference of BET areas, every source counted", powder.Value - parent.Value, Math.Sqrt(vp + vq),
            WelchSatterthwaite.Of((vp, powder.DegreesOfFreedom), (vq, parent.DegreesOfFreedom)), powder.N + parent.N);
        var interval = difference.Interval();
        var inside = noMatter is { } band && interval.Low > -band && interval.High < band;
        var fewest = Math.Min(powder.N, parent.N);
        var perParent = added > 0 ? " per gram of parent" : "";
        return new Decision(
            inside || interval.Low > 0 ? Ruling.Contradicted : interval.High < 0 ? Ruling.Holds : Ruling.NotShownYet,
            $"The area{perParent} is {Phrase.With(powder.Value, "m2/g")} against {Phrase.With(parent.Value, "m2/g")}; the difference is {Phrase.With(difference.Value, "m2/g")}, {Phrase.Interval(interval, "m2/g")} "
                + $"({Phrase.Number(difference.DegreesOfFreedom)} degrees of freedom)" + (inside ? $", inside ± {Phrase.With(noMatter!.Value, "m2/g")}, which was said not to matter." : "."),
            "two-sided 95 % interval of the difference of BET areas")
        {
            Numbers =
            [
                Deciding.Of("area of the powder" + perParent, powder, 0.95, "m2/g"), Deciding.Of("area of the parent", parent, 0.95, "m2/g"), Deciding.Of("difference of the areas", difference, 0.95, "m2/g"),
            ],
            Gates =
            [
                new("portions", fewest >= Limits.Portions, $"{Phrase.Count(fewest, "portion")} of each powder at least {(fewest == 1 ? "was" : "were")} measured; {Phrase.Number(Limits.Portions)}, degassed separately, are needed"),
                new("outgassing", sameOutgassing == true, sameOutgassing is null ? "how the powders were degassed is not recorded for both" : sameOutgassing.Value ? "both were degassed alike" : "the powders were not degassed alike"),
                new("mass", massesKnown, massesKnown ? "every portion was weighed" : "the mass of a portion is not recorded"),
            ],
            Warnings = added == 0 ? ["A lower area per gram may only be the mass that was added: state the share added to compare per gram of parent."] : [],
            Questions =
            [
                .. fewest == 1 ? [new Question("Q07", "Weigh and run it again: by how much do your two results differ?")] : Array.Empty<Question>(),
                .. interval.Contains(0) ? [new Question("Q08", "If the area did not change, which of your explanations of the capacity survives?")] : Array.Empty<Question>(),
            ],
            Next = Next(fewest >= Limits.Portions && difference.Value != 0 ? Replication.TwoMeans(difference.Value, difference.StandardError * Math.Sqrt(fewest / 2.0), difference.DegreesOfFreedom) : Replication.WithoutPilot),
        };
    }

    // One run says nothing of the next: its uncertainty is 3 % at least.
    private static Estimate WithFloor(SorptionPowder powder)
        => powder.Estimate! is { N: 1 } one ? one.AtLeast(Limits.OfOne * one.Value) : powder.Estimate!;

    private static bool? SameOutgassing(SorptionPowder a, SorptionPowder b)
    {
        string?[] said = [.. a.WithArea.Concat(b.WithArea).Select(i => i.Degassing).Distinct(StringComparer.OrdinalIgnoreCase)];
        return said.Contains(null) ? null : said.Length == 1;
    }

    private static bool MassesKnown(SorptionPowder a, SorptionPowder b) => a.WithArea.Concat(b.WithArea).All(i => i.Mass is not null);

    private static string? Scope(SorptionPowder? powder, SorptionPowder? parent)
        => powder is null || parent is null || powder.WithArea.IsEmpty ? null
            : $"nitrogen at 77 K, degassed {powder.WithArea[0].Degassing ?? "as not recorded"}; {Phrase.Count(powder.WithArea.Length, "portion")} of {powder.Name}, {Phrase.Number(parent.WithArea.Length)} of {parent.Name}; these batches";

    private static IEnumerable<string> Words(string name) => name.ToLowerInvariant().Split([' ', '-', '_', '(', ')', ','], StringSplitOptions.RemoveEmptyEntries).Where(w => !OfParents.Contains(w) && w != "doped" && w.Any(char.IsLetter));

    private static bool IsParent(string name) => Array.Exists(OfParents, w => name.Contains(w, StringComparison.OrdinalIgnoreCase)) && !(name.Contains("doped", StringComparison.OrdinalIgnoreCase) && !name.Contains("undoped", StringComparison.OrdinalIgnoreCase));

    private static NextExperiment Next(Replication size) => new(
        $"Degas {Phrase.Count(Math.Max(size.N, Limits.Portions), "separate portion")} of each powder by the same programme, weigh each after degassing, and measure the adsorption branch up to p/p0 0.5.",
        null, [], size.Basis);
}
