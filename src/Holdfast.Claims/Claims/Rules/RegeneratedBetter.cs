using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Regeneration;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>"The regenerated sorbent is better than fresh": its uptake on the mass present is higher than in cycle 1.</summary>
/// <remarks>
/// Paired where the same portions of powder are named in both cycles, two-sided 95 %; otherwise the difference of means with the sd pooled over all
/// cycles. A rise is most often lost mass, held-back liquid or base: those are asked first.
/// </remarks>
public sealed class RegeneratedBetter : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest portions measured in both cycles.</summary>
        public const int Pairs = 3;
    }

    /// <inheritdoc/>
    public string Id => "regenerated-better";

    /// <inheritdoc/>
    public string Wording => "In cycle {cycle} the sorbent takes up more than fresh ({series}).";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => ReuseStudy.Of(evidence).Series
            .Where(s => s.Pooled is { } p && CycleEvidence.MustBeExplained(CycleEvidence.RiseZ([.. s.Cycles.Select(c => c.Vessels.Average(v => v.Uptake.Value))], p.PooledSd)))
            .Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => ReuseStudy.Named(evidence, claim.Words("series")) is { } s ? Grounds.OfSorption(evidence, s.Source).Concat(Grounds.OfStability(evidence, s.Source.Vessels)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = ReuseStudy.Named(evidence, claim.Words("series"));
        var cycle = claim.Number("cycle") is { } c && c >= 2 ? (int)c : 2;
        var sentence = Phrase.Sentence(claim, Wording, ("cycle", Phrase.Number(cycle)), ("series", series?.Name ?? claim.Words("series") ?? "no series"));
        var fresh = series?.Cycles.FirstOrDefault(k => k.Number == 1);
        var later = series?.Cycles.FirstOrDefault(k => k.Number == cycle);
        var decision = fresh is null || later is null
            ? Decision.Missing($"Cycle 1 and cycle {Phrase.Number(cycle)} are not both recorded.", Next(Replication.WithoutPilot))
            : Decide(Difference(series!, fresh, later), later.MassIsKnown, StartPhMoved(fresh, later));
        var vessels = fresh is null || later is null ? [] : fresh.Vessels.Concat(later.Vessels).Select(v => v.Vessel).ToArray();
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges a difference of uptakes, the later cycle less the first.</summary>
    /// <param name="difference">The difference, mg/g, or null when there is no scatter to judge by.</param>
    /// <param name="massIsKnown">True when the powder was weighed again in the later cycle.</param>
    /// <param name="startPhMoved">How far the start pH lies from that of cycle 1, or null when it was not recorded.</param>
    public static Decision Decide(Estimate? difference, bool massIsKnown, double? startPhMoved)
    {
        if (difference is null)
            return Decision.Missing("One vessel in each cycle gives no scatter: a rise cannot be told from chance.", Next(Replication.WithoutPilot));
        var interval = difference.Interval();
        return new Decision(
            interval.Low > 0 ? Ruling.Holds : interval.High < 0 ? Ruling.Contradicted : Ruling.NotShownYet,
            $"The later cycle takes up {Phrase.With(difference.Value, "mg/g")} more, {Phrase.Interval(interval, "mg/g")} ({Phrase.P(difference.PDiffersFrom(0))}, {Phrase.Number(difference.DegreesOfFreedom)} degrees of freedom; {difference.Method}).",
            "two-sided 95 % interval of the difference to cycle 1")
        {
            Numbers = [Deciding.Of("later cycle less cycle 1", difference, Confidence.Level, "mg/g"), Deciding.Plain("p of no difference", difference.PDiffersFrom(0))],
            Gates =
            [
                new("mass present", massIsKnown, massIsKnown ? "the powder was weighed again" : "the powder was not weighed again, and the first mass stands in the divisor"),
                new("start pH", startPhMoved is { } moved && Math.Abs(moved) <= BatchSorption.Attribution.LargestPHShift, startPhMoved is { } by
                    ? $"the start pH differs by {Phrase.Number(Math.Abs(by))} from cycle 1; at most {Phrase.Number(BatchSorption.Attribution.LargestPHShift)} is allowed"
                    : "the start pH of both cycles is not recorded"),
            ],
            Warnings = difference.Value > 0 ? [$"A rise is explained in this order: {string.Join(" ", RiseQuestion.InOrder.Take(3).Select(q => q.Reason))}"] : [],
            Questions =
            [
                .. difference.Value > 0 && !massIsKnown ? [new Question("Q55", "How much powder was left in the later cycle?")] : Array.Empty<Question>(),
                .. difference.Value > 0 ? [new Question("Q56", "What remained of the eluent on the powder?")] : Array.Empty<Question>(),
            ],
            Next = Next(Replication.TwoMeans(difference.Value, difference.StandardError * Math.Sqrt(difference.N / 4.0), difference.DegreesOfFreedom)),
        };
    }

    /// <summary>The paired difference of the portions measured in both cycles, or null with fewer than two pairs.</summary>
    /// <param name="fresh">Uptakes of cycle 1, mg/g.</param>
    /// <param name="later">Uptakes of the later cycle in the same order, mg/g.</param>
    public static Estimate? Paired(IReadOnlyList<double> fresh, IReadOnlyList<double> later) => TwoMeans.Paired(later, fresh).Value;

    private static Estimate? Difference(ReuseSeries series, ReuseCycle fresh, ReuseCycle later)
    {
        var pairs = later.Vessels.Where(v => v.Portion is not null)
            .Select(v => (Later: v, Fresh: fresh.Vessels.FirstOrDefault(f => string.Equals(f.Portion, v.Portion, StringComparison.OrdinalIgnoreCase))))
            .Where(p => p.Fresh is not null).ToArray();
        if (pairs.Length >= Limits.Pairs)
            return Paired(Array.ConvertAll(pairs, p => p.Fresh!.Uptake.Value), Array.ConvertAll(pairs, p => p.Later.Uptake.Value));
        if (series.Pooled is not { } pooled)
            return null;
        var at = series.Cycles;
        return LargerUncertainty.Of(
            pooled.Difference(at.IndexOf(later), at.IndexOf(fresh)), Mean(later) - Mean(fresh));
    }

    private static Amounts.Measured Mean(ReuseCycle cycle) => cycle.Vessels.Select(v => v.Uptake).Aggregate((a, b) => a + b) / cycle.Vessels.Length;

    private static double? StartPhMoved(ReuseCycle fresh, ReuseCycle later)
    {
        double[] first = Ph(fresh), then = Ph(later);
        return first.Length == fresh.Vessels.Length && then.Length == later.Vessels.Length ? then.Average() - first.Average() : null;

        static double[] Ph(ReuseCycle c) => [.. c.Vessels.Select(v => v.Vessel.Sample.Number(BatchProperties.StartPh)).OfType<double>()];
    }

    private static NextExperiment Next(Replication size) => new(
        $"Carry {Phrase.Count(Math.Max(size.N, Limits.Pairs), "named portion")} of powder through two cycles, weighed dry before each, beside as many washed with eluent before cycle 1.",
        2 * Math.Max(size.N, Limits.Pairs), ["cycle 1", "cycle 2", "eluent-washed before cycle 1"], size.Basis);
}
