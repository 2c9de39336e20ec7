using Holdfast.Composition;
using Holdfast.Heating;
using Holdfast.Statistics;

namespace Holdfast.Tests.Heating;

/// <summary>Losses on heating, on a made curve of copper sulfate pentahydrate: masses by the standard atomic weights, 36.08 % lost in all (characterisation chapter, loss on heating).</summary>
public class HeatingCurveTests
{
    private static readonly double Water = 100 * Formula.Parse("H2O").Mass.Value / Formula.Parse("CuSO4.5H2O").Mass.Value;

    [Fact]
    public void Curve_OfAHydrate_LosesItsWatersInItsSteps()
    {
        var curve = HeatingCurve.Of(Made(20), 1)!;
        var steps = curve.Steps();
        Assert.Equal(2, steps.Length);
        Assert.InRange(steps[0].Fastest, 95, 105);
        Assert.InRange(steps[1].Fastest, 225, 235);
        Assert.Equal(4 * Water, curve.Loss(steps[0].From, steps[0].To, "loss").Value, 0.35);
        Assert.Equal(Water, curve.Loss(steps[1].From, steps[1].To, "loss").Value, 0.35);
        var whole = curve.Loss(25, 320, "loss");
        Assert.Equal(36.08, whole.Value, 0.05);
        Assert.Contains(5.0, MassLoss.Hydrates(MassLoss.Waters(whole, Formula.Parse("CuSO4"))));
        Assert.DoesNotContain(steps, s => s.Endless);
        Assert.Equal(20, curve.Milligrams!.Value, 0.05);
    }

    // The same curve with a point every ten kelvin, as typed from a print.
    [Fact]
    public void Curve_WithFewPoints_HasItsSteps()
    {
        var steps = HeatingCurve.Of(Made(20).Where((_, i) => i % 20 == 0), 1)!.Steps();
        Assert.Equal(2, steps.Length);
        Assert.InRange(steps[0].Fastest, 85, 115);
        Assert.InRange(steps[1].Fastest, 215, 245);
    }

    // 0.1 mg of buoyancy as a rectangular bound: 0.1/√3 mg of the first mass, so twice as much in half the powder.
    [Theory]
    [InlineData(20, 0.28868)]
    [InlineData(10, 0.57735)]
    public void Uncertainty_OfALoss_HoldsBuoyancy(double milligrams, double percent)
    {
        var curve = HeatingCurve.Of(Made(milligrams, noise: 0), 1)!;
        Assert.Equal(percent, curve.Loss(25, 320, "loss").U, 2e-3);
        Assert.Equal(0, HeatingCurve.Of(Made(milligrams, noise: 0), null)!.Loss(25, 320, "loss").U, 2e-3);
    }

    [Fact]
    public void Scatter_OfMasses_IsThatPutOn()
        => Assert.Equal(100 * 0.01 / 20, HeatingCurve.Of(Made(20, noise: 0.01), 1)!.Scatter, 0.012);

    [Fact]
    public void Curve_ThatEndsInAStep_SaysSo()
        => Assert.True(HeatingCurve.Of(Made(20).Where(p => p.Temperature < 230), 1)!.Steps()[^1].Endless);

    [Fact]
    public void Points_TooFewOrFallingBack_MakeNoCurve()
    {
        Assert.Null(HeatingCurve.Of(Made(20).Take(19), 1));
        Assert.NotNull(HeatingCurve.Of(Made(20).Take(20), 1));
        Assert.Null(HeatingCurve.Of(Enumerable.Range(0, 100).Select(i => (300.0 - i, 10.0)), 1));
    }

    private static (double Temperature, double Mass)[] Made(double milligrams, double noise = 0.005)
    {
        var random = new SeededStream(77, "heating");
        static double Done(double t, double middle, double width) => 1 / (1 + Math.Exp(-(t - middle) / width));
        return [.. Enumerable.Range(0, 591).Select(i => 25 + 0.5 * i).Select(t => (t, milligrams * (1 - (4 * Water * Done(t, 100, 6) + Water * Done(t, 230, 5)) / 100) + noise * random.Normal()))];
    }
}
