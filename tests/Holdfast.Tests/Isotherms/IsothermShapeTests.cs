using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class IsothermShapeTests
{
    // Cases of reference/sorption/isotherm-data.csv whose truth is known, with the standard deviation that was added to each.
    [Theory]
    [InlineData("edge-straight-line", 0.4, IsothermShape.Straight)]
    [InlineData("henry-noisy", 1.14, IsothermShape.Straight)]
    [InlineData("edge-low-coverage", 0.3, IsothermShape.Bending)]
    [InlineData("langmuir-noisy", 1.1, IsothermShape.Bending)]
    [InlineData("freundlich-noisy", 1.2, IsothermShape.Bending)]
    [InlineData("toth-noisy", 1.1, IsothermShape.Bending)]
    [InlineData("edge-s-shape", 0.6, IsothermShape.SShaped)]
    [InlineData("edge-upward-curve", 0.4, IsothermShape.UpwardEnd)]
    public void Of_CasesOfKnownTruth_IsTheirShape(string name, double sd, IsothermShape expected)
    {
        var data = ReferenceTable.Read("sorption", "isotherm-data.csv").Where(r => r["case"] == name).ToArray();
        double[] q = [.. data.Select(r => r.Number("y"))];
        Assert.Equal(expected, IsothermShapes.Of([.. data.Select(r => r.Number("x"))], q, [.. q.Select(v => sd / Math.Abs(v))]));
    }

    // BET bends first and turns up at the end.
    [Fact]
    public void Of_ACurveThatTurnsUp_IsUpwardEnd()
    {
        double[] c = [0.8, 2.5, 6, 12, 22, 38, 60, 95, 150];
        double[] q = [.. c.Select(v => CurveCase.Named("bet_liquid").Value(v, [30, 0.4, 0.006]))];
        Assert.Equal(IsothermShape.UpwardEnd, IsothermShapes.Of(c, q, [.. q.Select(_ => 0.02)]));
    }

    [Fact]
    public void Of_NothingLeftToRead_IsHighAffinityAndOfThreePointsIsNothing()
    {
        Assert.Equal(IsothermShape.HighAffinity, IsothermShapes.Of([1, 2], [3, 4], [0.1, 0.1], belowLimit: 2));
        Assert.Null(IsothermShapes.Of([1, 2, 3], [3, 4, 5], [0.1, 0.1, 0.1]));
    }
}
