using System.Globalization;

namespace Holdfast.Testing;

/// <summary>Agreement with an outside number, counted in digits: −log10 of the relative error.</summary>
internal static class Agree
{
    /// <summary>Agreeing digits, at most 16; the absolute error stands in where the expected value is 0.</summary>
    public static double DigitsOf(double expected, double actual)
    {
        if (expected.Equals(actual))
            return 16;
        var error = Math.Abs(actual - expected);
        if (expected != 0)
            error /= Math.Abs(expected);
        return double.IsNaN(error) ? 0 : Math.Clamp(-Math.Log10(error), 0, 16);
    }

    /// <summary>Fails when fewer digits agree than the case asks for.</summary>
    public static void Digits(double atLeast, double expected, double actual, string what = "")
    {
        var digits = DigitsOf(expected, actual);
        Assert.True(digits >= atLeast, string.Create(CultureInfo.InvariantCulture,
            $"{what} expected {expected:R}, got {actual:R}: {digits:0.0} digits agree, {atLeast} are asked for."));
    }

    /// <summary>Fails when the relative error is above the tolerance.</summary>
    public static void Relative(double tolerance, double expected, double actual, string what = "")
        => Assert.True(Math.Abs(actual - expected) <= tolerance * Math.Max(Math.Abs(expected), double.Epsilon), string.Create(
            CultureInfo.InvariantCulture, $"{what} expected {expected:R}, got {actual:R}; relative tolerance {tolerance:R}."));
}
