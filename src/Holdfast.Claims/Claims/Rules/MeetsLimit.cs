using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.WaterLimits;

namespace Holdfast.Claims.Rules;

/// <summary>"Treated water meets the limit": the one-sided 95 % upper bound of the mean over vessels lies below it, and the method can see it.</summary>
/// <remarks>
/// Gates after Directive 2009/90/EC, Article 4: quantification at 30 % of the limit or below, expanded uncertainty (k = 2) of one result at
/// most half the limit. A limit that the method cannot see can neither be shown met nor shown missed by readings below quantification. The limit is a number
/// with its unit or the name of one that is listed ("EU drinking water").
/// </remarks>
public sealed class MeetsLimit : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;

        /// <summary>Largest share of the limit at which the method may quantify; no unit.</summary>
        public const double QuantificationShare = 0.3;

        /// <summary>Largest expanded uncertainty of one result as a share of the limit; no unit.</summary>
        public const double UncertaintyShare = 0.5;
    }

    /// <inheritdoc/>
    public string Id => "meets-limit";

    /// <inheritdoc/>
    public string Wording => "Treated water of {series} lies below {limit}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["water"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("limit", "limit, or the name of a listed one", "0.020 mg/L", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => VesselsOf(claim, evidence) is var vessels ? Grounds.OfConcentrations(evidence, vessels).Concat(Grounds.OfStability(evidence, vessels)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var vessels = VesselsOf(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("series", claim.Words("series") ?? claim.Words("water") ?? "any series"), ("limit", claim.Words("limit") ?? "the limit"));
        var found = Setting.Of(0, vessels, v => v.End?.Value);
        var (limit, named, unclear) = LimitOf(claim, evidence.Study.Analyte ?? "");
        var decision = found.Values.IsEmpty ? Decision.Missing("No treated water was read. Treat and read three vessels of the water that the limit is for.")
            : limit is not { } mgPerLitre ? unclear ?? Decision.NotNamed(claim, "limit", "0.020 mg/L")
            : NotReplicates(vessels) is { } apart ? Decision.Missing(apart)
            : Named(Decide(found, mgPerLitre, Highest(vessels, c => c.QuantificationLimit), Highest(vessels, c => c.DetectionLimit)), named);
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    // Cycles of one sorbent and levels of a series are different waters: their scatter is not that of one water treated several times.
    private static string? NotReplicates(ImmutableArray<Vessel> vessels)
    {
        var cycles = vessels.Select(v => v.Sample.Number(RegenerationProperties.Cycle)).OfType<double>().Distinct().Count();
        var starts = vessels.Select(v => v.Start?.Value).OfType<double>().ToArray();
        return cycles > 1 ? $"The vessels are {Phrase.Count(cycles, "cycle")} of one sorbent, not one water treated several times: judge each cycle as a series of its own."
            : starts.Length > 0 && !Tolerances.SameStart(starts.Max(), starts.Min()) ? $"The vessels started at {Phrase.Span(starts.Min(), starts.Max(), "mg/L")}: they are not one water treated several times."
            : null;
    }

    /// <summary>The limit of a claim in mg/L; the listed one where it was named; what is unclear where it names none or several.</summary>
    internal static (double? Limit, WaterLimit? Named, Decision? Unclear) LimitOf(Claim claim, string analyte)
    {
        if (claim.In("limit", "mg/L") is { } amount)
            return amount > 0 ? (amount, null, null) : (null, null, null);
        var listed = WaterLimit.Named(analyte, claim.Words("limit") ?? "");
        if (listed.Count == 1 && listed[0].Value is { } value)
            return (value, listed[0], null);
        return (null, null, listed.Count switch
        {
            0 => null,
            1 => Decision.Missing($"{listed[0].Name}: none is set{(listed[0].Note.Length > 0 ? $" ({listed[0].Note})" : "")}. Name another limit or give a number."),
            _ => Decision.Missing($"“{claim.Words("limit")}” fits several limits: {Phrase.Listed(listed.Select(l => l.Name))}. Name one."),
        });
    }

    private static Decision Named(Decision decision, WaterLimit? limit)
        => limit is null ? decision : decision with
        {
            Warnings =
            [
                .. decision.Warnings,
                $"{limit.Name}, {limit.Year.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {Phrase.With(limit.Value!.Value, "mg/L")}{(limit.Note.Length > 0 ? $" ({limit.Note})" : "")}; {limit.Status}.",
                $"{WaterLimit.Reservation} It covers this metal alone, not the water.",
            ],
        };

    /// <summary>Judges concentrations of treated water against a limit.</summary>
    /// <param name="found">Concentration in mg/L of each vessel; X is not used.</param>
    /// <param name="limit">The limit, mg/L.</param>
    /// <param name="quantification">Limit of quantification, mg/L, or null.</param>
    /// <param name="detection">Detection limit, mg/L, or null.</param>
    public static Decision Decide(Setting found, double limit, double? quantification, double? detection)
    {
        ArgumentNullException.ThrowIfNull(found);
        var n = found.Values.Length;
        if (LargerUncertainty.Mean(found) is not { } mean)
            return Decision.Missing($"{Phrase.Count(n, "vessel")} of treated water gives no scatter: treat and read {Limits.Replicates} separate vessels.", Sharper(limit, quantification, Replication.WithoutPilot));

        var one = Math.Max(Summary.Of(found.Values).Sd ?? 0, found.Propagated.Select(p => p.U).DefaultIfEmpty().Max());
        var below = detection is { } lod && found.Values.All(v => v < lod) ? "detection"
            : quantification is { } loq && found.Values.All(v => v < loq) ? "quantification"
            : null;
        var ruling = IntervalRuling.Below(mean, limit);
        if (below is not null && ruling == Ruling.Contradicted)
            ruling = Ruling.NotShownYet;
        var size = Replication.AgainstLimit(limit - mean.Value, mean.StandardError * Math.Sqrt(n), mean.DegreesOfFreedom);
        return new Decision(ruling, Reason(mean, limit, n, below, below == "detection" ? detection : quantification), "one-sided t bound of the mean against the limit, 5 %")
        {
            Numbers =
            [
                Deciding.Of("mean of treated water", mean, 0.90, "mg/L"),
                Deciding.Plain("one-sided 95 % lower bound", mean.LowerBound(), "mg/L"),
                Deciding.Plain("one-sided 95 % upper bound", mean.UpperBound(), "mg/L"),
                Deciding.Plain("limit", limit, "mg/L"),
                .. quantification is { } q ? [Deciding.Plain("limit of quantification", q, "mg/L")] : Array.Empty<Deciding>(),
                .. detection is { } d ? [Deciding.Plain("detection limit", d, "mg/L")] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("vessels", n >= Limits.Replicates, $"{Phrase.Count(n, "vessel")} of treated water; {Limits.Replicates} are needed"),
                new("quantification", quantification <= Limits.QuantificationShare * limit, quantification is { } l
                    ? $"the limit of quantification is {Phrase.With(l, "mg/L")}; at most {Phrase.With(Limits.QuantificationShare * limit, "mg/L")} can judge this limit"
                    : "the limit of quantification is not known: read ten reagent blanks"),
                new("uncertainty", 2 * one <= Limits.UncertaintyShare * limit, $"one result has an expanded uncertainty of {Phrase.With(2 * one, "mg/L")}; at most {Phrase.With(Limits.UncertaintyShare * limit, "mg/L")} can judge this limit"),
            ],
            Questions =
            [
                .. quantification > limit || detection > limit
                    ? [new Question("Q49", $"Your instrument quantifies from {Phrase.With(quantification ?? detection ?? 0, "mg/L")}: can it see a limit of {Phrase.With(limit, "mg/L")}?")]
                    : Array.Empty<Question>(),
                new("Q50", "What did the sorbent put into the water? No constituent of it was measured there."),
            ],
            Next = Sharper(limit, quantification, size),
        };
    }

    private static string Reason(Estimate mean, double limit, int n, string? below, double? threshold)
    {
        var blind = below is null ? "" : $" All {Phrase.Number(n)} readings lie below the {below} limit of {Phrase.With(threshold ?? 0, "mg/L")}.";
        return $"The mean is {Phrase.With(mean.Value, "mg/L")}, one-sided 95 % bounds {Phrase.Number(mean.LowerBound())} and {Phrase.With(mean.UpperBound(), "mg/L")}, "
            + $"n = {Phrase.Count(n, "vessel")}; the limit is {Phrase.With(limit, "mg/L")}.{blind}";
    }

    private static NextExperiment Sharper(double limit, double? quantification, Replication size)
        => quantification is { } loq && loq > Limits.QuantificationShare * limit
            ? new(
                $"Use a method that quantifies at {Phrase.With(Limits.QuantificationShare * limit, "mg/L")} (preconcentrate {Phrase.Number(Math.Ceiling(loq / (Limits.QuantificationShare * limit)))} times, or a more sensitive technique), then treat {Replication.WithoutPilot.Each("vessel")}.",
                Replication.WithoutPilot.N, [Phrase.With(limit, "mg/L")], "quantification at 30 % of the limit (Directive 2009/90/EC, Article 4)")
            : new($"Treat {size.Each("vessel")} of the same water.", size.N, [Phrase.With(limit, "mg/L")], size.Basis);

    private static double? Highest(IEnumerable<Vessel> vessels, Func<Concentration, double?> limit)
        => vessels.Select(v => v.End is { } c ? limit(c) : null).Max();

    private static ImmutableArray<Vessel> VesselsOf(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name ? [.. evidence.SeriesNamed(name)?.Vessels ?? []]
            : claim.Words("water") is { } water
                ? [.. evidence.Series.SelectMany(s => s.Vessels).Where(v => string.Equals(v.Sample.Words(SampleProperties.Matrix), water, StringComparison.OrdinalIgnoreCase))]
                : [];
}
