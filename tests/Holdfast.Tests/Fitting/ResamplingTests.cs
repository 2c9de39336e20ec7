using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Kinetics;

namespace Holdfast.Tests.Fitting;

/// <summary>The scale of resampled parameters against what is known of it, and long resampling: counted, stopped, side by side.</summary>
public class ResamplingTests
{
    private const int Many = 20_000;

    private static readonly FitOptions Plain = new() { Profiles = false };

    private static CancellationToken Running => TestContext.Current.CancellationToken;

    // Derivation: resamples of a straight line have the covariance (S/n)(X′X)⁻¹, the least squares covariance (S/ν)(X′X)⁻¹ times ν/n; the inflated residuals
    // take that back. B. Efron and R. J. Tibshirani, An Introduction to the Bootstrap, 1993, chapter 9 (from memory).
    // 20,000 resamples know a standard deviation to 1/√(2·20,000) = 0.5 %.
    [Fact]
    public void ResidualResamples_OfAStraightLine_AreNarrowByTheKnownFactorUnlessInflated()
    {
        double[] x = [1, 2, 3, 4, 5, 6, 7, 8], y = [2.3, 3.7, 6.4, 7.8, 10.5, 11.6, 14.3, 15.9];
        var fit = Fit.Of(new Line(x), Line.Card, new Points(x, y), new() { Starts = [[1, 1]], Scan = false, Profiles = false });
        var (mx, my) = (x.Average(), y.Average());
        var sxx = x.Sum(v => (v - mx) * (v - mx));
        var slope = x.Zip(y, (v, w) => (v - mx) * (w - my)).Sum() / sxx;
        var s = Math.Sqrt(x.Zip(y, (v, w) => Math.Pow(w - my - slope * (v - mx), 2)).Sum() / (8 - 2));
        double[] errors = [s * Math.Sqrt(1.0 / 8 + mx * mx / sxx), s / Math.Sqrt(sxx)];

        var inflated = Bootstrap.Of(fit, new() { Count = Many }, Running).Value!;
        var raw = new Draws(Many, 2);
        var stream = new Holdfast.Statistics.SeededStream(1, "raw residuals of a line");
        Bootstrap.Refits(fit, raw, 0, Many, (_, drawn, _) =>
        {
            for (var i = 0; i < drawn.Length; i++)
                drawn[i] = fit.Fitted[i] + fit.Residuals[stream.Below(drawn.Length)];
            return true;
        }, Running);
        for (var j = 0; j < 2; j++)
        {
            Assert.InRange(inflated.Parameters[j].StandardDeviation / errors[j], 0.98, 1.02);
            Assert.InRange(Sd([.. raw.Column(j)]) / errors[j], 0.98 * Math.Sqrt(6.0 / 8), 1.02 * Math.Sqrt(6.0 / 8));
        }
    }

    // NIST StRD Norris, a straight line, and Misra1a, monomolecular adsorption and nearly straight in its parameters: certified standard deviations
    // (reference/nist-strd/SOURCE.md). 14 points of a curve allow 3 %.
    [Fact]
    public void ResidualResamples_OfNistSets_ScatterAsTheCertificateSays()
    {
        var norris = NistSet.Read("linear", "Norris");
        Check(norris, Fit.Of(new Line(norris.X[0]), Line.Card, norris.Points, new() { Starts = [[0, 1]], Scan = false, Profiles = false }), 0.02);
        var misra = NistSet.Read("nonlinear", "Misra1a");
        Check(misra, Fit.Of<PseudoFirstOrder>(misra.Points, Plain), 0.03);

        static void Check(NistSet nist, FitResult fit, double within)
        {
            var drawn = Bootstrap.Of(fit, new() { Count = Many }, Running).Value!;
            for (var j = 0; j < fit.P; j++)
                Assert.InRange(drawn.Parameters[j].StandardDeviation / nist.StandardDeviations[j], 1 - within, 1 + within);
        }
    }

