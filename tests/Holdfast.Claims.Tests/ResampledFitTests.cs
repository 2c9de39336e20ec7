using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests;

/// <summary>Resampled intervals beside the profile. With many even residuals both tend to the same interval (Davison and Hinkley 1997, chapter 6; from memory).</summary>
public class ResampledFitTests
{
    private static CancellationToken Running => TestContext.Current.CancellationToken;

    [Fact]
    public void Draw_ManyEvenReadings_AgreesWithTheProfileAndHasNothingToSay()
    {
        var second = One(Langmuir(60, (_, scatter) => 0.2 * scatter), 2000);
        Assert.Equal(Resampling.Residual, second.Resamples.Scheme);
        Assert.All(second.Curve.Fit.Parameters.Zip(second.Resamples.Parameters), p =>
        {
            var (low, high) = (p.First.Profile!.Lower.Value!.Value, p.First.Profile.Upper.Value!.Value);
            Assert.InRange((p.Second.Studentised!.Value.High - p.Second.Studentised.Value.Low) / (high - low), 0.8, 1.25);
            Assert.InRange((p.Second.Percentile!.Value.High - p.Second.Percentile.Value.Low) / (high - low), 0.8, 1.25);
        });
        Assert.Empty(second.Differing);
        Assert.Empty(second.Remarks);
    }

    [Fact]
    public void Draw_ScatterThatGrowsWithTheReading_GivesEachResidualARandomSign()
    {
        var second = One(Langmuir(60, (q, scatter) => 0.08 * q * scatter), 500);
        Assert.Equal(Resampling.Wild, second.Resamples.Scheme);
        Assert.Contains("random sign", string.Join(" ", second.Remarks), StringComparison.Ordinal);
    }

    // The open profile of Bates and Watts 1988, chapter 6: six BOD readings, whose 99 % profile has no upper limit for a and none at all for k
    // (reference/regression/profile-likelihood-py.json). Resamples have ends all the same, and a reader is told what they are worth.
    [Fact]
    public void Draw_WhereTheDataSetNoLimit_SaysThatTheResampledEndIsNone()
    {
        var bod = File.ReadLines(Repository.Path("reference", "regression", "bod.csv")).Skip(1)
            .Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var fit = Fit.Of<PseudoFirstOrder>(new Points([.. bod.Select(r => r[0])], [.. bod.Select(r => r[1])], "d", "mg/L"), new() { Confidence = 0.99 });
        Assert.Equal(LimitKind.Open, fit["qe"].Profile!.Upper.Kind);
        var second = One(fit, 1000);
        Assert.NotNull(second.Resamples.Parameters[0].Studentised);
        Assert.All(second.Resamples.Parameters, p => Assert.Null(p.Percentile));
        Assert.Contains("The data leave the interval of qe open", string.Join(" ", second.Remarks), StringComparison.Ordinal);
        Assert.DoesNotContain("qe", second.Differing);
    }

    [Fact]
    public void Draw_TheSameSeed_IsTheSameToTheLastBitOnAnyThreads()
    {
        var fit = Langmuir(12, (_, scatter) => 0.2 * scatter);
        var (one, two, other) = (Draws(1, 1), Draws(1, 2), Draws(2, 1));
        Assert.Equal(one, two);
        Assert.NotEqual(one, other);

        double[] Draws(ulong seed, int threads)
            => [.. ResampledFit.Draw([new("L", fit)], new() { Count = 1000, Seed = seed, Threads = threads }, Running)[0].Value!.Resamples.Draws(0)];
    }

    // The invented study: what is drawn anew are the concentrations left, with flasks and calibration shared, and the curve is fitted through the mass balance.
    [Fact]
    public void Candidates_OfADemoIsotherm_AreTheCurvesNotToldApart()
    {
        var fitted = DemoStudy.Dossier.Evidence.Isotherms.First(f => f.Series.Name == "TEMP-298");
        var candidates = CandidateCurve.Among("TEMP-298", fitted.Fits);
        Assert.Equal(fitted.Undistinguished.Select(f => f.Card.Name), candidates.Select(c => c.Name));
        var drawn = ResampledFit.Draw(candidates, new() { Count = 200 }, Running);
        Assert.All(drawn, d => Assert.NotNull(d.Value!.Resamples.Parameters[0].Studentised));
    }

    [Fact]
    public void Draw_WhatIsNoFit_GivesItsReasonAndTheOthersTheirs()
    {
        var outcomes = ResampledFit.Draw(
            [new("A", Fit.Of<Sips>(new([1, 2, 3], [1, 2, 2.5]))), new("B", Langmuir(12, (_, s) => 0.2 * s))], new() { Count = 500 }, Running);
        Assert.Equal("HF-424", outcomes[0].Findings[0].Code);
        Assert.Equal("B", outcomes[1].Value!.Curve.Series);
    }

    [Fact]
    public void Draw_WhatWasStopped_GivesNothing()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ResampledFit.Draw([new("L", Langmuir(12, (_, s) => 0.2 * s))], new() { Count = 1000 }, stop.Token));
    }

    [Theory]
    [InlineData(99)]
    [InlineData(1_000_001)]
    public void Draw_TooFewOrTooMany_IsRefused(int count)
        => Assert.Throws<ArgumentOutOfRangeException>(() => ResampledFit.Draw([new("L", Langmuir(12, (_, s) => 0.2 * s))], new() { Count = count }, Running));

    private static ResampledFit One(FitResult fit, int count)
        => ResampledFit.Draw([new("L", fit)], new() { Count = count, Seed = ResampledFit.UsualSeed }, Running)[0].Value!;

    // Truth: 14 mg/g and 0.35 L/mg.
    private static FitResult Langmuir(int points, Func<double, double, double> error)
    {
        var chance = new SeededStream(31, "resampled fit");
        double[] x = [.. Enumerable.Range(1, points).Select(i => 0.2 * Math.Pow(200, (double)i / points))];
        double[] y = [.. x.Select(c => 14 * 0.35 * c / (1 + 0.35 * c)).Select(q => q + error(q, chance.Normal()))];
        return Fit.Of<Langmuir>(new Points(x, y, "mg/L", "mg/g"));
    }
}
