using Holdfast.Calibration;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

public class LinearRangeTests
{
    // reference/measurement/linear-range.csv (numpy/scipy): made quenching series, F0/F with the first reading as F0.
    [Fact]
    public void Linearity_EveryRange_AgreesWithComputation()
    {
        var rows = ReferenceTable.Read("measurement", "linear-range.csv");
        Assert.Equal(18, rows.Count);
        foreach (var r in rows)
        {
            var l = Linearity.Of([.. Series(r["dataset"]).Take((int)r.Number("points_used_from_lowest"))]);
            var at = $"{r["dataset"]} to {r["Q_max"]}";
            Agree.Digits(8.5, r.Number("slope"), l.Line.SlopeAt(0), at);
            Agree.Digits(8.5, r.Number("se_slope"), l.Line.Coefficient(1)!.StandardError, at);
            Agree.Digits(8, r.Number("mandel_F"), l.Mandel!.F, at);
            Agree.Digits(8, r.Number("mandel_p"), l.Mandel.P, at);
            Assert.True(l.LargestResidualPercent <= r.Number("largest_residual_percent") + 1e-8, at);
        }
    }

    // Same table: with Mandel at 1 % the straight series passes throughout, the quadratic one to 30, the partly accessible one to 30 (p 0.0115).
    [Theory, InlineData("linear-noisy", 80.0), InlineData("quadratic-noisy", 30.0), InlineData("accessible-noisy", 30.0)]
    public void Search_MadeSeries_StopsBeforeTheFirstBend(string dataset, double top)
        => Assert.Equal(top, LinearRange.Of(Series(dataset)).Longest!.Top);

    [Fact]
    public void Search_FewerThanFiveLevels_FindsNothing()
        => Assert.Null(LinearRange.Of([.. Series("linear-noisy").Take(4)]).Longest);

    private static StandardReading[] Series(string dataset)
    {
        var rows = ReferenceTable.Read("measurement", "fluorescence-data.csv").Where(r => r["dataset"] == dataset).ToList();
        var f0 = rows[0].Number("F");
        return [.. rows.Select(r => new StandardReading(r.Number("Q"), f0 / r.Number("F")))];
    }
}
