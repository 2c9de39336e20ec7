using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Statistics;

namespace Holdfast.Tests.Fitting;

/// <summary>The one error model of a series against closed forms of generalised least squares and of restricted likelihood.</summary>
public class SeriesTests
{
    // Batch vessels of reference/sorption: start, dose and Langmuir truth 85 mg/g, 0.065 L/mg.
    private static readonly double[] Starts = [20, 40, 60, 80, 100, 120, 140, 160];

    // A line through the origin with relative scatter alone: the ratios q/x are a sample, so that mean, sd and Student's t are the textbook's (JCGM 100, 4.2).
    [Fact]
    public void Series_RelativeScatterAlone_IsTheMeanOfTheRatios()
    {
        double[] x = [4, 5, 6, 7, 8, 9], ratio = [2.1, 1.9, 2.05, 1.8, 2.2, 2.0];
        var fit = Fit.Series<Henry>(new(x, [.. x.Zip(ratio, (a, b) => (Measured)(a * b))]));
        var summary = Summary.Of(ratio);
        Assert.Equal(summary.Mean, fit.Values[0], 2e-4 * summary.Mean);
        Assert.Equal(summary.Sd!.Value / summary.Mean, fit.Errors!.VesselScatter, 0.01 * fit.Errors.VesselScatter);
        Assert.Equal(5, fit.Errors.VesselScatterFreedom!.Value, 0.05);
        var half = StudentDistribution.TwoSided(0.95, 5) * summary.Sd.Value / Math.Sqrt(6);
        Assert.Equal(summary.Mean - half, fit.Parameters[0].Profile!.Lower.Value!.Value, 0.02 * half);
        Assert.Equal(summary.Mean + half, fit.Parameters[0].Profile!.Upper.Value!.Value, 0.02 * half);
    }

    // JCGM 100, 5.2: what all readings share does not average out; u² = s²/n + u²(shared).
    [Fact]
    public void Series_AnErrorThatAllVesselsShare_DoesNotAverageOut()
    {
        double[] x = [4, 5, 6, 7, 8, 9], ratio = [2.1, 1.9, 2.05, 1.8, 2.2, 2.0];
        var pipette = Measured.From(1, new Source("pipette", "one pipette", 0.05));
        var alone = Fit.Series<Henry>(new(x, [.. x.Zip(ratio, (a, b) => (Measured)(a * b))])).Parameters[0];
        var shared = Fit.Series<Henry>(new(x, [.. x.Zip(ratio, (a, b) => pipette * (a * b))])).Parameters[0];
        Assert.Equal(Math.Sqrt(Math.Pow(alone.StandardError!.Value, 2) + Math.Pow(0.05 * alone.Value, 2)), shared.StandardError!.Value, 0.03 * shared.StandardError.Value);
    }

    // With every u stated large no scatter is left to estimate: the answer is the weighted fit through the mass balance (handbook of regression, section 9).
    [Fact]
    public void Series_StatedErrorsThatCoverTheScatter_IsTheWeightedFitThroughTheBalance()
    {
        var (left, u) = Left([1, -1, 1, -1, 1, -1, 1, -1], 0.01);
        var series = Fit.Series<Langmuir>(Vessels(left, [.. u.Select(v => 3 * v)]));
        var batch = Fit.Batch<Langmuir>(new(Starts, [.. Starts.Select(_ => 1.0)], left, u));
        Assert.Equal(0, series.Errors!.VesselScatter);
        Assert.Equal(batch["qm"].Value, series["qm"].Value, 1e-6 * batch["qm"].Value);
        Assert.Equal(batch["K"].Value, series["K"].Value, 1e-6 * batch["K"].Value);
        Assert.Equal(3 * batch.Parameters[0].StandardError!.Value / (batch.Scatter == ScatterModel.Known ? 1 : batch.ResidualSd!.Value), series["qm"].StandardError!.Value, 0.2 * series["qm"].StandardError!.Value);
    }

