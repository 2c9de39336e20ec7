using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Regeneration;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>"Reusable for n cycles": the share of the first uptake that is kept in cycle n lies above the margin, 80 % unless one was fixed.</summary>
/// <remarks>
/// Ratio of means to first order, one-sided 95 % bounds. The sd of a vessel is pooled over all cycles where more than the two were measured; with
/// two, each keeps its own and the degrees of freedom are summed. At least five cycles (common practice); cycles are never extrapolated.
/// </remarks>
public sealed class Reusable : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels.</summary>
        public const int Vessels = 3;
    }

    /// <inheritdoc/>
    public string Id => "reusable";

    /// <inheritdoc/>
    public string Wording => "The sorbent can be used {cycles} times ({series}).";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => ReuseStudy.Of(evidence).Series.Select(s => Claim.Raised(Id, ("series", s.Name), ("cycles", Phrase.Plain(s.Cycles[^1].Number, ""))));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => ReuseStudy.Named(evidence, claim.Words("series")) is { } s ? Grounds.OfSorption(evidence, s.Source).Concat(Grounds.OfStability(evidence, s.Source.Vessels)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = ReuseStudy.Named(evidence, claim.Words("series"));
        var n = claim.Number("cycles") is { } c && c >= 2 ? (int)c : series?.Cycles[^1].Number ?? 0;
        var sentence = Phrase.Sentence(claim, Wording, ("cycles", n.ToString(CultureInfo.InvariantCulture)), ("series", series?.Name ?? claim.Words("series") ?? "no series"));
        var margin = FixedMargin.Of(evidence, MarginKind.Retention);
        var decision = series is null
            ? Decision.Missing("No series of sorption and elution cycles is recorded. Carry three vessels through five cycles and weigh the powder each time.", Cycles(Replication.WithoutPilot, 5))
            : Decide(
                [.. series.Cycles.Select(k => new Setting(k.Number, [.. k.Vessels.Select(v => v.Uptake.Value)]) { Propagated = [.. k.Vessels.Select(v => v.Uptake)] })],
                n, margin.Low / 100, series.Cycles.All(k => k.MassIsKnown));
        if (series is not null && decision.Numbers.Length > 0)
            decision = decision with { Numbers = [.. decision.Numbers, .. Beside(series)], Questions = [.. decision.Questions, .. Asked(series)] };
        var vessels = series?.Cycles.SelectMany(k => k.Vessels.Select(v => v.Vessel)).ToArray() ?? [];
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] }).On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges what is kept.</summary>
    /// <param name="cycles">Uptakes of each cycle, mg/g; X is the number of the cycle.</param>
    /// <param name="n">Cycle claimed.</param>
    /// <param name="threshold">Share that must be kept (0.80); no unit.</param>
    /// <param name="massIsKnown">True when the mass present was weighed in every cycle.</param>
    public static Decision Decide(IReadOnlyList<Setting> cycles, int n, double threshold, bool massIsKnown)
    {
        ArgumentNullException.ThrowIfNull(cycles);
        if (cycles.FirstOrDefault(c => c.X == 1) is not { } first || cycles.FirstOrDefault(c => c.X == n) is not { } last || n < 2)
            return Decision.Missing($"Cycle 1 and cycle {Phrase.Number(n)} must both be measured; cycles are not extrapolated.", Cycles(Replication.WithoutPilot, Math.Max(n, CycleEvidence.EnoughCycles)));
        if (Kept(cycles, first, last) is not { } scatter)
            return Decision.Missing($"One vessel in each cycle gives no scatter to judge by. Carry {Limits.Vessels} vessels through every cycle.", Cycles(Replication.WithoutPilot, n));
        var kept = LargerUncertainty.Of(scatter, first.PropagatedMean is { } a && last.PropagatedMean is { } b ? b / a : null);
        var (fewest, measured) = (Math.Min(first.Values.Length, last.Values.Length), cycles.Count);
        var one = kept.StandardError * Math.Sqrt(fewest / (1 + kept.Value * kept.Value));
        return new Decision(
            IntervalRuling.Above(kept, threshold),
            $"Cycle {Phrase.Number(n)} keeps {Phrase.Number(kept.Value)} of the first uptake, one-sided 95 % bounds {Phrase.Number(kept.LowerBound())} and {Phrase.Number(kept.UpperBound())} "
                + $"({Phrase.Number(kept.DegreesOfFreedom)} degrees of freedom, n = {Phrase.Count(fewest, "vessel")} a cycle); {Phrase.Number(threshold)} must be kept.",
            "one-sided t bound of the ratio of means, 5 %")
        {
            Numbers =
            [
                Deciding.Of($"uptake of cycle {Phrase.Number(n)} over cycle 1", kept, 0.90, ""),
                Deciding.Plain("one-sided 95 % lower bound", kept.LowerBound()),
                Deciding.Plain("one-sided 95 % upper bound", kept.UpperBound()),
                Deciding.Plain("share to be kept", threshold),
            ],
            Gates =
            [
                new("cycles", measured >= CycleEvidence.EnoughCycles, $"{Phrase.Count(measured, "cycle")} measured; {CycleEvidence.EnoughCycles} are needed"),
                new("vessels", fewest >= Limits.Vessels, $"{Phrase.Count(fewest, "vessel")} in cycle 1 or {Phrase.Number(n)}; {Limits.Vessels} are needed"),
                new("mass present", massIsKnown, massIsKnown ? "the powder was weighed in every cycle" : "the powder was not weighed again, so that lost powder and lost capacity are not told apart"),
            ],
            Questions = fewest < Limits.Vessels ? [new("Q53", $"{Phrase.Count(fewest, "vessel")} a cycle: is the scatter between cycles larger than between vessels?")] : [],
            Next = Cycles(Replication.AgainstLimit(kept.Value - threshold, one * Math.Sqrt(1 + kept.Value * kept.Value), kept.DegreesOfFreedom), n),
        };
    }

    // More than two cycles know the scatter of a vessel better than two do.
    private static Estimate? Kept(IReadOnlyList<Setting> cycles, Setting first, Setting last)
        => cycles.Count > 2
            ? OneWay.Of([.. cycles.Select(c => c.Group(""))]).Value is { } pooled ? Ratio.WithSd(last.Values, first.Values, pooled.PooledSd, pooled.WithinFreedom) : null
            : Ratio.OfMeans(last.Values, first.Values, RatioFreedom.Sum).Value;

    private static IEnumerable<Deciding> Beside(ReuseSeries series)
    {
        if (series.Trend is not { } trend)
            yield break;
        yield return Deciding.Of("change per cycle", trend.PerCycle, Confidence.Level, "mg/g");
        if (trend.KeptPerCycle is { } kept)
            yield return Deciding.Of("share kept from one cycle to the next", kept, Confidence.Level, "");
    }

    private static IEnumerable<Question> Asked(ReuseSeries series)
    {
        if (series.LeftAtTheEnd is { } left and > 0)
            yield return new("Q54", $"{Phrase.With(left, "mg/g")} never came off: what happens to it?");
        else if (series.LeftAtTheEnd is null)
            yield return new("Q54", "The eluate was not analysed in every cycle: how do you know that the metal came off?");
    }

    private static NextExperiment Cycles(Replication size, int n) => new(
        $"Carry {Phrase.Count(size.N, "vessel")} through {Phrase.Count(n, "cycle")}: weigh the dried powder, measure start pH and analyse the eluate each time.",
        size.N, [Phrase.Count(n, "cycle")], size.Basis);
}
