using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "Equilibrium was reached by {time}": every later time stays within 5 % of the last uptake. Equilibrium by a time follows from
/// equilibrium by an earlier one, so a time that was not tested is judged at the latest time before it that was, and that a later one can test.
/// </summary>
/// <remarks>
/// The scatter of one vessel is pooled over the times compared and those near the plateau (its degrees of freedom are vessels less times): where scatter grows with uptake, the
/// early times would make it too small (docs/verdicts.md). The step is given as a share of the mean uptake at the last time, which is taken as exact. Sameness is judged by the 90 % interval, a step by the 95 %
/// interval, widened for the number of later times. Where some curve agrees with the replicates, its plateau must lie within the margin too.
/// </remarks>
public sealed class EquilibriumReached : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Least ratio of a later time to the one judged; no unit.</summary>
        public const double LaterBy = 1.5;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;

        /// <summary>Share of the last uptake from which a time lends its scatter to the step; no unit.</summary>
        public const double NearPlateau = 0.8;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "equilibrium-reached";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "Equilibrium was reached by {time} in {series}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["concentration"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => from s in Kinetic(evidence)
           let last = s.Levels.Length == 0 ? 0 : s.Levels[^1].X
           let tested = s.Levels.LastOrDefault(l => l.X > 0 && l.X * Limits.LaterBy <= last)
           where tested is not null
           select Claim.Raised(Id, ("series", s.Name), ("time", Phrase.Plain(tested.X, "min")));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => SeriesOf(claim, evidence).SelectMany(s => Grounds.OfSorption(evidence, s));

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = SeriesOf(claim, evidence);
        var vessels = series.SelectMany(s => s.Vessels).ToImmutableArray();
        var sentence = Phrase.Sentence(
            claim, Wording, ("time", claim.Words("time") ?? "the time used"),
            ("series", series.Length == 0 ? claim.Words("series") ?? "any series" : Phrase.Listed(series.Select(s => s.Name))));
        return Decided(claim, evidence, series).On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    private Decision Decided(Claim claim, Evidence evidence, ImmutableArray<Series> series)
    {
        if (series.IsEmpty)
            return Decision.Missing("No series with several contact times was found. Stop vessels at t, 2 t and 4 t, three each.");
        if (claim.In("time", "min") is not { } time)
            return Decision.NotNamed(claim, "time", "120 min");
        var margin = FixedMargin.Of(evidence, MarginKind.Plateau);
        var wanted = claim.In("concentration", "mg/L");
        Decision[] parts = [.. series.Select(s => Spoken(s, Decide(
            s.Name, time, Setting.Of(s, v => v.Uptake), margin.Low / 100, margin.High / 100,
            s.Vessels.Select(v => v.Start?.Value).Max(), wanted, AdequatePlateau(s, evidence))))];
        var ruling = IntervalRuling.All(parts.Select(p => p.Gated));
        return new Decision(ruling, string.Join(" ", parts.Select(p => p.Reason)), parts[0].Method)
        {
            IsUntested = parts.All(p => p.IsUntested),
            Numbers = [.. parts.SelectMany(p => p.Numbers)],
            Gates = [.. parts.SelectMany(p => p.GatesBeside(ruling))],
            Warnings = [.. parts.SelectMany(p => p.Warnings), .. margin.Notes],
            Questions = [.. parts.SelectMany(p => p.Questions), .. OneConcentration(evidence)],
            Next = parts.FirstOrDefault(p => p.Gated != Ruling.Holds)?.Next,
        };
    }

    private static Decision Spoken(Series series, Decision decision) => decision.IsUntested ? decision : decision with { Gates = [Adequacy.Usable(series), .. decision.Gates] };

    /// <summary>Judges one series.</summary>
    /// <param name="name">Name of the series.</param>
    /// <param name="time">Contact time by which equilibrium is said to be reached, min.</param>
    /// <param name="levels">Uptakes in mg/g at each contact time in min, in rising order.</param>
    /// <param name="low">Lower margin, as a share of the last uptake (−0.05); no unit.</param>
    /// <param name="high">Upper margin, as a share of the last uptake (0.05); no unit.</param>
    /// <param name="highestTested">Highest start concentration of the series, mg/L, or null.</param>
    /// <param name="highestWanted">Start concentration that the claim must cover, mg/L, or null.</param>
    /// <param name="plateau">Uptake at equilibrium by a curve that agrees with the replicates, mg/g, or null when none does.</param>
    public static Decision Decide(
        string name, double time, IReadOnlyList<Setting> levels, double low, double high,
        double? highestTested = null, double? highestWanted = null, double? plateau = null)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var at = levels.LastOrDefault(l => Math.Abs(l.X - time) <= 0.001 * time)
            ?? levels.LastOrDefault(l => l.X < time && l.X * Limits.LaterBy <= levels[^1].X * 1.001)
            ?? levels.LastOrDefault(l => l.X < time);
        if (at is null)
            return Decision.Missing($"{name} has no vessel stopped by {Phrase.With(time, "min")}.", Later(levels, time, null, high));
        var exact = at.X >= time * 0.999;
        Setting[] later = [.. levels.Where(l => l.X > at.X)];
        if (!later.Any(l => l.X >= at.X * Limits.LaterBy * 0.999))
        {
            return Decision.Missing(
                $"In {name} nothing was read at or after {Phrase.With(at.X * Limits.LaterBy, "min")}, one and a half times {Phrase.With(at.X, "min")}: a last point cannot show its own plateau.",
                Later(levels, time, null, high));
        }

        var groups = levels.Where(l => l == at || later.Contains(l) || l.Mean >= Limits.NearPlateau * levels[^1].Mean).Select(l => l.Group("min")).ToArray();
        if (OneWay.Of(groups).Value is not { } analysis || levels[^1].Mean <= 0)
            return Decision.Missing($"The vessels of {name} give no scatter to judge a step by: three separate vessels per time are needed.", Later(levels, time, null, high));

        var reference = levels[^1].Mean;
        var steps = later.Select(l => (l.X, Step: AsShare(LargerUncertainty.Difference(l, at, analysis.PooledSd, analysis.WithinFreedom), reference))).ToArray();
        var ruling = IntervalRuling.All(steps.Select(s => IntervalRuling.Within(s.Step, low, high, steps.Length)));
        if (!exact && ruling == Ruling.Contradicted)
            ruling = Ruling.NotShownYet;
        var worst = steps.MaxBy(s => Math.Abs(s.Step.Value));
        var remaining = plateau is { } end ? 1 - at.Mean / end : (double?)null;
        var gates = new[]
        {
            new Gate("vessels per time", Math.Min(at.Values.Length, later.Min(l => l.Values.Length)) >= Limits.Replicates,
                $"{Phrase.Count(Math.Min(at.Values.Length, later.Min(l => l.Values.Length)), "vessel")} per time in {name}; {Limits.Replicates} are needed"),
            new Gate("highest concentration", highestWanted is not { } w || highestTested is not { } t || Tolerances.Reaches(t, w),
                $"{name} went up to {Phrase.With(highestTested ?? 0, "mg/L")}; the claim reaches {Phrase.With(highestWanted ?? highestTested ?? 0, "mg/L")}"),
            new Gate("plateau of a curve", remaining is not { } r || (r < high && r > low),
                $"the best curve that agrees with the replicates of {name} levels off {Phrase.With(100 * (remaining ?? 0), "%")} above the uptake at {Phrase.With(at.X, "min")}"),
        };
        return new Decision(ruling, Reason(name, at.X, worst.X, worst.Step, low, high, at.Values.Length), "equivalence of means (two one-sided tests), sd pooled over the times near the plateau")
        {
            Numbers = [.. steps.SelectMany(s => new[] { 0.90, Confidence.Level }.Select(confidence => Deciding.Of(
                $"{name}: step from {Phrase.With(at.X, "min")} to {Phrase.With(s.X, "min")}, share of the uptake at {Phrase.With(levels[^1].X, "min")}", s.Step, confidence, "")))],
            Gates = [.. gates],
            Warnings = Warnings(name, time, at.X, later.Length, exact),
            Questions = worst.Step.PDiffersFrom(0) < Confidence.Chance && worst.Step.Value > 0
                ? [new("Q17", $"In {name} uptake rose by {Phrase.With(100 * worst.Step.Value, "%")} after {Phrase.With(at.X, "min")}: was the isotherm then measured at equilibrium?")]
                : [],
            Next = Later(levels, time, (analysis.PooledSd, analysis.WithinFreedom), high),
        };
    }

    private static string Reason(string name, double from, double to, Estimate step, double low, double high, int n)
        => $"In {name} uptake changes by {Phrase.With(100 * step.Value, "%")} from {Phrase.With(from, "min")} to {Phrase.With(to, "min")} "
            + $"({Percent(step, 0.90)}; {Percent(step, Confidence.Level)}); the margin is {Phrase.Span(100 * low, 100 * high, "%")}, {Phrase.Count(n, "vessel")} per time.";

    private static string Percent(Estimate step, double confidence)
        => Phrase.Interval(new(100 * step.Interval(confidence).Low, 100 * step.Interval(confidence).High, confidence), "%");

    private static ImmutableArray<string> Warnings(string name, double time, double testedAt, int laterTimes, bool exact)
    {
        var warnings = ImmutableArray.CreateBuilder<string>();
        if (laterTimes == 1)
            warnings.Add($"{name} has one later time only; two would show a slow second stage.");
        if (!exact)
            warnings.Add($"{name} has no vessel at {Phrase.With(time, "min")}; it was judged at {Phrase.With(testedAt, "min")}.");
        return warnings.ToImmutable();
    }

    private static Estimate AsShare(Estimate difference, double reference)
        => difference with { Value = difference.Value / reference, StandardError = difference.StandardError / reference };

    private static NextExperiment Later(IReadOnlyList<Setting> levels, double time, (double Sd, double Freedom)? scatter, double margin)
    {
        var level = levels.Count == 0 ? 0 : levels[^1].Mean;
        var size = scatter is { } s && level > 0
            ? Replication.Equivalence(margin * level, s.Sd, s.Freedom)
            : Replication.WithoutPilot;
        string[] times = [Phrase.With(time, "min"), Phrase.With(2 * time, "min"), Phrase.With(4 * time, "min")];
        return new(
            $"At the highest start concentration stop {size.Each("vessel")} each at {Phrase.Listed(times)}.",
            3 * size.N, [.. times], size.Basis);
    }

    /// <summary>Uptake at equilibrium by the best curve that levels off and agrees with the replicates.</summary>
    private static double? AdequatePlateau(Series series, Evidence evidence)
        => evidence.Kinetics
            .Where(f => string.Equals(f.Series.Name, series.Name, StringComparison.Ordinal))
            .SelectMany(f => Candidates.Of(f))
            .Where(c => c.LackOfFitP >= Confidence.Chance && c.Plateau is > 0)
            .MinBy(c => c.Aicc ?? double.PositiveInfinity)?.Plateau;

    private static IEnumerable<Question> OneConcentration(Evidence evidence)
    {
        double[] tested = [.. Kinetic(evidence).SelectMany(s => s.Vessels).Select(v => v.Start?.Value).OfType<double>()];
        double[] used = [.. evidence.Series.SelectMany(s => s.Vessels).Select(v => v.Start?.Value).OfType<double>()];
        if (tested.Length > 0 && used.Max() > 1.05 * tested.Max())
        {
            yield return new("Q18", $"Kinetics went up to {Phrase.With(tested.Max(), "mg/L")}, other vessels to {Phrase.With(used.Max(), "mg/L")}: "
                + "why should the highest concentration be as fast as the lowest?");
        }
    }

    private static IEnumerable<Series> Kinetic(Evidence evidence) => evidence.Series.Where(s => s.Varied == BatchProperties.ContactTime);

    private static ImmutableArray<Series> SeriesOf(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name
            ? evidence.SeriesNamed(name) is { } one && one.Varied == BatchProperties.ContactTime ? [one] : []
            : [.. Kinetic(evidence)];
}
