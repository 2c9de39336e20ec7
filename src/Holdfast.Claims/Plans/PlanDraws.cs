using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Rules;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Plans;

/// <summary>
/// What a rule would find in vessels that are drawn as a plan supposes them, in a world in which the claim is true: power where a claim asks for several things at once and no formula has them
/// all. Each draw tells the margin with which the claim would just hold, so that one set of draws answers for every margin. The tests are those of the rules; <see cref="PlanTrial"/> asks the rules.
/// </summary>
/// <param name="Supposed">What is supposed.</param>
/// <param name="Question">The claim.</param>
/// <param name="Margin">Half-width of its margin, in the margin's unit; 0 where it has none.</param>
internal sealed record PlanDraws(Supposed Supposed, PlanQuestion Question, double Margin)
{
    private const int Draws = 2000;
    private const ulong Seed = 1589;

    /// <summary>No later time differs, % of the uptake at the last one (<see cref="EquilibriumReached"/>).</summary>
    public Drawn Equilibrium(SeriesDraft series)
    {
        var t = new Quantiles(Confidence.Level);
        var claimed = Array.FindIndex([.. series.Levels], l => l.Time >= 0.999 * Supposed.Basis[PlanSetting.Time]);
        return Draw(stream =>
        {
            var uptakes = Uptakes(stream, series);
            var (at, last) = (uptakes[claimed], uptakes[^1].Mean);
            var (sd, freedom) = Pooled(uptakes.Where((u, i) => i >= claimed || u.Mean >= EquilibriumReached.Limits.NearPlateau * last));
            return 100 / last * uptakes.Skip(claimed + 1).Max(l => Math.Abs(l.Mean - at.Mean) + t[freedom] * sd * Root(l, at));
        });
    }

    /// <summary>No higher dose removes more, the next lower one removes less, percentage points (<see cref="SmallestSufficientDose"/>).</summary>
    public Drawn SufficientDose(SeriesDraft series)
    {
        var t = new Quantiles(Confidence.Level);
        var at = Array.FindIndex([.. series.Levels], l => l.X.Equals(Supposed.Basis[PlanSetting.Dose]));
        return Draw(stream =>
        {
            var removals = Removals(stream, series);
            var (sd, freedom) = Pooled(removals);
            var gain = removals.Skip(at + 1).Max(l => l.Mean - removals[at].Mean + t[freedom] * sd * Root(l, removals[at]));
            var loss = removals[at].Mean - removals[at - 1].Mean - t[freedom] * sd * Root(removals[at], removals[at - 1]);
            return loss > Math.Max(gain, Margin) ? gain : double.PositiveInfinity;
        });
    }

    /// <summary>Batches alike, % of the grand mean (<see cref="Rules.Reproducible"/>).</summary>
    public Drawn Reproducible(SeriesDraft series)
    {
        var t = new Quantiles(Confidence.Level);
        var factor = StandardDeviationFactor.At(Confidence.Level, Math.Max(1, series.Levels.Length - 1));
        return series.Levels.Length < Rules.Reproducible.Limits.Batches ? Never : Draw(stream =>
        {
            var uptakes = Uptakes(stream, series);
            var (sd, freedom) = Pooled(uptakes);
            var grand = uptakes.Average(u => u.Mean);
            return 100 / grand * Math.Max(
                uptakes.Max(u => Math.Abs(u.Mean - grand) + t[freedom] * sd / Math.Sqrt(u.Values.Length)), factor * Math.Sqrt(uptakes.Sum(u => (u.Mean - grand) * (u.Mean - grand)) / (uptakes.Length - 1)));
        });
    }

    /// <summary>One level stands out from both neighbours, percentage points; by Tukey's critical range over the levels that count (<see cref="OptimumDose"/>, <see cref="OptimumPh"/>).</summary>
    /// <param name="series">The series.</param>
    /// <param name="best">The level said to be best, in its own unit.</param>
    /// <param name="asksForSorption">Whether levels that are not shown to be sorption are struck out first.</param>
    public Drawn StandsOut(SeriesDraft series, double best, bool asksForSorption)
    {
        var critical = new Dictionary<(int, int), double>();
        var sorbed = series.Levels.Select(l => asksForSorption ? Sorbed(l, Removal(Supposed.Left(Question, Margin, series, l), l)) : _ => true).ToArray();
        return Draw(stream =>
        {
            Setting[] levels = [.. Removals(stream, series).Zip(sorbed, (r, s) => (Removal: r, Counts: s(stream))).Where(l => l.Counts).Select(l => l.Removal)];
            var at = Array.FindIndex(levels, l => l.X.Equals(best));
            if (at < 1 || at > levels.Length - 2 || levels.Length < OptimumPh.Limits.Levels)
                return double.PositiveInfinity;
            var (sd, freedom) = Pooled(levels);
            if (!critical.TryGetValue((levels.Length, freedom), out var q))
                critical[(levels.Length, freedom)] = q = StudentizedRange.Quantile(Confidence.Level, levels.Length, freedom) / Math.Sqrt(2);

            // The levels were drawn the margin apart; what is lacking, or to spare, is counted on it.
            return Margin + new[] { at - 1, at + 1 }.Max(i => q * sd * Root(levels[at], levels[i]) - (levels[at].Mean - levels[i].Mean));
        });
    }

