using Holdfast.Kinetics;

namespace Holdfast.Tests.Kinetics;

/// <summary>Exponents of size and stirring from rate constants that follow a power law exactly, with errors carried by hand.</summary>
public class RateControlTests
{
    // k = c/d²: ln k falls by 2·ln 2 when d doubles. u(ln k) = 0.05 each: u(n) = 0.05·√2/ln 2; two constants of 8 degrees of freedom and equal errors
    // give 16 (Satterthwaite 1946, from memory).
    [Fact]
    public void SizeExponent_OfTwoSizes_IsTheirLogarithmicSlope()
    {
        var found = RateControl.SizeExponent([Rate(100, 200, 0.04), Rate(200, 200, 0.01)])!;
        Assert.Equal(2, found.Value, 12);
        Assert.Equal(0.05 * Math.Sqrt(2) / Math.Log(2), found.StandardError, 12);
        Assert.Equal(16, found.DegreesOfFreedom, 9);
    }

    // A square of two sizes and two speeds: each speed gives the exponent of its own, 2 and 1, the mean is 1.5 with half the summed variance's root.
    [Fact]
    public void SizeExponent_OfASquare_IsTheMeanOverSpeeds()
    {
        var found = RateControl.SizeExponent([Rate(100, 200, 0.04), Rate(200, 200, 0.01), Rate(100, 400, 0.04), Rate(200, 400, 0.02)])!;
        Assert.Equal(1.5, found.Value, 12);
        Assert.Equal(0.05 * Math.Sqrt(2) / Math.Log(2) / Math.Sqrt(2), found.StandardError, 12);
        Assert.Equal(4, found.N);
    }

    [Fact]
    public void StirringRatio_OfTwoSpeeds_IsTheRatioOfTheRates()
    {
        var found = RateControl.StirringRatio([Rate(100, 200, 0.04), Rate(100, 400, 0.05), Rate(200, 200, 0.01), Rate(200, 400, 0.0125)])!;
        Assert.Equal(1.25, found.Value, 12);
        Assert.Equal(0.05, found.StandardError, 12);
    }

    // Spheres (J. Crank 1975, eq. 6.22): half of the uptake at D·t/r² = 0.03055, so that twice the size takes four times as long.
    [Fact]
    public void SizeExponent_OfTheHalfTimesOfSpheres_IsTwo()
    {
        double HalfTime(double radius) => 0.03055 * radius * radius;
        Assert.Equal(0.5, SphereDiffusion.Fraction<Holdfast.Amounts.Number>(0.03055).Value, 4);
        Assert.Equal(RateControl.Inside, RateControl.SizeExponent([Rate(50, 200, 1 / HalfTime(25)), Rate(150, 200, 1 / HalfTime(75))])!.Value, 12);
    }

    // Spheres begin at 0 (J. Crank 1975, eq. 6.22); a shift of all uptakes is found as it was put in. The scatter of 0.1 % cancels over the three vessels.
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    public void Intercept_OfSpheres_IsWhatWasThereAtOnce(double atOnce)
    {
        double[] times = [1, 2, 4, 8, 15, 30, 60, 120];
        var points = times.SelectMany(t => new[] { -0.001, 0, 0.001 }.Select(e => (t, atOnce + 6 * (1 + e) * SphereDiffusion.Fraction<Holdfast.Amounts.Number>(0.0005 * t).Value))).ToArray();
        var found = RateControl.Intercept([.. points.Select(p => p.t)], [.. points.Select(p => p.Item2)], 6 + atOnce)!;
        Assert.Equal(atOnce, found.Value, 2);
        Assert.True(found.Interval(0.95).Contains(0) == (atOnce == 0), found.ToString());
        Assert.Null(RateControl.Intercept([1, 1, 1, 2, 2, 2], [0.1, 0.1, 0.1, 0.2, 0.2, 0.2], 6));
    }

    [Fact]
    public void Exponents_OfOneSizeOrOneSpeed_AreNone()
    {
        Assert.Null(RateControl.SizeExponent([Rate(100, 200, 0.04), Rate(200, 400, 0.01)]));
        Assert.Null(RateControl.StirringRatio([Rate(100, 200, 0.04), Rate(200, 200, 0.01)]));
        Assert.Throws<ArgumentException>(() => RateControl.SizeExponent([Rate(0, 200, 0.04)]));
    }

    private static RateAt Rate(double diameter, double speed, double k) => new(diameter, speed, k, 0.05 * k, 8);
}
