using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class TwoMeansTests
{
    private static readonly double[] First = CheckedStatistics.Values("sleep", "1"), Second = CheckedStatistics.Values("sleep", "2");

    // reference/measurement/statistics-expected.csv: data set sleep of R 4.2.2, t.test.
    [Fact]
    public void Welch_SleepData_AgreesWithR()
    {
        var d = TwoMeans.Welch(First, Second).Value!;
        Agree.Digits(9, CheckedStatistics.Of("sleep", "welch", "t"), d.T(0));
        Agree.Digits(9, CheckedStatistics.Of("sleep", "welch", "p"), d.PDiffersFrom(0));
        Agree.Digits(9, CheckedStatistics.Of("sleep", "welch", "df"), d.DegreesOfFreedom);
        Assert.Equal(20, d.N);
    }

    [Fact]
    public void Paired_SleepData_AgreesWithR()
    {
        var d = TwoMeans.Paired(First, Second).Value!;
        Agree.Digits(9, CheckedStatistics.Of("sleep", "paired", "t"), d.T(0));
        Agree.Digits(9, CheckedStatistics.Of("sleep", "paired", "p"), d.PDiffersFrom(0));
        Assert.Equal("paired, mean difference", d.Method);
    }

    [Fact]
    public void Equivalence_SleepData_AgreesWithComputation()
    {
        const string Test = "paired equivalence, margin 3";
        var e = Equivalence.Of(TwoMeans.Paired(First, Second).Value!, -3, 3);
        Agree.Digits(9, CheckedStatistics.Of("sleep", Test, "p_low"), e.PLow);
        Agree.Digits(8.5, CheckedStatistics.Of("sleep", Test, "p_high"), e.PHigh);
        Agree.Digits(9, CheckedStatistics.Of("sleep", Test, "lo90"), e.Interval.Low);
        Agree.Digits(9, CheckedStatistics.Of("sleep", Test, "hi90"), e.Interval.High);
        Assert.True(e.IsShown);
        Assert.Equal(e.PLow, e.P);
    }

    // Interval inside the margin and both one-sided p below 5 % are the same statement (Schuirmann 1987).
    [Theory, InlineData(2.0), InlineData(2.29), InlineData(2.294), InlineData(5.0)]
    public void Equivalence_AnyMargin_IntervalAndTestsAgree(double margin)
    {
        var e = Equivalence.Of(TwoMeans.Paired(First, Second).Value!, -margin, margin);
        Assert.Equal(e.P < 0.05, e.IsShown);
    }

    // reference/design/decision-check.csv K01, K02, K29 (scipy 1.10.1).
    [Theory]
    [InlineData(new[] { 71.9, 73.0, 72.4 }, new[] { 78.2, 80.1, 77.5 }, -6.16667, 0.839312, 2.65204, -9.04737, -3.28597, 0.00781657)]
    [InlineData(new[] { 71.9, 76.0 }, new[] { 78.2, 80.1 }, -5.2, 2.25942, 1.41057, -20.0694, 9.66936, 0.19851)]
    public void Welch_SmallAreas_AgreesWithComputation(double[] a, double[] b, double d, double se, double dof, double low, double high, double p)
    {
        var e = TwoMeans.Welch(a, b).Value!;
        Agree.Digits(5, d, e.Value);
        Agree.Digits(5, se, e.StandardError);
        Agree.Digits(5, dof, e.DegreesOfFreedom);
        Agree.Digits(5, low, e.Interval().Low);
        Agree.Digits(5, high, e.Interval().High);
        Agree.Digits(5, p, e.PDiffersFrom(0));
    }

    [Fact]
    public void Paired_RegeneratedAgainstFresh_AgreesWithComputation()
    {
        var e = TwoMeans.Paired([8.35, 8.21, 8.18], [8.02, 7.95, 8.10]).Value!;
        Agree.Digits(5, 0.223333, e.Value);
        Agree.Digits(5, -0.0970466, e.Interval().Low);
        Agree.Digits(5, 0.543713, e.Interval().High);
    }

    // K07, K08: the step over q(180), taken as a fixed number.
    [Theory]
    [InlineData(new[] { 5.92, 6.05, 5.98 }, 0.00664084, -0.0136567, 0.0269384)]
    [InlineData(new[] { 5.52, 5.61, 5.47 }, 0.0813503, 0.0602459, 0.102455)]
    public void Pooled_StepOfLoading_AgreesWithComputation(double[] early, double step, double low, double high)
    {
        double[] late = [6.02, 6.10, 5.95];
        var e = TwoMeans.Pooled(late, early).Value!;
        var q = late.Average();
        Assert.Equal(4, e.DegreesOfFreedom);
        Agree.Digits(5, step, e.Value / q);
        Agree.Digits(5, low, e.Interval(0.90).Low / q);
        Agree.Digits(5, high, e.Interval(0.90).High / q);
    }

    // The larger of replicate-based and propagated uncertainty is used, with its own degrees of freedom.
    [Fact]
    public void AtLeast_LargerPropagatedUncertainty_TakesOver()
    {
        var e = TwoMeans.Welch(First, Second).Value!;
        Assert.Same(e, e.AtLeast(e.StandardError / 2));
        Assert.Equal(1.96, e.AtLeast(2).Interval().Half / 2, 0.0001);
        Assert.Equal(5, e.AtLeast(2, 5).DegreesOfFreedom);
    }

    [Fact]
    public void Welch_OneValue_SaysThatThereIsNoScatter()
    {
        var outcome = TwoMeans.Welch([1.0], [2.0, 2.1]);
        Assert.Null(outcome.Value);
        Assert.Equal("HF-449", Assert.Single(outcome.Findings).Code);
    }

    [Fact]
    public void Welch_EqualValuesOnly_RefusesInsteadOfDividingByZero()
        => Assert.False(TwoMeans.Welch([1.0, 1.0], [2.0, 2.0]).HasValue);

    [Fact]
    public void Paired_UnequalLengths_Throws() => Assert.Throws<ArgumentException>(() => TwoMeans.Paired([1.0, 2], [1.0]));

    [Fact]
    public void Welch_NotANumber_Throws() => Assert.Throws<ArgumentException>(() => TwoMeans.Welch([1.0, double.NaN], [1.0, 2.0]));
}
