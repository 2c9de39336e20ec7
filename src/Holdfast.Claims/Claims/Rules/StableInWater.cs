using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>"The sorbent is stable in water": at each pH the one-sided 95 % bound of the dissolved share of a constituent lies below 1 %.</summary>
/// <remarks>
/// Dissolved share = concentration of the constituent times volume, over mass of powder times the constituent's mass fraction. The fraction comes from the
/// formula of the powder or is stated. Scatter in proportion to the share, pooled over every pH that was tried, since two vessels alone do not know it;
/// a recorded reading uncertainty counts instead where it is larger. One-sided t bounds; 1 % is common practice.
/// </remarks>
public sealed class StableInWater : IClaimRule
{
    /// <summary>Share of the constituent that may dissolve, %; common practice.</summary>
    public const double Tolerated = 1;

    private const double SamePh = 0.25;
    private const double Acidic = 5;
    private const int Replicates = 2;
    private const int Planned = 3;

    /// <inheritdoc/>
    public string Id => "stable-in-water";

    /// <inheritdoc/>
    public string Wording => "The powder is stable in water at pH {ph}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["formula", "fraction"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var samples = Read(evidence, claim.Number("ph"));
        var sentence = Phrase.Sentence(claim, Wording, ("ph", claim.Words("ph") ?? "of the study"));
        var fraction = Fraction(claim);
        var decision = samples.IsEmpty ? Decision.Missing("No powder without metal was shaken at this pH and read for what it gives off. Shake three vessels of powder in the same water, and read a constituent of it.")
            : fraction is not { } share ? Decision.Missing("The mass fraction of calcium in the powder is not known. Name its formula (formula) or the fraction (fraction, 38.25 %).")
            : Decide(Levels(samples, share), Levels(Read(evidence, null), share), RelativeU(samples), "calcium");
        return decision.On(claim, sentence, Where(samples), samples.Select(s => s.Code));
    }

    /// <summary>Judges the dissolved share at each pH.</summary>
    /// <param name="levels">Dissolved share in % of separate vessels at each pH.</param>
    /// <param name="alike">The same at every pH tried, from which the scatter is pooled.</param>
    /// <param name="relativeU">Relative standard uncertainty of a single reading, or null when none was recorded; no unit.</param>
    /// <param name="constituent">What was read: "calcium".</param>
    public static Decision Decide(IReadOnlyList<Setting> levels, IReadOnlyList<Setting> alike, double? relativeU, string constituent)
    {
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentNullException.ThrowIfNull(alike);
        var scatter = RelativeScatter(alike);
        var judged = scatter is not { } known ? [] : levels.Where(l => l.Values.Length >= Replicates).Select(l => (l.X, Share: Mean(l, known, relativeU))).ToArray();
        if (judged.Length == 0)
            return Decision.Missing($"One vessel at a pH shows no scatter: shake {Planned} separate vessels of powder at each pH.");
        var rulings = judged.Select(j => IntervalRuling.Below(j.Share, Tolerated)).ToArray();
        var worst = judged.MaxBy(j => j.Share.Value);
        var fewest = levels.Min(l => l.Values.Length);
        return new Decision(IntervalRuling.All(rulings), Reason(worst.X, worst.Share, constituent, judged.Length), "one-sided t bound of the dissolved share against 1 %")
        {
            Numbers = [.. judged.Select(j => Deciding.Of($"{constituent} dissolved at pH {Phrase.Number(j.X)}", j.Share, 0.90, "%"))],
            Gates = [new("vessels", fewest >= Replicates, $"the fewest vessels at a pH are {Phrase.Number(fewest)}; {Replicates} are needed")],
            Warnings =
            [
                $"Judged on {constituent} alone; another constituent may dissolve more.",
                $"The scatter of a vessel, {Phrase.With(100 * scatter!.Value.Relative, "%")} of its share, is pooled over {Phrase.Number(scatter.Value.Levels)} pH.",
                .. relativeU is null ? [$"The {constituent} came without an uncertainty: what all vessels share, such as its standards, is in no bound."] : Array.Empty<string>(),
            ],
            Questions =
            [
                .. levels.Any(l => l.X < Acidic) ? [new Question("Q67", $"How much of your powder was left at pH {Phrase.Number(levels.Min(l => l.X))}?")] : Array.Empty<Question>(),
                new("Q68", "Did you measure ions or small particles? The filter's pores and the particles are not compared."),
            ],
            Next = new(
                $"Shake {Planned} vessels of powder in the same water{(judged.Length == 1 ? $" at pH {Phrase.Number(worst.X)}" : " at each pH")}; centrifuge half of each and pass the other half through a 20 nm filter, and compare.",
                Planned * judged.Length, [.. judged.Select(j => $"pH {Phrase.Number(j.X)}")], "three vessels per pH (common practice)"),
        };
    }

    private static string Reason(double ph, Estimate share, string constituent, int levels)
        => $"{(levels > 1 ? "At the worst, at" : "At")} pH {Phrase.Number(ph)}, {Phrase.With(share.Value, "%")} of the powder's {constituent} dissolves (one-sided 95 % bounds {Phrase.Number(share.LowerBound())} and {Phrase.With(share.UpperBound(), "%")}, n = {Phrase.Count(share.N, "vessel")}); {Phrase.With(Tolerated, "%")} is tolerated.";

    // Relative to the mean of its pH, so that vessels which lose much and little can be pooled.
    private static Scatter? RelativeScatter(IReadOnlyList<Setting> levels)
    {
        Setting[] repeated = [.. levels.Where(l => l.Values.Length >= Replicates && l.Mean > 0)];
        var freedom = repeated.Sum(l => l.Values.Length - 1);
        var squares = repeated.Sum(l => (l.Values.Length - 1) * Math.Pow(Summary.Of(l.Values).Sd!.Value / l.Mean, 2));
        return squares > 0 ? new(Math.Sqrt(squares / freedom), freedom, repeated.Length) : null;
    }

    private static Estimate Mean(Setting level, Scatter scatter, double? relativeU)
    {
        var n = level.Values.Length;
        var error = Math.Max(scatter.Relative, relativeU ?? 0) * Math.Abs(level.Mean) / Math.Sqrt(n);
        return new("mean, scatter pooled over pH", level.Mean, error, scatter.Freedom, n);
    }

    private static ImmutableArray<Setting> Levels(ImmutableArray<Sample> samples, double fraction)
    {
        var levels = ImmutableArray.CreateBuilder<Setting>();
        foreach (var sample in samples.OrderBy(Ph))
        {
            var share = 100 * Released(sample)!.Value * sample.Number(BatchProperties.Volume)!.Value / 1000 / (sample.Number(BatchProperties.Mass)!.Value * fraction);
            if (levels.Count > 0 && Ph(sample) - levels[^1].X <= SamePh)
                levels[^1] = levels[^1] with { Values = levels[^1].Values.Add(share) };
            else
                levels.Add(new(Ph(sample)!.Value, [share]));
        }

        return levels.ToImmutable();
    }

    private static ImmutableArray<Sample> Read(Evidence evidence, double? at)
        => [.. evidence.Study.Samples.Where(s => s.Role == SampleRole.SorbentBlank && !evidence.Study.IsStruck(s)
            && Released(s) is not null && Ph(s) is { } ph && (at is not { } wanted || Math.Abs(ph - wanted) <= SamePh)
            && s.Number(BatchProperties.Volume) > 0 && s.Number(BatchProperties.Mass) > 0)];

    private static double? Fraction(Claim claim)
    {
        if (claim.Words("formula") is { } words && Formula.Read(words).Value is { } formula && formula.Count("Ca") > 0)
            return formula.MassFraction("Ca").Value;
        return claim.In("fraction", "%") is > 0 and <= 100 and var percent ? percent / 100 : null;
    }

    private static double? Ph(Sample sample) => sample.Number(BatchProperties.StartPh);

    private static double? Released(Sample sample) => sample.Number(StabilityProperties.DissolvedCalcium);

    private static double? RelativeU(IEnumerable<Sample> samples)
        => samples.Max(s => s.Fact(StabilityProperties.DissolvedCalcium) is { U: { } u, Value: > 0 and var value } ? u / value : (double?)null);

    private static string Where(ImmutableArray<Sample> samples)
        => samples.IsEmpty ? "" : $"start pH {Phrase.Span(samples.Min(s => Ph(s)!.Value), samples.Max(s => Ph(s)!.Value), "")}, judged on calcium; {Phrase.Count(samples.Length, "vessel")}";

    private readonly record struct Scatter(double Relative, int Freedom, int Levels);
}
