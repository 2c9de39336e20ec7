using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class SeveralGroupsTests
{
    private static readonly Group[] Plants =
        [.. new[] { "ctrl", "trt1", "trt2" }.Select(g => new Group(g, CheckedStatistics.Values("plant-growth", g)))];

    private static OneWay Analysis => OneWay.Of(Plants).Value!;

    // reference/measurement/statistics-expected.csv: data set PlantGrowth of R 4.2.2 (Dobson 1983).
    [Fact]
    public void OneWay_PlantGrowth_AgreesWithR()
    {
        Agree.Digits(9, CheckedStatistics.Of("plant-growth", "anova", "F"), Analysis.F);
        Agree.Digits(9, CheckedStatistics.Of("plant-growth", "anova", "p"), Analysis.P);
    }

    [Fact]
    public void Tukey_PlantGrowth_AgreesWithR()
    {
        var found = Tukey.AllPairs(Analysis);
        Assert.Equal(3, found.Count);
        foreach (var c in found)
            Agree.Digits(8, CheckedStatistics.Of("plant-growth", "tukey", $"p {c.First}-{c.Second}"), c.P, c.First);
        Agree.Digits(8.5, CheckedStatistics.Of("plant-growth", "tukey", "q crit 0.05 3 27"), StudentizedRange.Quantile(0.95, 3, 27));
    }

    [Fact]
    public void Tukey_OneGroupAgainstTheOthers_IsThatPartOfAllPairs()
    {
        var all = Tukey.AllPairs(Analysis);
        for (var group = 0; group < Analysis.Groups.Count; group++)
        {
            foreach (var one in Tukey.PairsOf(Analysis, group))
            {
                var same = all.Single(c => (c.First == one.First && c.Second == one.Second) || (c.First == one.Second && c.Second == one.First));
                Assert.Equal(same.P, one.P, 14);
                Assert.Equal(same.First == one.First ? same.Difference.Value : -same.Difference.Value, one.Difference.Value, 14);
                Assert.Equal(same.Comparisons, one.Comparisons);
            }
        }
    }

    [Fact]
    public void Tukey_Interval_ExcludesZeroExactlyWhenPIsBelowFivePercent()
        => Assert.All(Tukey.AllPairs(Analysis), c => Assert.Equal(c.P < 0.05, !c.Simultaneous!.Value.Contains(0)));

    [Fact]
    public void Holm_PlantGrowth_AgreesWithR()
    {
        foreach (var c in Holm.AllPairs(Analysis))
            Agree.Digits(9, CheckedStatistics.Of("plant-growth", "holm (pooled sd)", $"p {c.First}-{c.Second}"), c.P, c.First);
    }

    // reference/design/decision-check.csv K05, K06 (scipy 1.10.1).
    [Fact]
    public void Tukey_Doses_AgreesWithComputation()
    {
        var a = OneWay.Of([new("1", [71.2, 70.1, 72.0]), new("2", [84.9, 86.2, 85.5]), new("3", [86.1, 85.0, 84.7])]).Value!;
        Agree.Digits(5, 0.790921, a.PooledSd);
        var pairs = Tukey.AllPairs(a);
        Agree.Digits(5, 0.911627, pairs.Single(c => c is { First: "3", Second: "2" }).P);
        Agree.Digits(5, 1.30344e-06, pairs.Single(c => c is { First: "2", Second: "1" }).P);
        var step = a.Difference(2, 1);
        Agree.Digits(5, -0.266667, step.Value);
        Agree.Digits(5, -1.52154, step.Interval(0.90).Low);
        Agree.Digits(5, 0.988208, step.Interval(0.90).High);
        Assert.True(Equivalence.Of(step, -2, 2).IsShown);
    }

    // K30: three batches of three vessels.
    [Fact]
    public void RandomEffects_ThreeBatches_AgreesWithComputation()
    {
        var r = RandomEffects.Of([new("a", [8.0, 8.2, 7.9]), new("b", [8.4, 8.6, 8.5]), new("c", [7.8, 7.7, 7.9])]).Value!;
        Agree.Digits(5, 0.381111, r.Analysis.BetweenMeanSquare);
        Agree.Digits(5, 0.0144444, r.Analysis.WithinMeanSquare);
        Agree.Digits(5, 26.3846, r.Analysis.F);
        Agree.Digits(5, 0.00106415, r.Analysis.P);
        Agree.Digits(5, 0.349603, r.BetweenSd);
        Agree.Digits(5, 4.31017, 100 * r.BetweenSd / r.BatchMeans.Mean);
        Agree.Digits(5, 1.57375, r.BatchSdUpperBound());
        Agree.Digits(5, 19.4024, 100 * r.BatchSdUpperBound() / r.BatchMeans.Mean);
        Assert.Equal(2, r.Mean().Value!.DegreesOfFreedom);
    }

    [Fact]
    public void RandomEffects_BatchesAlike_GivesNoNegativeVariance()
        => Assert.Equal(0, RandomEffects.Of([new("a", [1.0, 2, 3]), new("b", [1.1, 2, 2.9])]).Value!.BetweenSd);

    // With two groups Welch's analysis is Welch's t test: F = t², the same degrees of freedom and p.
    [Fact]
    public void WelchAnova_TwoGroups_EqualsWelchTest()
    {
        var t = TwoMeans.Welch(Plants[0].Values, Plants[2].Values).Value!;
        var a = WelchAnova.Of([Plants[0], Plants[2]]).Value!;
        Agree.Digits(12, t.T(0) * t.T(0), a.F);
        Agree.Digits(12, t.DegreesOfFreedom, a.Below);
        Agree.Digits(12, t.PDiffersFrom(0), a.P);
    }

    // The studentised range of two means is |t|·√2, so one pair costs nothing.
    [Fact]
    public void GamesHowell_TwoGroups_EqualsWelchTest()
    {
        var t = TwoMeans.Welch(Plants[2].Values, Plants[0].Values).Value!;
        var c = Assert.Single(GamesHowell.AllPairs([Plants[0], Plants[2]]).Value!);
        Agree.Digits(10, t.PDiffersFrom(0), c.P);
        Agree.Digits(9, t.Interval().Low, c.Simultaneous!.Value.Low);
    }

    // C. W. Dunnett, Biometrics 20 (1964) 482–491, two-sided 5 %, equal replicates; printed to 2 decimals, from memory.
    [Theory]
    [InlineData(5, 1, 2.57), InlineData(5, 2, 3.03), InlineData(5, 3, 3.29), InlineData(10, 2, 2.57), InlineData(10, 4, 2.89)]
    [InlineData(20, 2, 2.38), InlineData(20, 3, 2.54), InlineData(double.PositiveInfinity, 2, 2.21), InlineData(double.PositiveInfinity, 4, 2.44)]
    public void ManyToOne_EqualReplicates_AgreesWithPrintedTable(double dof, int groups, double printed)
        => Assert.Equal(printed, ManyToOne.Quantile(0.95, 3, [.. Enumerable.Repeat(3, groups)], dof), 0.0051);

    [Fact]
    public void Dunnett_OneGroup_EqualsPlainTest()
    {
        var a = OneWay.Of([Plants[0], Plants[1]]).Value!;
        var c = Assert.Single(Dunnett.AgainstControl(a, 0));
        Agree.Digits(10, a.Difference(1, 0).PDiffersFrom(0), c.P);
    }

    // Looking k times at one control costs more than looking once and no more than multiplying by k.
    [Fact]
    public void Dunnett_SeveralGroups_LiesBetweenPlainAndMultiplied()
    {
        foreach (var c in Dunnett.AgainstControl(Analysis, 0))
            Assert.InRange(c.P, c.Difference.PDiffersFrom(0), 2 * c.Difference.PDiffersFrom(0));
    }

    [Fact]
    public void Holm_OrderOfQuestions_DoesNotMatter()
        => Assert.Equal([0.04, 0.03, 0.04], Holm.Adjust([0.03, 0.01, 0.02]).Select(p => Math.Round(p, 12)));

    [Fact]
    public void OneWay_SingleValues_Refuses()
        => Assert.False(OneWay.Of([new("a", [1.0]), new("b", [2.0])]).HasValue);

    [Fact]
    public void OneWay_OneGroup_Throws() => Assert.Throws<ArgumentException>(() => OneWay.Of([new("a", [1.0, 2])]));
}
