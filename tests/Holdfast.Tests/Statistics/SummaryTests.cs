using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class SummaryTests
{
    // The shape of the NIST univariate set NumAcc4 (NIST StRD): 10000000.2 and then .1 and .3 in turn, 1001 values, sd exactly 0.1.
    [Fact]
    public void Of_LargeCloseValues_KeepsTheScatter()
    {
        var s = Summary.Of([10000000.2, .. Enumerable.Range(0, 1000).Select(i => i % 2 == 0 ? 10000000.1 : 10000000.3)]);
        Agree.Digits(15, 10000000.2, s.Mean);
        Agree.Digits(7.9, 0.1, s.Sd!.Value);
    }

    [Fact]
    public void Of_EvenAndOddCounts_FindsTheMedian()
    {
        Assert.Equal(2, Summary.Of([3.0, 1.0, 2.0]).Median);
        Assert.Equal(2.5, Summary.Of([4.0, 1.0, 2.0, 3.0]).Median);
    }

    // reference/measurement/flag-cases.csv, "variance by three": n = 3, sd 0.02 is known to 0.0104..0.1257.
    [Fact]
    public void SdInterval_ThreeValues_IsWide()
    {
        var i = Summary.Of([0.98, 1.0, 1.02]).SdInterval()!.Value;
        Assert.Equal(0.0104, i.Low, 0.00005);
        Assert.Equal(0.1257, i.High, 0.00005);
    }

    // reference/design/decision-check.csv K23 (scipy 1.10.1).
    [Fact]
    public void MeanEstimate_TreatedWater_BoundsAgreeWithComputation()
    {
        var e = Summary.Of([0.653, 0.685, 0.57]).MeanEstimate().Value!;
        Agree.Digits(5, 0.636, e.Value);
        Agree.Digits(5, 0.535936, e.LowerBound());
        Agree.Digits(5, 0.736064, e.UpperBound());
    }

    [Fact]
    public void Of_SingleValue_HasNoScatterAndSaysSo()
    {
        var s = Summary.Of([4.2]);
        Assert.Null(s.Sd);
        Assert.Null(s.SdInterval());
        Assert.False(s.MeanEstimate().HasValue);
    }

    [Fact]
    public void Of_NoValue_Throws() => Assert.Throws<ArgumentException>(() => Summary.Of([]));
}
