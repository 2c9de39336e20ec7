using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class TrendTests
{
    private const string Cycles = "cycles 8.05 8.25 7.60 7.10 6.70";
    private static readonly double[] Five = [8.05, 8.25, 7.60, 7.10, 6.70];

    // Hollander & Wolfe, tuna quality, as quoted by the manual of R's cor.test.
    [Fact]
    public void Kendall_Tuna_AgreesWithPrintedExample()
    {
        var k = Kendall.Of(CheckedStatistics.Levels("tuna"), CheckedStatistics.Values("tuna")).Value!;
        Agree.Digits(9, CheckedStatistics.Of("tuna", "kendall", "tau"), k.Tau);
        Agree.Digits(8, CheckedStatistics.Of("tuna", "kendall", "p exact"), k.P);
        Assert.True(k.Exact);
    }

    [Fact]
    public void LinearTrend_Cycles_AgreesWithComputation()
    {
        var slope = LinearTrend.Of([1, 2, 3, 4, 5], Five).Value!;
        Agree.Digits(9, CheckedStatistics.Of(Cycles, "linear trend", "slope"), slope.Value);
        Agree.Digits(9, CheckedStatistics.Of("", "linear trend", "p two-sided"), slope.PDiffersFrom(0));
        Assert.Equal(3, slope.DegreesOfFreedom);
    }

    [Fact]
    public void Kendall_Cycles_AgreesWithComputation()
        => Agree.Digits(9, CheckedStatistics.Of("", "kendall", "p one-sided decreasing, exact"), Kendall.Of([1, 2, 3, 4, 5], Five).Value!.PDecreasing);

    // Counting orders and trying them all must agree; a tie of x far away from any other turns the count off.
    [Fact]
    public void Kendall_WithTies_CountsEveryOrder()
    {
        // x 1 2 3 3, y 1 2 3 4: S = 5, and of the 24 orders only two (the tied pair either way) reach it.
        var k = Kendall.Of([1, 2, 3, 3], [1, 2, 3, 4]).Value!;
        Assert.Equal(5, k.S);
        Agree.Digits(12, 2.0 / 24, k.PIncreasing);
    }

    // reference/design/decision-check.csv K09 (scipy 1.10.1).
    [Fact]
    public void JonckheereTerpstra_Removal_AgreesWithComputation()
    {
        var j = JonckheereTerpstra.Of(
        [
            new("10", [92.4, 91.8, 92.9]), new("20", [88.1, 89.0, 87.6]), new("40", [81.2, 80.5, 82.2]), new("80", [66.0, 67.1, 65.2]),
        ]).Value!;
        Assert.Equal(0, j.J);
        Assert.Equal(27, j.Mean);
        Assert.Equal(49.5, j.Variance);
        Agree.Digits(5, -3.83761, j.Z);
        Agree.Digits(5, 6.21181e-05, j.PDecreasing);

        // One arrangement of 12!/(3!)⁴ = 369,600 falls throughout.
        Agree.Digits(12, 1.0 / 369600, j.ExactPDecreasing!.Value);
        Agree.Digits(12, 1, j.ExactPIncreasing!.Value);
    }

    // With groups of one value J is (S + pairs)/2 of Kendall, so both exact p are the same number.
    [Fact]
    public void JonckheereTerpstra_SingleValues_EqualsKendall()
    {
        var j = JonckheereTerpstra.Of([.. Five.Select((v, i) => new Group($"cycle {(char)('1' + i)}", [v]))]).Value!;
        var k = Kendall.Of([1, 2, 3, 4, 5], Five).Value!;
        Agree.Digits(12, k.PDecreasing, j.ExactPDecreasing!.Value);
        Agree.Digits(12, k.PIncreasing, j.ExactPIncreasing!.Value);
    }

    [Fact]
    public void JonckheereTerpstra_EqualValues_TurnsToTheApproximation()
    {
        var j = JonckheereTerpstra.Of([new("a", [1.0, 2]), new("b", [2.0, 3])]).Value!;
        Assert.Null(j.ExactPIncreasing);
        Assert.Equal(3.5, j.J);
        Assert.InRange(j.PIncreasing, 0.01, 0.5);
    }

    [Fact]
    public void LinearTrend_TwoValues_Refuses() => Assert.False(LinearTrend.Of([1, 2], [3.0, 4]).HasValue);
}