    /// <summary>Whether controls beside a level lose next to nothing (<see cref="NotPrecipitation"/>); 0 or never.</summary>
    public Drawn NotPrecipitated(PlannedLevel level)
    {
        var sorbed = Sorbed(level, Removal(Supposed.Left(level.Start, level.Dose, level.Time), level));
        return Draw(stream => sorbed(stream) ? 0 : double.PositiveInfinity);
    }

    /// <summary>Whether removal falls over the levels; 0 or never.</summary>
    public Drawn RemovalFalls(SeriesDraft series)
        => Draw(stream => RemovalFallsWithConcentration.Decide(Removals(stream, series), []).Gated == Ruling.Holds ? 0 : double.PositiveInfinity, Draws / 10);

    /// <summary>Whether the interval of the enthalpy leaves out 0; 0 or never.</summary>
    /// <param name="constants">Temperature in K and standard deviation of ln K of each isotherm.</param>
    public Drawn Heat(IReadOnlyList<(double Kelvin, double Sd)> constants)
    {
        double[] kelvin = [.. constants.Select(c => c.Kelvin)];
        return constants.Count < Temperatures ? Never : Draw(stream =>
            VantHoff.OfLogarithms(kelvin, [.. constants.Select((c, i) => Measured.From(Math.Log(Supposed.AffinityAt(c.Kelvin)) + c.Sd * stream.Normal(), new Source(FormattableString.Invariant($"isotherm {i}"), "isotherm", c.Sd)))])
                .Value is { } line && line.WiderEnthalpy.Interval().Low > 0 ? 0 : double.PositiveInfinity);
    }

    private static int Temperatures => ReciprocalTemperatureLine.EnoughTemperatures;

    private static Drawn Never => new([double.PositiveInfinity]);

    // Controls that surely lose nothing stand above constants by which a solid could form, as in the rule. The larger of what the controls show and what is known of filling and diluting counts, as in the rule.
    private Func<SeededStream, bool> Sorbed(PlannedLevel level, double removal)
    {
        if (level.Blanks < 2)
            return _ => false;
        var u = 100 * Supposed.U(level.Start, level.Start) / level.Start;
        var known = 100 * Math.Sqrt((Supposed.ShareOfStart * Supposed.ShareOfStart + Supposed.ShareOfReading * Supposed.ShareOfReading) / level.Blanks);
        var (t, z) = (StudentDistribution.Quantile(Confidence.Level, level.Blanks - 1), NormalDistribution.Quantile(Confidence.Level));
        return stream =>
        {
            double[] losses = [.. Enumerable.Range(0, level.Blanks).Select(_ => u * stream.Normal())];
            var (mean, seen) = (losses.Average(), Math.Sqrt(losses.Sum(l => (l - losses.Average()) * (l - losses.Average())) / (level.Blanks - 1) / level.Blanks));
            return mean + (known > seen ? z * known : t * seen) < NotPrecipitation.Limits.Passing * removal;
        };
    }

    private Setting[] Removals(SeededStream stream, SeriesDraft series) => Vessels(stream, series, Removal);

    private Setting[] Uptakes(SeededStream stream, SeriesDraft series) => Vessels(stream, series, (left, level) => (level.Start - left) / level.Dose);

    private Setting[] Vessels(SeededStream stream, SeriesDraft series, Func<double, PlannedLevel, double> quantity)
        => [.. series.Levels.Select(l =>
        {
            var left = Supposed.Left(Question, Margin, series, l);
            var u = Supposed.U(l.Start, left);
            return new Setting(l.X, [.. Enumerable.Range(0, series.VesselsAt(l)).Select(_ => quantity(left + u * stream.Normal(), l))]);
        })];

    private static double Removal(double left, PlannedLevel level) => 100 * (1 - left / level.Start);

    private static double Root(Setting a, Setting b) => Math.Sqrt(1.0 / a.Values.Length + 1.0 / b.Values.Length);

    private static (double Sd, int Freedom) Pooled(IEnumerable<Setting> levels)
    {
        var (squares, freedom) = (0.0, 0);
        foreach (var level in levels)
        {
            var mean = level.Mean;
            squares += level.Values.Sum(v => (v - mean) * (v - mean));
            freedom += level.Values.Length - 1;
        }

        return (Math.Sqrt(squares / freedom), freedom);
    }

    private Drawn Draw(Func<SeededStream, double> needed, int draws = Draws)
    {
        var stream = new SeededStream(Seed, "power of " + Question.Rule);
        return new([.. Enumerable.Range(0, draws).Select(_ => needed(stream)).Order()]);
    }

    // A quantile of t is asked for a thousand times and has one or two values.
    private sealed class Quantiles(double probability)
    {
        private readonly Dictionary<int, double> known = [];

        public double this[int freedom] => known.TryGetValue(freedom, out var t) ? t : known[freedom] = StudentDistribution.Quantile(probability, freedom);
    }
}

/// <summary>The margins with which a claim would just have held, one for each draw.</summary>
/// <param name="Needed">In rising order, in the unit of the margin; infinite where it would have held with none.</param>
internal sealed record Drawn(ImmutableArray<double> Needed)
{
    /// <summary>Share of the draws in which a margin suffices.</summary>
    /// <param name="margin">The margin; 0 where the claim has none.</param>
    public double Power(double margin) => Needed.Count(n => n <= margin) / (double)Needed.Length;

    /// <summary>The least margin with a wanted power; infinite where there is none.</summary>
    /// <param name="power">Wanted; no unit.</param>
    public double LeastMargin(double power) => Needed[Math.Min(Needed.Length - 1, (int)Math.Ceiling(power * Needed.Length) - 1)];
}
