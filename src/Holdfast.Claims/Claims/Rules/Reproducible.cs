using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The uptake is reproducible": independent batches agree. Vessels of one batch repeat a measurement; they say nothing about making the
/// powder again.
/// </summary>
/// <remarks>
/// Batches are compared at one setting by random effects. Every batch mean must lie within the margin of the grand mean (90 % interval from
/// the pooled scatter), and so must the sd of batch means at its one-sided 95 % upper bound: three batches know it by a factor of 4.4 only.
/// </remarks>
public sealed class Reproducible : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest batches.</summary>
        public const int Batches = 3;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;
    }

    /// <inheritdoc/>
    public string Id => "reproducible";

    /// <inheritdoc/>
    public string Wording => "The uptake is reproducible from batch to batch.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Series.SelectMany(s => s.Vessels).Select(v => v.Sample.Batch).OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1
            ? [Claim.Raised(Id)]
            : [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => Grounds.OfConcentrations(evidence, Compared(claim, evidence));

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var margin = FixedMargin.Of(evidence, MarginKind.Capacity);
        var vessels = Compared(claim, evidence);
        Group[] batches = [.. vessels.GroupBy(v => v.Sample.Batch ?? "not recorded", StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new Group(g.Key, Setting.Of(0, g, v => v.Uptake).Values))];
        var decision = Decide(batches, margin.High / 100);
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] })
            .On(claim, Phrase.Sentence(claim, Wording), Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges batches measured alike.</summary>
    /// <param name="batches">Uptakes in mg/g of the vessels of each batch.</param>
    /// <param name="margin">Largest difference that counts as none, as a share of the grand mean (0.10); no unit.</param>
    public static Decision Decide(IReadOnlyList<Group> batches, double margin)
    {
        ArgumentNullException.ThrowIfNull(batches);
        if (batches.Count < 2)
        {
            return Decision.Missing(
                "The vessels come from one batch: they repeat a measurement and say nothing about making the powder again.",
                MoreBatches(Limits.Batches - batches.Count), new Question("Q57", "How many times did you make it?"));
        }

        if (RandomEffects.Of(batches).Value is not { } effects || !(effects.BatchMeans.Mean > 0))
            return Decision.Missing($"The vessels of {batches.Count} batches give no scatter to judge by: {Limits.Replicates} vessels per batch are needed.", MoreBatches(1));

        var grand = effects.BatchMeans.Mean;
        var analysis = effects.Analysis;
        var off = batches.Select(b => (b.Name, Share: Off(b, grand, analysis))).ToArray();
        var farthest = off.MaxBy(o => Math.Abs(o.Share.Value));
        var upper = effects.BatchSdUpperBound() / grand;
        var within = off.All(o => o.Share.Interval(0.90).LiesWithin(-margin, margin)) && upper < margin;
        var ruling = within ? Ruling.Holds : off.Any(o => IntervalRuling.Within(o.Share, -margin, margin, off.Length) == Ruling.Contradicted) ? Ruling.Contradicted : Ruling.NotShownYet;
        return new Decision(
            ruling,
            $"The batch farthest off, {farthest.Name}, lies {Phrase.With(100 * farthest.Share.Value, "%")} from the mean of {Phrase.With(grand, "mg/g")}; batches differ with F = {Phrase.Number(analysis.F)}, {Phrase.P(analysis.P)}. "
                + $"The batch-to-batch standard deviation may reach {Phrase.With(100 * upper, "%")} (95 %), n = {batches.Count} batches; the margin is {Phrase.With(100 * margin, "%")}.",
            "one-way random effects; equivalence of each batch mean; chi-square upper bound of the sd of batch means")
        {
            Numbers =
            [
                Deciding.Plain("F between batches", analysis.F, "", $"{Phrase.Number(analysis.BetweenFreedom)} and {Phrase.Number(analysis.WithinFreedom)} degrees of freedom, {Phrase.P(analysis.P)}"),
                Deciding.Plain("standard deviation between batches", effects.BetweenSd, "mg/g"),
                Deciding.Plain("standard deviation between batches, share of the mean", 100 * effects.BetweenSd / grand, "%"),
                Deciding.Plain("one-sided 95 % upper bound of the sd of batch means, share of the mean", 100 * upper, "%"),
                .. off.Select(o => Deciding.Of($"{o.Name}: distance from the grand mean, share", o.Share, 0.90, "")),
            ],
            Gates =
            [
                new("batches", batches.Count >= Limits.Batches, $"{Phrase.Count(batches.Count, "batch", "batches")}; {Limits.Batches} are needed"),
                new("vessels per batch", batches.Min(b => b.Values.Count) >= Limits.Replicates, $"the fewest vessels of a batch are {Phrase.Number(batches.Min(b => b.Values.Count))}; {Limits.Replicates} are needed"),
            ],
            Questions = analysis.P < Confidence.Chance
                ? [new("Q58", $"Which step differs between batch {batches.MaxBy(b => b.Summary.Mean)!.Name} and batch {batches.MinBy(b => b.Summary.Mean)!.Name}?")]
                : [],
            Next = MoreBatches(Math.Max(2, Limits.Batches - batches.Count)),
        };
    }

    private static Estimate Off(Group batch, double grand, OneWay analysis) => new(
        "batch mean less grand mean, sd pooled over batches", (batch.Summary.Mean - grand) / grand,
        analysis.PooledSd / Math.Sqrt(batch.Values.Count) / grand, analysis.WithinFreedom, batch.Values.Count);

    private static NextExperiment MoreBatches(int n) => new(
        $"Make {Phrase.Count(Math.Max(1, n), "more batch", "more batches")} and run all batches together in one randomised day, {Limits.Replicates} vessels each.",
        Limits.Replicates * Math.Max(1, n), [], "three batches with three vessels each, the least that separates batch from vessel (common practice)");

    /// <summary>Vessels measured alike in most batches: of the named series (or all) those at the setting that most batches share.</summary>
    private static ImmutableArray<Vessel> Compared(Claim claim, Evidence evidence)
    {
        var series = claim.Words("series") is { } name ? evidence.Series.Where(s => s == evidence.SeriesNamed(name)) : evidence.Series;
        return [.. series
            .SelectMany(s => s.Vessels)
            .Where(v => v.Uptake is not null)
            .GroupBy(Conditions)
            .OrderByDescending(g => g.Select(v => v.Sample.Batch).Distinct(StringComparer.Ordinal).Count())
            .ThenByDescending(g => g.Count())
            .FirstOrDefault() ?? Enumerable.Empty<Vessel>()];
    }

    private static (double?, double?, double?, double?, string?) Conditions(Vessel vessel) => (
        vessel.Sample.Number(BatchProperties.InitialConcentration),
        vessel.Sample.Number(BatchProperties.ContactTime),
        vessel.Dose is { } dose ? Math.Round(dose.Value, 1) : null,
        vessel.Sample.Number(BatchProperties.Temperature),
        vessel.Sample.Words(SampleProperties.Matrix));
}