    // Derivation: b*, b and se* know nothing of the stated uncertainties when these are alike for all points. Stated half as large again as the scatter, the
    // standard error of the fit follows what was stated and the interval of the resamples the scatter.
    [Fact]
    public void StudentisedInterval_OfStatedUncertainties_FollowsTheScatter()
    {
        var points = RegressionData.Points("langmuir");
        var plain = Fit.Of<Langmuir>(points, Plain);
        var stated = Fit.Of<Langmuir>(new(points.X, points.Y, u: [.. points.Y.Select(_ => 1.5 * plain.ResidualSd!.Value)]), Plain);
        Assert.Equal(ScatterModel.Known, stated.Scatter);
        var (one, two) = (Bootstrap.Of(plain, null, Running).Value!, Bootstrap.Of(stated, null, Running).Value!);
        for (var j = 0; j < 2; j++)
        {
            Assert.Equal(1.5, stated.Parameters[j].StandardError!.Value / plain.Parameters[j].StandardError!.Value, 6);
            Assert.Equal(one.Parameters[j].Studentised!.Value.Low, two.Parameters[j].Studentised!.Value.Low, 6);
            Assert.Equal(one.Parameters[j].Studentised!.Value.High, two.Parameters[j].Studentised!.Value.High, 6);
        }
    }

    [Theory, InlineData(1), InlineData(2), InlineData(4)]
    public void Progress_OnAnyThreads_CountsUpToTheLastOneAndChangesNothing(int threads)
    {
        var (langmuir, sips) = (Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain), Fit.Of<Sips>(RegressionData.Points("sips"), Plain));
        var told = new Told();
        var loud = Bootstrap.SideBySide(
            [(langmuir, Resampling.Residual), (sips, Resampling.Wild)], new() { Count = 1100, Seed = 5, Threads = threads, Progress = told }, Running);
        Assert.Equal(2 * 5, told.Counts.Count);
        Assert.Equal(told.Counts.Order(), told.Counts);
        Assert.Equal(1100, told.Counts[^1]);
        Assert.Equal(Bootstrap.Of(langmuir, new() { Count = 1100, Seed = 5 }, Running).Value!.Draws(0), loud[0].Value!.Draws(0));
        Assert.Equal(Bootstrap.Of(sips, new() { Count = 1100, Seed = 5, Scheme = Resampling.Wild }, Running).Value!.Draws(2), loud[1].Value!.Draws(2));
        Assert.Equal(Resampling.Wild, loud[1].Value!.Scheme);
    }

    [Fact]
    public void SideBySide_WhatIsNoFit_GivesItsReasonInItsPlace()
    {
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        var all = Bootstrap.SideBySide([(Fit.Of<Sips>(new([1, 2, 3], [1, 2, 2.5])), Resampling.Residual), (fit, Resampling.Residual)], new() { Count = 500 }, Running);
        Assert.Equal("HF-424", all[0].Findings[0].Code);
        Assert.Equal(500, all[1].Value!.Draws(0).Count);
    }

    // Stopped from within, at a fifth: no block is begun after that, and what was done is not handed out.
    [Theory, InlineData(1), InlineData(2)]
    public void Bootstrap_StoppedOnTheWay_GivesNothing(int threads)
    {
        using var stop = new CancellationTokenSource();
        var told = new Told { After = 2000, Then = stop.Cancel };
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        Assert.Throws<OperationCanceledException>(() => Bootstrap.Of(fit, new() { Count = 10_000, Threads = threads, Progress = told }, stop.Token));
        Assert.InRange(told.Counts[^1], 2000, 2000 + (250 * threads));
    }

    // Between two resamples of one block, too: blocks of a slow curve take long.
    [Fact]
    public void Refits_Stopped_EndWithTheResampleAtHand()
    {
        using var stop = new CancellationTokenSource();
        var fit = Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain);
        var last = 0;
        Assert.Throws<OperationCanceledException>(() => Bootstrap.Refits(fit, new Draws(100, 2), 0, 100, (resample, _, _) =>
        {
            last = resample;
            if (resample == 7)
                stop.Cancel();
            return true;
        }, stop.Token));
        Assert.Equal(7, last);
    }

    private static double Sd(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }

    private sealed class Told : IProgress<int>
    {
        public List<int> Counts { get; } = [];

        public int After { get; init; } = int.MaxValue;

        public Action? Then { get; init; }

        public void Report(int value)
        {
            Counts.Add(value);
            if (value >= After)
                Then?.Invoke();
        }
    }

    private readonly struct Line(double[] x) : IPrediction
    {
        public static ModelCard Card { get; } = new("line", "a + b·x", [new("a", Kind.Response, "{y}", "intercept"), new("b", Kind.PerX, "{y}/({x})", "slope")], "test", "test");

        public int Count => x.Length;

        public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] + (p[1] * x[i]);
    }
}
