using Holdfast.Calibration;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

public class VarianceFunctionTests
{
    [Fact]
    public void Of_ExactVariances_GivesTheFunctionBack()
    {
        var made = new VarianceFunction(0.0006, 0.0005);
        var found = VarianceFunction.Of([.. new[] { 0.0, 0.5, 1, 2, 4 }.Select(x => (x, made.Sd(x), 2.0))])!;
        Agree.Digits(9, made.Sd0, found.Sd0);
        Agree.Digits(9, made.Slope, found.Slope);
    }

    // Maximum likelihood for gamma-distributed variances: both score equations Σ ν(s² − σ²)/σ⁴ = 0 and Σ ν x²(s² − σ²)/σ⁴ = 0 hold.
    [Fact]
    public void Of_MadeProportional_SolvesTheLikelihoodEquations()
    {
        var levels = Level.Of(CheckedCalibration.Standards("made-proportional"));
        var f = VarianceFunction.Of([.. levels.Select(l => (l.Value, l.Readings.Sd!.Value, l.Readings.N - 1.0))])!;
        Assert.Equal(0, levels.Sum(l => Score(l, f)), 1e-6);
        Assert.Equal(0, levels.Sum(l => l.Value * l.Value * Score(l, f)), 1e-6);

        static double Score(Level l, VarianceFunction f)
        {
            double variance = Math.Pow(f.Sd(l.Value), 2), found = Math.Pow(l.Readings.Sd!.Value, 2);
            return (l.Readings.N - 1) * (found / variance - 1) * (variance > 0 ? 1e-8 / variance : 0);
        }
    }

    // Two groups for two unknowns: the law goes through both variances, so each level knows its scatter by its own readings alone; a constant law pools them
    // (F. E. Satterthwaite, Biometrics Bull. 2 (1946) 110; from memory).
    [Fact]
    public void DegreesOfFreedom_OfALawFound_AreThoseOfItsReadings()
    {
        var grows = VarianceFunction.Of([(0.0, 0.001, 2.0), (4.0, 0.003, 9.0)])!;
        Agree.Digits(9, 2, grows.DegreesOfFreedom(1, 0));
        Agree.Digits(9, 9, grows.DegreesOfFreedom(1, 16));
        var constant = VarianceFunction.Of([(0.0, 0.003, 2.0), (1.0, 0.002, 3.0)])!;
        Agree.Digits(9, 5, constant.DegreesOfFreedom(1, 0.25));
        Assert.Equal(double.PositiveInfinity, new VarianceFunction(0.001, 0.002).DegreesOfFreedom(1, 1));
    }

    [Fact]
    public void Of_ScatterThatShrinks_StaysConstant()
        => Assert.Equal(0, VarianceFunction.Of([(0.0, 0.003, 2.0), (1.0, 0.002, 2.0), (2.0, 0.001, 2.0)])!.Slope);

    [Fact]
    public void Of_NoScatter_GivesNone() => Assert.Null(VarianceFunction.Of([(0.0, 0.0, 2.0), (1.0, 0.0, 2.0)]));

    // Scaling all weights by one factor leaves the line where it is.
    [Fact]
    public void PolynomialFit_ScaledWeights_ChangeNothing()
    {
        double[] x = [0, 1, 2, 3], y = [0.1, 1.2, 1.9, 3.3], w = [4, 3, 2, 1];
        PolynomialFit a = PolynomialFit.Of(x, y, 1, w), b = PolynomialFit.Of(x, y, 1, [.. w.Select(v => 1000 * v)]);
        Agree.Digits(14, a.Coefficients[1], b.Coefficients[1]);
        Agree.Digits(14, a.ResidualSd, b.ResidualSd);
    }
}
