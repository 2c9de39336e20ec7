using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>"The mass balance closes": what is found in the loaded solid agrees with what left the water, within 90 to 110 %.</summary>
/// <remarks>
/// Ratio of the mean uptake found in the solid to the mean uptake by difference, first-order standard error, degrees of freedom of the smaller
/// group: the cautious choice where three portions stand against three vessels. Vessels are those of the series compared, at the start
/// concentration of the loaded solid.
/// </remarks>
public sealed class MassBalance : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;

        /// <summary>Share found below which an examiner asks for the rest; no unit.</summary>
        public const double AskedBelow = 0.95;
    }

    /// <inheritdoc/>
    public string Id => "mass-balance";

    /// <inheritdoc/>
    public string Wording => "The mass balance closes.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series", "against", "c0"];

    /// <inheritdoc/>
    public bool CapsDependents => false;

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Vessels.Any(v => v.Sample.Number(BatchProperties.UptakeBySolid) is not null) ? [Claim.Raised(Id)] : [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => SeriesOf(claim, evidence) is { } s ? Grounds.OfConcentrations(evidence, ByDifference(claim, evidence, s)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var digests = Digests(claim, evidence);
        var vessels = SeriesOf(claim, evidence) is { } series ? ByDifference(claim, evidence, series) : [];
        var window = FixedMargin.Of(evidence, MarginKind.MassBalance);
        var solid = new Setting(0, [.. digests.Select(s => s.Number(BatchProperties.UptakeBySolid)).OfType<double>()]);
        var decision = solid.Values.IsEmpty
                ? Decision.Missing("No loaded solid was dissolved and read.", Digest(Limits.Replicates), new Question("Q39", "Who has ever seen the metal on your powder, in milligrams?"))
            : vessels.IsEmpty ? Decision.Missing("No vessels are named whose uptake by difference belongs to the dissolved solid. Name their series and start concentration.")
            : Decide(Setting.Of(0, vessels, v => v.Uptake), solid, window.Low / 100, window.High / 100);
        return (decision with { Warnings = [.. decision.Warnings, .. window.Notes] }).On(
            claim, Phrase.Sentence(claim, Wording), Scope.Of(vessels), vessels.Select(v => v.Code).Concat(digests.Select(d => d.Code)));
    }

    /// <summary>Judges the balance.</summary>
    /// <param name="byDifference">Uptakes in mg/g from what left the water.</param>
    /// <param name="inSolid">Uptakes in mg/g found in the solid.</param>
    /// <param name="low">Lower end of the window for the ratio (0.90); no unit.</param>
    /// <param name="high">Upper end of the window for the ratio (1.10); no unit.</param>
    public static Decision Decide(Setting byDifference, Setting inSolid, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(byDifference);
        ArgumentNullException.ThrowIfNull(inSolid);
        int vessels = byDifference.Values.Length, portions = inSolid.Values.Length;
        if (vessels == 0 || portions == 0 || Ratio.OfMeans(inSolid.Values, byDifference.Values, RatioFreedom.SmallerGroup).Value is not { } scatter)
            return Decision.Missing($"{Phrase.Count(portions, "dissolved portion")} and {Phrase.Count(vessels, "vessel")} give no scatter to judge by: three of each are needed.", Digest(Limits.Replicates));

        var ratio = LargerUncertainty.Of(scatter, inSolid.PropagatedMean is { } s && byDifference.PropagatedMean is { } d ? s / d : null);
        var size = Replication.EquivalenceToTarget(
            Math.Max(Math.Min(high - ratio.Value, ratio.Value - low), 0.01), ratio.StandardError * Math.Sqrt(Math.Min(vessels, portions)), ratio.DegreesOfFreedom);
        return new Decision(
            IntervalRuling.Within(ratio, low, high),
            $"The solid holds {Phrase.With(inSolid.Mean, "mg/g")}, the difference gives {Phrase.With(byDifference.Mean, "mg/g")}: ratio {Phrase.Number(ratio.Value)} "
                + $"({Phrase.Interval(ratio.Interval(0.90), "")}), window {Phrase.Span(low, high, "")}; n = {Phrase.Count(portions, "portion")} and {Phrase.Count(vessels, "vessel")}.",
            "ratio of means, two one-sided tests")
        {
            Numbers = [Deciding.Of("uptake in the solid over uptake by difference", ratio, 0.90, "")],
            Gates = [new("replicates", Math.Min(vessels, portions) >= Limits.Replicates, $"{Phrase.Count(portions, "dissolved portion")} and {Phrase.Count(vessels, "vessel")}; {Limits.Replicates} of each are needed")],
            Questions = ratio.Value < Limits.AskedBelow ? [new("Q40", $"Where are the missing {Phrase.With(100 * (1 - ratio.Value), "%")}?")] : [],
            Next = Digest(size.N) with { Basis = size.Basis },
        };
    }

    private static NextExperiment Digest(int n) => new(
        $"Dissolve {Phrase.Count(n, "loaded portion")}, rinse {Phrase.Count(n, "emptied vessel")} with 2 % acid, and read {Phrase.Count(n, "filter")} from metal solution without sorbent.",
        3 * n, [Phrase.Count(n, "digest"), Phrase.Count(n, "rinse"), Phrase.Count(n, "filter blank")], "three portions, three rinses, three filters (common practice)");

    private static ImmutableArray<Sample> Digests(Claim claim, Evidence evidence)
    {
        Sample[] all = [.. evidence.Study.Samples.Where(s => s.Number(BatchProperties.UptakeBySolid) is not null && !evidence.Study.IsStruck(s))];
        Sample[] named = [.. all.Where(s => string.Equals(s.Series, claim.Words("series"), StringComparison.OrdinalIgnoreCase))];
        return named.Length > 0 ? [.. named] : [.. all];
    }

    private static Series? SeriesOf(Claim claim, Evidence evidence)
        => claim.Words("against") is { } name ? evidence.SeriesNamed(name) : IsothermSeries.All(evidence).MaxBy(s => s.Levels.Length);

    private static ImmutableArray<Vessel> ByDifference(Claim claim, Evidence evidence, Series series)
    {
        var digests = Digests(claim, evidence);
        var start = claim.In("c0", "mg/L") ?? digests.Select(s => s.Number(BatchProperties.InitialConcentration)).FirstOrDefault(c => c is not null);
        return [.. series.Vessels.Where(v => start is not { } c
            ? series.Levels.Length == 1
            : Tolerances.SameStart(c, v.Sample.Number(BatchProperties.InitialConcentration) ?? v.Start?.Value ?? double.NegativeInfinity))];
    }
}
