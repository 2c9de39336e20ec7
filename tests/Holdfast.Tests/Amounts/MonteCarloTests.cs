using Holdfast.Amounts;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Amounts;

public class MonteCarloTests
{
    // JCGM 101:2008, 9.2.2 to 9.2.4: sums of four inputs. Exact ends in reference/measurement/monte-carlo.csv; the bar is four standard
    // errors of a quantile, √(p(1 − p)/M)/f, f being the density at the end (normal; (4a − s)³/(6(2a)⁴); about 0.016).
    [Theory]
    [InlineData("four standard normals", Shape.Normal, 1, 0.0292)]
    [InlineData("four rectangulars mean 0 sd 1", Shape.Rectangular, 1, 0.0328)]
    [InlineData("three rectangulars sd 1 and one sd 10", Shape.Rectangular, 10, 0.016)]
    public void Propagate_TheSumsOfTheGuide_GivesTheirIntervals(string name, Shape shape, double last, double density)
    {
        var expected = ReferenceTable.Read("measurement", "monte-carlo.csv").Single(r => r["case"] == name);
        Measured[] inputs = [.. Enumerable.Range(0, 4).Select(i => Measured.From(0, new Source("x" + (char)('a' + i), "x", i == 3 ? last : 1, Shape: shape)))];
        var outcome = MonteCarlo.Propagate(inputs, x => x[0] + x[1] + x[2] + x[3], new SeededStream(7, name));
        var result = outcome.Value!;
        Assert.True(result.Settled);
        Assert.Empty(outcome.Findings);
        var bar = 4 * Math.Sqrt(0.025 * 0.975 / result.Draws) / density;
        Assert.Equal(expected.Number("lo95"), result.EqualTails.Low, bar);
        Assert.Equal(expected.Number("hi95"), result.EqualTails.High, bar);
        Assert.Equal(expected.Number("u"), result.U!.Value, 4 * expected.Number("u") / Math.Sqrt(2.0 * result.Draws));
        Assert.Equal(0, result.Mean!.Value, 4 * expected.Number("u") / Math.Sqrt(result.Draws));
        Assert.True(result.Shortest.High - result.Shortest.Low <= result.EqualTails.High - result.EqualTails.Low);
    }

    // A ratio of normals with u(b)/b = 0.2 has no mean; its quantiles follow from z(r) = (2r − 10)/√(0.25 + 0.16r²) (own derivation, file as above).
    [Fact]
    public void Propagate_ARatioWithAPoorDenominator_GivesQuantilesAlone()
    {
        var expected = ReferenceTable.Read("measurement", "monte-carlo.csv").Single(r => r["quantity"] == "ratio, equal tails");
        var a = Measured.From(10, new Source("a", "a", 0.5));
        var b = Measured.From(2, new Source("b", "b", 0.4));
        var outcome = MonteCarlo.Propagate([a, b], x => x[0] / x[1], new SeededStream(7, "ratio"), denominators: [b]);
        var result = outcome.Value!;
        Assert.Null(result.Mean);
        Assert.Null(result.U);
        Assert.Contains(outcome.Findings, f => f.Code == "HF-490");
        foreach (var (end, found) in new[] { (expected.Number("lo95"), result.EqualTails.Low), (expected.Number("hi95"), result.EqualTails.High) })
        {
            double Z(double r) => (2 * r - 10) / Math.Sqrt(0.25 + 0.16 * r * r);
            var density = Math.Exp(-0.5 * Z(end) * Z(end)) / Math.Sqrt(2 * Math.PI) * (Z(end + 1e-6) - Z(end - 1e-6)) / 2e-6;
            Assert.Equal(end, found, 4 * Math.Sqrt(0.025 * 0.975 / result.Draws) / density);
        }

        Assert.Equal(expected.Number("value"), result.Median, 0.03);
        Assert.True(result.IsSkewed);
        Agree.Digits(9, 1.030776406, (a / b).U);
    }

    // An input known from n readings is a scaled t (JCGM 101, 6.4.9): ends at ± t(0.975, ν). t(0.975, 5) = 2.570582, any table.
    [Fact]
    public void Propagate_AnInputFromFewReadings_IsDrawnFromT()
    {
        var x = Measured.From(0, new Source("x", "x", 1, DegreesOfFreedom: 5, Evaluation: Evaluation.Repetition));
        var result = MonteCarlo.Propagate([x], v => v[0], new SeededStream(3, "t")).Value!;
        Assert.Equal(2.570582, result.EqualTails.High, 0.06);
        Assert.Equal(-2.570582, result.EqualTails.Low, 0.06);
        Assert.Equal(Math.Sqrt(5.0 / 3), result.U!.Value, 0.05);
    }

