using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

public class BootstrapTests
{
    private const int Count = 2000;

    private static readonly FitOptions Plain = new() { Profiles = false };

    private static CancellationToken Running => TestContext.Current.CancellationToken;

    // reference/regression/bootstrap-py.json: the generator of the file, raw residuals less their mean, refits from the estimate.
    [Theory, InlineData("langmuir"), InlineData("sips")]
    public void ResidualResamples_WithTheGeneratorOfTheFile_AgreeWithIt(string curve)
    {
        var fit = RegressionData.Curves[curve].Fit(RegressionData.Points(curve), Plain);
        var stream = new MinimalStandard(20240229);
        double[] errors = [.. fit.Residuals.Select(r => r - fit.Residuals.Average())];
        var draws = Run(fit, (_, y, _) =>
        {
            for (var i = 0; i < y.Length; i++)
                y[i] = fit.Fitted[i] + errors[(int)(stream.Next() * y.Length)];
            return true;
        });
        Check(curve, fit, draws, ["first", "last", "mean", "sd", "q025", "q500", "q975"]);
    }

    [Fact]
    public void WildResamples_WithTheGeneratorOfTheFile_AgreeWithIt()
    {
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        var stream = new MinimalStandard(20240229);
        var draws = Run(fit, (_, y, _) =>
        {
            for (var i = 0; i < y.Length; i++)
                y[i] = fit.Fitted[i] + (stream.Next() >= 0.5 ? 1 : -1) * fit.Residuals[i] / (1 - fit.Leverages[i]);
            return true;
        });
        Check("langmuir-wild", fit, draws, ["first", "sd", "q025", "q975"]);
    }

    [Fact]
    public void CaseResamples_WithTheGeneratorOfTheFile_AgreeWithIt()
    {
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        var stream = new MinimalStandard(20240229);
        double[] x = [.. fit.Points.X];
        var draws = Run(fit, (_, _, w) =>
        {
            var counts = new int[x.Length];
            for (var i = 0; i < x.Length; i++)
                counts[(int)(stream.Next() * x.Length)]++;
            return Bootstrap.Recount(counts, x, w, 3);
        });
        Assert.Equal(1, draws.Ends.Count(e => e == DrawEnd.Skipped));
        Check("langmuir-case", fit, draws, ["first", "sd", "q025", "q975"]);
    }

    [Theory, InlineData(Resampling.Residual), InlineData(Resampling.Wild), InlineData(Resampling.Case)]
    public void Resamples_OnOneThreadOrTwo_AreTheSameBits(Resampling scheme)
    {
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        var one = Bootstrap.Of(fit, new() { Scheme = scheme, Count = 1600, Seed = 5 }, Running).Value!;
        var two = Bootstrap.Of(fit, new() { Scheme = scheme, Count = 1600, Seed = 5, Threads = 2 }, Running).Value!;
        var other = Bootstrap.Of(fit, new() { Scheme = scheme, Count = 1600, Seed = 6 }, Running).Value!;
        Assert.Equal(one.Draws(0), two.Draws(0));
        Assert.Equal(one.Draws(1), two.Draws(1));
        Assert.NotEqual(one.Draws(0), other.Draws(0));
    }

    // reference/regression/interval-coverage.csv: inflated and studentised residual intervals cover like the profile; plain percentiles are too narrow.
    [Fact]
    public void StudentisedInterval_OfTheLangmuirSet_IsCloseToTheProfile()
    {
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"));
        var result = Bootstrap.Of(fit, new() { Count = 4000 }, Running).Value!;
        for (var j = 0; j < 2; j++)
        {
            var profile = fit.Parameters[j].Profile!;
            var width = profile.Upper.Value!.Value - profile.Lower.Value!.Value;
            Assert.Null(result.Parameters[j].Percentile);
            Assert.InRange(result.Parameters[j].Studentised!.Value.High - result.Parameters[j].Studentised!.Value.Low, 0.75 * width, 1.25 * width);
        }
    }

    [Fact]
    public void Bootstrap_OfWhatIsNoFit_GivesAReason()
    {
        var outcome = Bootstrap.Of(Fit.Of<Sips>(new([1, 2, 3], [1, 2, 2.5])), null, Running);
        Assert.False(outcome.HasValue);
        Assert.Equal("HF-424", outcome.Findings[0].Code);
    }

    [Fact]
    public void Bootstrap_WhenStopped_Throws()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        Assert.Throws<OperationCanceledException>(() => Bootstrap.Of(fit, new(), stop.Token));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bootstrap.Of(fit, new() { Count = 5 }, Running));
    }

    // The design with one far point: most case resamples that miss it cannot be fitted well, and what is counted adds up.
    [Fact]
    public void CaseResamples_OfFewLevels_CountWhatWasSkipped()
    {
        var fit = Fit.Of<Langmuir>(new([1, 1, 4, 4, 20, 20], [5.1, 4.9, 14.2, 13.9, 30.3, 29.8]), Plain);
        var outcome = Bootstrap.Of(fit, new() { Scheme = Resampling.Case, Count = 1000 }, Running);
        Assert.True(outcome.HasValue);
        Assert.True(outcome.Value.Skipped > 0);
        Assert.Equal(1000, outcome.Value.Skipped + outcome.Value.Failed + outcome.Value.Draws(0).Count);
        Assert.Contains(outcome.Findings, f => f.Code == "HF-424");
    }

    private static Draws Run(FitResult fit, Bootstrap.Redraw redraw)
    {
        var draws = new Draws(Count, fit.P);
        Bootstrap.Refits(fit, draws, 0, Count, redraw);
        Assert.DoesNotContain(DrawEnd.Failed, draws.Ends);
        return draws;
    }

    private static void Check(string set, FitResult fit, Draws draws, string[] quantities)
    {
        var expected = RegressionData.Read("bootstrap-py.json").At("sets", set);
        for (var j = 0; j < fit.P; j++)
        {
            double[] column = [.. draws.Column(j)], sorted = [.. column.Order()];
            var mean = column.Average();
            foreach (var quantity in quantities)
            {
                Agree.Relative(quantity is "first" or "last" ? 1e-8 : 1e-6, expected.At(quantity).Doubles()[j], quantity switch
                {
                    "first" => column[0],
                    "last" => column[^1],
                    "mean" => mean,
                    "sd" => Math.Sqrt(column.Sum(v => (v - mean) * (v - mean)) / (column.Length - 1)),
                    "q025" => Bootstrap.Quantile(sorted, 0.025),
                    "q500" => Bootstrap.Quantile(sorted, 0.5),
                    _ => Bootstrap.Quantile(sorted, 0.975),
                }, $"{set} {fit.Parameters[j].Symbol} {quantity}");
            }
        }
    }

    // S. K. Park and K. W. Miller, Comm. ACM 31 (1988) 1192: s ← 16807 s mod 2³¹ − 1.
    private sealed class MinimalStandard(long seed)
    {
        private long state = seed;

        public double Next()
        {
            state = 16807 * state % 2147483647;
            return state / 2147483647.0;
        }
    }
}
