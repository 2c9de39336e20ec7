using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The sorbent is stable in water": at each pH the one-sided 95 % bound of the dissolved share of every constituent that was read lies below 1 %, that of a
/// dopant with a limit below its limit, and that of the lost mass below 1 % where it was weighed.
/// </summary>
/// <remarks>
/// Dissolved share = concentration of the constituent times volume, over mass of powder times the constituent's mass fraction. The fraction comes from the
/// formula of the powder or is stated for the one constituent that was read. Scatter in proportion to the share, pooled over every pH that was tried, since two vessels alone do not know it;
/// a recorded reading uncertainty counts instead where it is larger. One-sided t bounds; 1 % is common practice.
/// </remarks>
public sealed class StableInWater : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>pH below which an examiner asks how much of the powder was left.</summary>
        public const double Acidic = 5;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 2;
    }

    /// <summary>Share of the constituent that may dissolve, %; common practice.</summary>
    public const double Tolerated = 1;

    private const string Mass = "mass";
    private const int Planned = 3;

    private static readonly Constituent[] Constituents =
        [.. StabilityProperties.Dissolved.Select(d => new Constituent(d.Symbol, d.Name, d.Property)), new(null, Mass, StabilityProperties.MassLoss)];

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "stable-in-water";

    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The powder is stable in water at pH {ph}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["formula", "fraction"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("dopant", "element with a limit of its own", "Eu", null), new("limit", "its limit in the water", "0.05 mg/L", "mg/L")];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var all = Read(evidence, null);
        var samples = Read(evidence, claim.Number("ph"));
        var unknown = claim.Words("ph") is not null && claim.Number("ph") is null;
        var sentence = unknown ? "The powder is stable in the water it was used in." : Phrase.Sentence(claim, Wording, ("ph", claim.Words("ph") ?? "of the study"));
        var read = Constituents.Where(c => samples.Any(s => s.Number(c.Property) is not null)).ToArray();
        var decision = unknown ? Decision.Unasked("The pH at which the powder was used was not recorded, so nothing is known of what dissolved there.")
            : read.Length == 0 ? Decision.Missing("No powder without metal was shaken at this pH and read for what it gives off. Shake three vessels of powder in the same water, and read a constituent of it.")
            : Together([.. read.Select(c => One(claim, c, samples, all, read.Count(r => r.Symbol is not null) == 1))], read.Length == 1 && read[0].Symbol is not null ? read[0].Name : null);
        return decision.On(claim, sentence, Where(samples, read), samples.Select(s => s.Code));
    }

    /// <summary>Judges what dissolved at each pH.</summary>
    /// <param name="levels">Dissolved share in % of separate vessels at each pH; for a dopant with a limit its concentration in the unit of the limit.</param>
    /// <param name="alike">The same at every pH tried, from which the scatter is pooled.</param>
    /// <param name="relativeU">Relative standard uncertainty of a single reading, or null when none was recorded; no unit.</param>
    /// <param name="constituent">What was read: "calcium"; "mass" for the lost mass.</param>
    /// <param name="limit">Limit of a dopant, mg/L; null to judge the share.</param>
    public static Decision Decide(IReadOnlyList<Setting> levels, IReadOnlyList<Setting> alike, double? relativeU, string constituent, double? limit = null)
    {
        var (tolerated, unit) = limit is { } stated ? (stated, "mg/L") : (Tolerated, "%");
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentNullException.ThrowIfNull(alike);
        var scatter = RelativeScatter(alike);
        var judged = scatter is not { } known ? [] : levels.Where(l => l.Values.Length >= Limits.Replicates).Select(l => (l.X, Share: Mean(l, known, relativeU))).ToArray();
        if (judged.Length == 0)
            return Decision.Missing($"One vessel at a pH shows no scatter: shake {Planned} separate vessels of powder at each pH.");
        var rulings = judged.Select(j => IntervalRuling.Below(j.Share, tolerated)).ToArray();
        var worst = judged.MaxBy(j => j.Share.Value);
        var fewest = levels.Min(l => l.Values.Length);
        return new Decision(IntervalRuling.All(rulings), Reason(worst.X, worst.Share, constituent, judged.Length, limit), limit is null ? "one-sided t bound of the dissolved share against 1 %" : "one-sided t bound of the dissolved dopant against its limit")
        {
            Numbers = [.. judged.Select(j => Deciding.Of($"{constituent} {(constituent == Mass ? "lost" : "dissolved")} at pH {Phrase.Number(j.X)}", j.Share, 0.90, unit))],
            Gates = [new("vessels", fewest >= Limits.Replicates, $"the fewest vessels at a pH are {Phrase.Number(fewest)}; {Limits.Replicates} are needed")],
            Warnings =
            [
                $"The scatter of a vessel, {Phrase.With(100 * scatter!.Value.Relative, "%")} of its share, is pooled over {Phrase.Number(scatter.Value.Levels)} pH.",
                .. relativeU is null ? [$"The {constituent} came without an uncertainty: what all vessels share, such as its standards, is in no bound."] : Array.Empty<string>(),
            ],
            Questions =
            [
                .. levels.Any(l => l.X < Limits.Acidic) ? [new Question("Q67", $"How much of your powder was left at pH {Phrase.Number(levels.Min(l => l.X))}?")] : Array.Empty<Question>(),
                new("Q68", "Did you measure ions or small particles? The filter's pores and the particles are not compared."),
            ],
            Next = new(
                $"Shake {Planned} vessels of powder in the same water{(judged.Length == 1 ? $" at pH {Phrase.Number(worst.X)}" : " at each pH")}; centrifuge half of each and pass the other half through a 20 nm filter, and compare.",
                Planned * judged.Length, [.. judged.Select(j => $"pH {Phrase.Number(j.X)}")], "three vessels per pH (common practice)"),
        };
    }

    private static string Reason(double ph, Estimate share, string constituent, int levels, double? limit)
    {
        var unit = limit is null ? "%" : "mg/L";
        var found = limit is null
            ? $"{Phrase.With(share.Value, "%")} of the powder's {constituent} {(constituent == Mass ? "is lost" : "dissolves")}"
            : $"the water holds {Phrase.With(share.Value, "mg/L")} of {constituent}";
        return $"{(levels > 1 ? "At the worst, at" : "At")} pH {Phrase.Number(ph)}, {found} (one-sided 95 % bounds {Phrase.Number(share.LowerBound())} and {Phrase.With(share.UpperBound(), unit)}, n = {Phrase.Count(share.N, "vessel")}); "
            + (limit is { } most ? $"its limit is {Phrase.With(most, "mg/L")}." : $"{Phrase.With(Tolerated, "%")} is tolerated.");
    }

    // A constituent is one that was read; the lost mass is judged as if it were one.
    private static Decision One(Claim claim, Constituent constituent, ImmutableArray<Sample> samples, ImmutableArray<Sample> all, bool alone)
    {
        var u = samples.Max(s => s.Fact(constituent.Property) is { U: { } spread, Value: > 0 and var value } ? spread / value : (double?)null);
        if (constituent.Symbol is not { } symbol)
            return Decide(Levels(samples, constituent, AsRead), Levels(all, constituent, AsRead), u, Mass);
        if (claim.In("limit", "mg/L") is > 0 and var limit && string.Equals(claim.Words("dopant"), symbol, StringComparison.OrdinalIgnoreCase))
            return Decide(Levels(samples, constituent, AsRead), Levels(all, constituent, AsRead), u, constituent.Name, limit);
        if (Fraction(claim, symbol, alone) is not { } fraction)
            return Decision.Missing($"The mass fraction of {constituent.Name} in the powder is not known. Name its formula (formula){(alone ? " or the fraction (fraction, 38.25 %)" : "")}.");
        return Decide(Shares(samples, constituent, fraction), Shares(all, constituent, fraction), u, constituent.Name);
    }

    // Every constituent must stay: one that dissolves contradicts the whole, one that is not judged leaves it open.
    private static Decision Together(Decision[] parts, string? alone)
    {
        if (parts is [var single])
            return alone is null ? single : single with { Warnings = [$"Judged on {alone} alone; another constituent may dissolve more.", .. single.Warnings] };
        var ruling = IntervalRuling.All(parts.Select(p => p.Gated));
        var worst = parts.First(p => p.Gated == ruling);
        return worst with
        {
            Ruling = ruling,
            Reason = string.Join(" ", parts.Where(p => p.Gated == ruling || p.Gated == Ruling.NotShownYet).Select(p => p.Reason)),
            Numbers = [.. parts.SelectMany(p => p.Numbers)],
            Gates = [.. parts.SelectMany(p => p.Gates).Distinct()],
            Warnings = [.. parts.SelectMany(p => p.Warnings).Distinct(StringComparer.Ordinal)],
            Questions = [.. parts.SelectMany(p => p.Questions).Distinct()],
        };
    }

    // Relative to the mean of its pH, so that vessels which lose much and little can be pooled.
    private static Scatter? RelativeScatter(IReadOnlyList<Setting> levels)
    {
        Setting[] repeated = [.. levels.Where(l => l.Values.Length >= Limits.Replicates && l.Mean > 0)];
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

    private static ImmutableArray<Setting> Shares(ImmutableArray<Sample> samples, Constituent constituent, double fraction)
        => Levels(
            [.. samples.Where(s => s.Number(BatchProperties.Volume) > 0 && s.Number(BatchProperties.Mass) > 0)], constituent,
            (found, sample) => 100 * found * sample.Number(BatchProperties.Volume)!.Value / 1000 / (sample.Number(BatchProperties.Mass)!.Value * fraction));

    private static double AsRead(double found, Sample sample) => found;

    private static ImmutableArray<Setting> Levels(ImmutableArray<Sample> samples, Constituent constituent, Func<double, Sample, double> value)
    {
        var levels = ImmutableArray.CreateBuilder<Setting>();
        foreach (var sample in samples.Where(s => s.Number(constituent.Property) is not null).OrderBy(Ph))
        {
            var shown = value(sample.Number(constituent.Property)!.Value, sample);
            if (levels.Count > 0 && Ph(sample) is { } ph && Tolerances.SamePh(ph, levels[^1].X))
                levels[^1] = levels[^1] with { Values = levels[^1].Values.Add(shown) };
            else
                levels.Add(new(Ph(sample)!.Value, [shown]));
        }

        return levels.ToImmutable();
    }

    private static ImmutableArray<Sample> Read(Evidence evidence, double? at)
        => [.. evidence.Study.Samples.Where(s => s.Role == SampleRole.SorbentBlank && !evidence.Study.IsStruck(s)
            && Array.Exists(Constituents, c => s.Number(c.Property) is not null) && Ph(s) is { } ph && (at is not { } wanted || Tolerances.SamePh(ph, wanted)))];

    private static double? Fraction(Claim claim, string symbol, bool alone)
    {
        if (claim.Words("formula") is { } words && Formula.Read(words).Value is { } formula && formula.Count(symbol) > 0)
            return formula.MassFraction(symbol).Value;
        return alone && claim.In("fraction", "%") is > 0 and <= 100 and var percent ? percent / 100 : null;
    }

    private static double? Ph(Sample sample) => sample.Number(BatchProperties.StartPh);

    private static string Where(ImmutableArray<Sample> samples, Constituent[] read)
        => samples.IsEmpty ? "" : $"start pH {Phrase.Span(samples.Min(s => Ph(s)!.Value), samples.Max(s => Ph(s)!.Value), "")}, judged on {Phrase.Listed(read.Select(c => c.Name))}; {Phrase.Count(samples.Length, "vessel")}";

    // What can be read: elements by their symbol, and the lost mass without one.
    private sealed record Constituent(string? Symbol, string Name, Property Property);

    private readonly record struct Scatter(double Relative, int Freedom, int Levels);
}