    [Fact]
    public void Propagate_AnInputFromThreeReadings_SaysThatItsSpreadIsNotKnown()
    {
        var x = Measured.From(0, new Source("x", "x", 1, DegreesOfFreedom: 2));
        var outcome = MonteCarlo.Propagate([x], v => v[0], new SeededStream(3, "t"), mostDraws: 20_000);
        Assert.Contains(outcome.Findings, f => f.Code == "HF-493");
        Assert.Null(outcome.Value!.U);
    }

    // Triangular and arcsine draws have the standard deviation they are said to have, and end where the shape ends.
    [Theory]
    [InlineData(Shape.Triangular, 2.449489742783178, 0.025)]
    [InlineData(Shape.Arcsine, 1.414213562373095, 0.0001)]
    [InlineData(Shape.Rectangular, 1.7320508075688772, 0.0002)]
    public void Propagate_AShape_HasItsWidthAndItsEnds(Shape shape, double halfWidth, double nearness)
    {
        var x = Measured.From(0, new Source("x", "x", 1, Shape: shape));
        var result = MonteCarlo.Propagate([x], v => v[0], new SeededStream(3, "shape"), confidence: 0.9999).Value!;
        Assert.Equal(1, result.U!.Value, 0.01);
        Assert.True(result.EqualTails.High <= halfWidth && result.EqualTails.High > halfWidth * (1 - nearness - 0.02));
        Assert.True(result.EqualTails.Low >= -halfWidth);
    }

    // What two inputs share is drawn once: x − x is 0 in every draw, and the order of the inputs changes nothing.
    [Fact]
    public void Propagate_ASharedSource_IsDrawnOnce()
    {
        var x = Measured.From(5, new Source("s", "s", 1));
        var y = x + Measured.From(1, new Source("t", "t", 0.1));
        var same = MonteCarlo.Propagate([x, x], v => v[0] - v[1], new SeededStream(1, "shared")).Value!;
        Assert.Equal((0, 0), (same.EqualTails.Low, same.EqualTails.High));
        var a = MonteCarlo.Propagate([x, y], v => v[1] - v[0], new SeededStream(1, "order")).Value!;
        var b = MonteCarlo.Propagate([y, x], v => v[0] - v[1], new SeededStream(1, "order")).Value!;
        Assert.Equal(a, b);
        Assert.Equal(0.1, a.U!.Value, 0.002);
    }

    [Fact]
    public void Propagate_AFormulaThatLeavesItsRange_DoesNotAnswer()
    {
        var x = Measured.From(0.1, new Source("x", "x", 1));
        var outcome = MonteCarlo.Propagate([x], v => Math.Log(v[0]), new SeededStream(1, "log"));
        Assert.False(outcome.HasValue);
        Assert.Equal("HF-491", outcome.Findings[0].Code);
    }

    [Fact]
    public void Propagate_TooFewDrawsToSettle_SaysSo()
    {
        var x = Measured.From(0, new Source("x", "x", 0.9));
        var outcome = MonteCarlo.Propagate([x], v => v[0], new SeededStream(1, "few"), mostDraws: 20_000);
        Assert.False(outcome.Value!.Settled);
        Assert.Equal(20_000, outcome.Value.Draws);
        Assert.Contains(outcome.Findings, f => f.Code == "HF-492");
    }

    // x² at x = 0 ± 1 is chi-square with one degree of freedom: standard deviation √2, where the first-order law gives 0.
    [Fact]
    public void SecondOrder_OfASquareAtItsVertex_AsksForMonteCarlo()
    {
        var x = Measured.From(0, new Source("x", "x", 1));
        var second = SecondOrder.Of([x], v => v[0] * v[0]);
        Assert.Equal(0, second.FirstOrder, 12);
        Agree.Digits(10, Math.Sqrt(2), second.WithSecondOrder!.Value);
        Assert.True(second.NeedsMonteCarlo);
        Assert.False(SecondOrder.Of([x], v => 3 * v[0] + 1).NeedsMonteCarlo);
    }
}
