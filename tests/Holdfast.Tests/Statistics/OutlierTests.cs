using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class OutlierTests
{
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1 (data from memory; its printed G and limit come out).
    [Fact]
    public void Grubbs_NistExample_FlagsTheLargeMass()
    {
        var values = CheckedStatistics.Values("grubbs-nist");
        var g = Grubbs.Of(values).Value!;
        Agree.Digits(9, CheckedStatistics.Of("grubbs-nist", "grubbs", "G"), g.G);
        Agree.Digits(9, CheckedStatistics.Of("grubbs-nist", "grubbs", "critical 0.05 two-sided"), g.Critical);
        Agree.Digits(9, CheckedStatistics.Of("grubbs-nist", "grubbs", "critical 0.10 two-sided = one-sided 0.05"), Grubbs.CriticalValue(8, 0.10));
        Assert.True(g.IsFlagged);
        Assert.Equal(245.57, values[g.Index]);
    }

    // reference/measurement/flag-cases.csv, "two of three agree".
    [Fact]
    public void Dixon_TwoOfThreeAgree_IsNoOutlier()
    {
        var d = Dixon.Of([1.01, 1.02, 1.20]).Value!;
        Assert.Equal(0.947, d.Q, 0.0005);
        Assert.Equal(1.20, d.Value);
        Assert.False(d.IsFlagged);
    }

    [Fact]
    public void Dixon_TooMany_Throws() => Assert.Throws<ArgumentException>(() => Dixon.Of([.. Enumerable.Range(0, 11).Select(i => (double)i)]));

    [Fact]
    public void Grubbs_TwoValues_Refuses() => Assert.False(Grubbs.Of([1.0, 2.0]).HasValue);
}
