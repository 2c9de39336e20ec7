using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

/// <summary>
/// The deciding numbers of reference/design/demo-seed-1589-verdicts.csv (scipy 1.10.1), recomputed from the INVENTED readings of
/// demo-seed-1589-values.csv; four figures.
/// </summary>
public class InventedVerdictTests
{
    private static readonly IReadOnlyList<ReferenceRow> Rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv");

    [Fact]
    public void ParticleLength_HeadToHead_IsNotShownToBeUnchanged()
    {
        var r = Ratio.OfGeometricMeans(Of("TEM-EHA2", "length nm"), Of("TEM-HA0", "length nm")).Value!;
        Agree.Digits(3.6, 0.9528, r.Value);
        Agree.Digits(3.6, 0.8627, r.Interval(0.90).Low);
        Agree.Digits(3.3, 1.052, r.Interval(0.90).High);
        Agree.Digits(3.3, 0.4219, r.PDiffersFrom(1));
    }

    [Fact]
    public void Area_ThreeAliquotsEach_IsNotShownToDiffer()
    {
        var d = TwoMeans.Welch(Of("BET", "area m2/g", "EHA-2"), Of("BET", "area m2/g", "HA-0")).Value!;
        Assert.Equal(-3.9, d.Value, 0.05);
        Agree.Digits(3.6, -8.862, d.Interval().Low);
        Agree.Digits(3.3, 1.063, d.Interval().High);
        Agree.Digits(3.3, 0.09369, d.PDiffersFrom(0));
    }

    [Theory]
    [InlineData("KIN-05", 0.009015, -0.0147, 0.03273, -0.01972, 0.03775), InlineData("KIN-20", 0.05969, 0.0451, 0.07427, 0.04202, 0.07735)]
    public void Plateau_StepAfterTwoHours_AgreesWithComputation(string series, double step, double low90, double high90, double low95, double high95)
    {
        double[] late = Of(series, "q mg/g", "180 min"), early = Of(series, "q mg/g", "120 min");
        var times = Rows.Where(r => r["series"] == series && r["quantity"] == "q mg/g").GroupBy(r => r["level"])
            .Select(g => new Group(g.Key, [.. g.Select(r => r.Number("value"))])).ToList();
        var pooled = OneWay.Of(times).Value!;
        var q = late.Average();
        var d = TwoMeans.WithSd(late, early, pooled.PooledSd, pooled.WithinFreedom);
        Agree.Digits(3.3, step, d.Value / q);
        Agree.Digits(3, low90, d.Interval(0.90).Low / q);
        Agree.Digits(3, high90, d.Interval(0.90).High / q);
        Agree.Digits(3, low95, d.Interval().Low / q);
        Agree.Digits(3, high95, d.Interval().High / q);
    }

    [Fact]
    public void Dose_ThreeAgainstNeighbours_AgreesWithComputation()
    {
        var doses = Rows.Where(r => r["series"] == "DOSE" && r["quantity"] == "removal %").GroupBy(r => r["level"])
            .Select(g => new Group(g.Key, [.. g.Select(r => r.Number("value"))])).ToList();
        var pairs = Tukey.AllPairs(OneWay.Of(doses).Value!);
        Agree.Digits(3.6, 0.9824, pairs.Single(c => c is { First: "4 g/L", Second: "3 g/L" }).P);
        Agree.Digits(1.3, 2.1e-7, pairs.Single(c => c is { First: "3 g/L", Second: "2 g/L" }).P);
    }

    [Fact]
    public void Cycles_PooledOverAllOfThem_AgreesWithComputation()
    {
        var cycles = Enumerable.Range(1, 5).Select(i => string.Create(CultureInfo.InvariantCulture, $"cycle {i}")).Select(c => new Group(c, Of("REUSE", "q mg/g", c))).ToList();
        var pooled = OneWay.Of(cycles).Value!;
        Agree.Digits(3.3, 0.2819, pooled.PooledSd);
        Assert.Equal(5, pooled.WithinFreedom);
        var second = pooled.Difference(1, 0);
        Agree.Digits(3.3, 0.4715, second.Value);
        Agree.Digits(3, -0.253, second.Interval().Low);
        Agree.Digits(3.3, 1.196, second.Interval().High);
        Agree.Digits(3.3, 0.1552, second.PDiffersFrom(0));
        var kept = Ratio.WithSd(cycles[4].Values, cycles[0].Values, pooled.PooledSd, 5);
        Agree.Digits(3.6, 0.8601, kept.Value);
        Agree.Digits(3, 0.793, kept.LowerBound());
        Agree.Digits(3.6, 0.9273, kept.UpperBound());
    }

    [Theory, InlineData("roof", 0.9784, 0.9395, 1.017), InlineData("rinse", 0.8287, 0.7974, 0.8601)]
    public void Spikes_SlopeOfFoundOnAdded_AgreesWithComputation(string water, double slope, double low, double high)
    {
        var rows = Rows.Where(r => r["series"] == "SPIKE" && r["level"].StartsWith(water + " +", StringComparison.Ordinal)).ToList();
        var line = LinearTrend.Of([.. rows.Select(r => double.Parse(r["level"].Split(' ')[2], CultureInfo.InvariantCulture))], [.. rows.Select(r => r.Number("value"))]).Value!;
        Agree.Digits(3.6, slope, line.Value);
        Agree.Digits(3.3, low, line.Interval().Low);
        Agree.Digits(3.3, high, line.Interval().High);
    }

    [Fact]
    public void TreatedRinse_AgainstLimits_AgreesWithComputation()
    {
        var mean = Summary.Of(Of("WATER-rinse", "measured concentration mg/L")).MeanEstimate().Value!;
        Agree.Digits(3.6, 0.6361, mean.Value);
        Agree.Digits(3.6, 0.7355, mean.UpperBound());
        Agree.Digits(3.6, 0.5366, mean.LowerBound());
        Assert.True(mean.PBelow(2.38) < 0.05);
        Assert.True(mean.PAbove(0.020) < 0.05);
    }

    private static double[] Of(string series, string quantity, string? level = null)
        => [.. Rows.Where(r => r["series"] == series && r["quantity"] == quantity && (level is null || r["level"] == level)).Select(r => r.Number("value"))];
}
