using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

// reference/design/decision-check.csv (scipy 1.10.1).
public class RatioTests
{
    // K18: digestion over difference, degrees of freedom of the smaller group.
    [Fact]
    public void OfMeans_MassBalance_AgreesWithComputation()
    {
        var r = Ratio.OfMeans([7.64, 7.73, 7.74], [8.22, 8.15, 8.17], RatioFreedom.SmallerGroup).Value!;
        Agree.Digits(5, 0.941728, r.Value);
        Agree.Digits(5, 0.00456665, r.StandardError);
        Agree.Digits(5, 0.928393, r.Interval(0.90).Low);
        Agree.Digits(5, 0.955062, r.Interval(0.90).High);
    }

    // K28: cycle 5 over cycle 1, 4 degrees of freedom.
    [Fact]
    public void OfMeans_Retention_AgreesWithComputation()
    {
        var r = Ratio.OfMeans([6.72, 6.60, 6.81], [8.02, 7.95, 8.10], RatioFreedom.Sum).Value!;
        Agree.Digits(5, 0.836311, r.Value);
        Agree.Digits(5, 0.00882489, r.StandardError);
        Agree.Digits(5, 0.817497, r.LowerBound());
        Agree.Digits(5, 0.855124, r.UpperBound());
    }

    // K03, K04: sizes on the logarithmic scale.
    [Theory]
    [InlineData(new[] { 61.0, 58, 66, 54, 70, 63, 59, 65 }, new[] { 60.0, 62, 57, 64, 66, 59, 63, 61 }, 0.993907, 0.935994, 1.0554, 0.858352, true)]
    [InlineData(new[] { 61.0, 48, 76, 54, 70 }, new[] { 52.0, 62, 44, 64, 56 }, 0.904207, 0.739819, 1.10512, 0.376549, false)]
    public void OfGeometricMeans_Sizes_AgreesWithComputation(double[] a, double[] b, double ratio, double low, double high, double p, bool same)
    {
        var r = Ratio.OfGeometricMeans(b, a).Value!;
        Agree.Digits(5, ratio, r.Value);
        Agree.Digits(5, low, r.Interval(0.90).Low);
        Agree.Digits(5, high, r.Interval(0.90).High);
        Agree.Digits(5, p, r.PDiffersFrom(1));
        Assert.Equal(same, Equivalence.Of(r, 0.9, 1 / 0.9).IsShown);
    }

    // K19: selectivity, lower bound of the geometric mean.
    [Fact]
    public void GeometricMean_Selectivity_AgreesWithComputation()
    {
        var r = Ratio.GeometricMean([6.1, 5.2, 7.4]).Value!;
        Agree.Digits(5, 6.16862, r.Value);
        Agree.Digits(5, 4.57966, r.LowerBound());
        Assert.True(r.PAbove(3) < 0.05);
    }

    // Fieller's limits are the ratios r at which a − r b is just t standard errors from zero: put back in.
    [Fact]
    public void FiellerInterval_EveryLimit_LiesTStandardErrorsAway()
    {
        Estimate a = new("a", 3.0, 0.4, 8, 10), b = new("b", 2.0, 0.3, 8, 10);
        var interval = Ratio.FiellerInterval(a, b, 8)!.Value;
        foreach (var r in new[] { interval.Low, interval.High })
        {
            var t = Math.Abs(a.Value - r * b.Value) / Math.Sqrt(a.StandardError * a.StandardError + r * r * b.StandardError * b.StandardError);
            Agree.Digits(12, StudentDistribution.Quantile(0.975, 8), t);
        }
    }

    [Fact]
    public void FiellerInterval_LowerEstimateNotDifferentFromZero_HasNone()
        => Assert.Null(Ratio.FiellerInterval(new("a", 3, 0.4, 8, 10), new("b", 0.5, 0.3, 8, 10), 8));

    [Fact]
    public void OfGeometricMeans_NegativeValue_Throws()
        => Assert.Throws<ArgumentException>(() => Ratio.OfGeometricMeans([1.0, -1], [1.0, 2]));
}