    // Vessels of one start concentration are replicates of a setting although no two come to the same Ce (handbook of regression, section 14).
    [Fact]
    public void LackOfFit_VesselsOfOneStart_AreReplicatesWhateverTheirCe()
    {
        int[] settings = [0, 0, 1, 1, 2, 2, 3, 3];
        double[] start = [20, 20, 50, 50, 90, 90, 160, 160], off = [1.01, 0.99, 0.985, 1.02, 1.01, 0.995, 0.99, 1.015];
        var langmuir = Replicated<Langmuir>([85, 0.065]);
        Assert.Equal(4, langmuir.LackOfFit!.PureErrorDof);
        Assert.Equal(2, langmuir.LackOfFit.MisfitDof);
        Assert.True(langmuir.LackOfFit.Test.P > 0.05);
        Assert.True(Replicated<Sips>([60, 0.05, 2.5]).LackOfFit!.Test.P < 0.01);
        Assert.InRange(langmuir.Errors!.ReplicateScatter!.Value, 0.005, 0.04);

        FitResult Replicated<TTruth>(double[] truth) where TTruth : struct, ICurve<TTruth>
        {
            var left = start.Select((c, i) => Root(c, x => off[i] * Model.Of<TTruth>().Value(x, truth))).ToArray();
            return Fit.Series<Langmuir>(SeriesPoints.OfVessels(
                [.. start.Select(c => (Measured)c)], [.. start.Select(_ => (Measured)1)],
                [.. left.Select((c, i) => Measured.From(c, new Source(FormattableString.Invariant($"read {i}"), "reading", 0.002 * c)))], settings: settings));
        }
    }

    [Fact]
    public void Series_AReadingBelowZero_StaysInTheFit()
    {
        double[] start = [2, 5, 10, 20, 40, 80], left = [-0.004, 0.021, 0.11, 0.74, 5.9, 36];
        var fit = Fit.Series<Freundlich>(SeriesPoints.OfVessels(
            [.. start.Select(c => (Measured)c)], [.. start.Select(_ => (Measured)2)], [.. left.Select((c, i) => Measured.From(c, new Source(FormattableString.Invariant($"read {i}"), "reading", 0.01 + 0.01 * c)))]));
        Assert.True(fit.IsFit);
        Assert.Equal(6, fit.N);
        Assert.All(fit.Parameters, p => Assert.True(p.Profile!.IsClosed));
    }

    // Leaving a vessel out leaves it out of the covariance too: the same as never having read it, at the covariance of the whole series.
    [Fact]
    public void Influence_OfASeries_NamesTheVesselThatSetsTheCurve()
    {
        var (left, u) = Left([1, -1, 1, -1, 1, -1, 1, -12], 0.01);
        var influence = Influence.Of(Fit.Series<Langmuir>(Vessels(left, u)))!;
        Assert.Equal("point 8", influence.Points.MaxBy(p => p.Cook)!.Id);
    }

    [Fact]
    public void Aicc_OfASeries_PrefersTheTruthByTheFullLikelihood()
    {
        var (left, u) = Left([1, -1, -1, 1, 1, -1, -1, 1], 0.005);
        var points = Vessels(left, u);
        Assert.True(Fit.Series<Langmuir>(points).Aicc < Fit.Series<Freundlich>(points).Aicc - 5);
        Assert.True(Fit.Series<Langmuir>(points).Aicc < Fit.Series<Sips>(points).Aicc);
    }

    [Fact]
    public void Series_OfAKineticCurve_CoversTheTruthOfAnExactSeries()
    {
        double[] t = [3, 6, 12, 25, 50, 100, 200, 300];
        var fit = Fit.Series<PseudoFirstOrder>(new(t, [.. t.Select((x, i) => Measured.From(8 * (1 - Math.Exp(-0.05 * x)), new Source(FormattableString.Invariant($"v{i}"), "vessel", 0.1)))]));
        Assert.Equal(8, fit["qe"].Value, 1e-6);
        Assert.Equal(0.05, fit["k1"].Value, 1e-8);
    }

    private static SeriesPoints Vessels(double[] left, double[] u)
        => SeriesPoints.OfVessels(
            [.. Starts.Select(c => (Measured)c)], [.. Starts.Select(_ => (Measured)1)], [.. left.Select((c, i) => Measured.From(c, new Source(FormattableString.Invariant($"read {i}"), "reading", u[i])))]);

    private static (double[] Left, double[] U) Left(double[] sign, double share)
    {
        double[] exact = [.. Starts.Select(c => Root(c, x => Model.Of<Langmuir>().Value(x, [85, 0.065])))];
        return ([.. exact.Select((c, i) => c * (1 + share * sign[i]))], [.. exact.Select(c => share * c)]);
    }

    private static double Root(double start, Func<double, double> uptake)
    {
        double low = 0, high = start;
        for (var step = 0; step < 200; step++)
        {
            var middle = (low + high) / 2;
            if (middle + uptake(middle) > start)
                high = middle;
            else
                low = middle;
        }

        return low;
    }
}
