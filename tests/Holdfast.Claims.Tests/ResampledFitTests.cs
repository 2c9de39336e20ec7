using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Statistics;

namespace Holdfast.Claims.Tests;

/// <summary>Resampled intervals beside the profile. With many even residuals both tend to the same interval (Davison and Hinkley 1997, chapter 6; from memory).</summary>
public class ResampledFitTests
{
    [Fact]
    public void Of_ManyEvenReadings_AgreesWithTheProfileAndSaysSo()
    {
        var second = ResampledFit.Of(Langmuir(60, (_, scatter) => 0.2 * scatter), 2000, cancel: TestContext.Current.CancellationToken).Value!;
        Assert.Equal(Resampling.Residual, second.Resamples.Scheme);
        Assert.All(second.Fit.Parameters.Zip(second.Resamples.Parameters), p =>
        {
            var (low, high) = (p.First.Profile!.Lower.Value!.Value, p.First.Profile.Upper.Value!.Value);
            Assert.InRange((p.Second.Studentised!.Value.High - p.Second.Studentised.Value.Low) / (high - low), 0.8, 1.25);
        });
        Assert.Contains("they agree within a third", string.Join(" ", second.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ScatterThatGrowsWithTheReading_GivesEachResidualARandomSign()
    {
        var second = ResampledFit.Of(Langmuir(60, (q, scatter) => 0.08 * q * scatter), 500, cancel: TestContext.Current.CancellationToken).Value!;
        Assert.Equal(Resampling.Wild, second.Resamples.Scheme);
        Assert.Contains("random sign", string.Join(" ", second.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TheSameSeed_IsTheSameToTheLastBit()
    {
        var fit = Langmuir(12, (_, scatter) => 0.2 * scatter);
        var (one, two, other) = (Draw(1), Draw(1), Draw(2));
        Assert.Equal(one, two);
        Assert.NotEqual(one, other);

        double[] Draw(ulong seed) => [.. ResampledFit.Of(fit, 1000, seed).Value!.Resamples.Draws(0)];
    }

    [Fact]
    public void Of_WhatWasStopped_GivesNothing()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => ResampledFit.Of(Langmuir(12, (_, s) => 0.2 * s), 1000, cancel: stop.Token));
    }

    [Theory]
    [InlineData(99)]
    [InlineData(1_000_001)]
    public void Of_TooFewOrTooMany_IsRefused(int count)
        => Assert.Throws<ArgumentOutOfRangeException>(() => ResampledFit.Of(Langmuir(12, (_, s) => 0.2 * s), count, cancel: TestContext.Current.CancellationToken));

    // Truth: 14 mg/g and 0.35 L/mg.
    private static FitResult Langmuir(int points, Func<double, double, double> error)
    {
        var chance = new SeededStream(31, "resampled fit");
        double[] x = [.. Enumerable.Range(1, points).Select(i => 0.2 * Math.Pow(200, (double)i / points))];
        double[] y = [.. x.Select(c => 14 * 0.35 * c / (1 + 0.35 * c)).Select(q => q + error(q, chance.Normal()))];
        return Fit.Of<Langmuir>(new Points(x, y, "mg/L", "mg/g"));
    }
}
