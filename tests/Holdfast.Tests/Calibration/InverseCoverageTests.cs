using Holdfast.Calibration;
using Holdfast.Statistics;

namespace Holdfast.Tests.Calibration;

/// <summary>A 95 % interval must hold the truth 95 times of 100: drawn runs with a known concentration, no outside number needed.</summary>
public class InverseCoverageTests
{
    private const int Trials = 4000;
    private static readonly double[] Levels = [0, 0, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4];

    // Binomial: 4000 trials at 0.95 have a standard deviation of 0.0034; ±0.012 is 3.5 of them.
    private static void HoldsTheTruth(double share) => Assert.InRange(share, 0.938, 0.962);

    // The last row knows its slope to 15 % only (g near 0.1), where the exact limits are used; a run without any slope (g above 1) refuses.
    [Theory, InlineData(0.002, 2.6, 3), InlineData(0.002, 0.1, 1), InlineData(0.05, 3.0, 2)]
    public void Line_DrawnRuns_IntervalHoldsTheTruth(double sd, double truth, int replicates)
    {
        var stream = new SeededStream(1589, "inverse coverage");
        var held = 0;
        for (var i = 0; i < Trials; i++)
        {
            var fit = PolynomialFit.Of(Levels, [.. Levels.Select(x => 0.001 + 0.06 * x + sd * stream.Normal())]);
            var mean = Enumerable.Range(0, replicates).Average(_ => 0.001 + 0.06 * truth + sd * stream.Normal());
            held += InversePrediction.Of(fit, mean, fit.ResidualSd / Math.Sqrt(replicates))?.Interval.Contains(truth) ?? true ? 1 : 0;
        }

        HoldsTheTruth(held / (double)Trials);
    }

    // Scatter that grows with the level, weights known: the interval stays honest low and high.
    [Theory, InlineData(0.2), InlineData(3.7)]
    public void WeightedLine_DrawnRuns_IntervalHoldsTheTruth(double truth)
    {
        var stream = new SeededStream(1589, "weighted inverse coverage");
        var scatter = new VarianceFunction(0.0005, 0.001);
        double[] weights = [.. Levels.Select(x => 1 / Math.Pow(scatter.Sd(x), 2))];
        var mean = weights.Average();
        var held = 0;
        for (var i = 0; i < Trials; i++)
        {
            var fit = PolynomialFit.Of(Levels, [.. Levels.Select(x => 0.001 + 0.06 * x + scatter.Sd(x) * stream.Normal())], 1, weights);
            var reading = 0.001 + 0.06 * truth + scatter.Sd(truth) * stream.Normal();
            var atSample = 1 / Math.Pow(scatter.Sd(InversePrediction.Solve(fit, reading)!.Value), 2) / mean;
            held += InversePrediction.Of(fit, reading, fit.ResidualSd / Math.Sqrt(atSample))!.Interval.Contains(truth) ? 1 : 0;
        }

        HoldsTheTruth(held / (double)Trials);
    }

    [Fact]
    public void Quadratic_DrawnRuns_IntervalHoldsTheTruth()
    {
        var stream = new SeededStream(1589, "quadratic inverse coverage");
        var held = 0;
        for (var i = 0; i < Trials; i++)
        {
            var fit = PolynomialFit.Of(Levels, [.. Levels.Select(x => 0.001 + 0.06 * x - 0.002 * x * x + 0.001 * stream.Normal())], 2);
            var reading = 0.001 + 0.06 * 2.6 - 0.002 * 2.6 * 2.6 + 0.001 * stream.Normal();
            held += InversePrediction.Of(fit, reading, fit.ResidualSd)!.Interval.Contains(2.6) ? 1 : 0;
        }

        HoldsTheTruth(held / (double)Trials);
    }
}
