using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>The chi-square distribution: how a sum of squared standard normal values scatters.</summary>
/// <remarks>Tails through the regularised incomplete gamma function (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.4.19).</remarks>
public static class ChiSquareDistribution
{
    /// <summary>Probability of a value above x.</summary>
    /// <param name="x">Sum of squares, 0 or more; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public static double Above(double x, double degreesOfFreedom)
    {
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        return x > 0 ? SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2) : 1;
    }

    /// <summary>Probability of a value below x.</summary>
    /// <param name="x">Sum of squares, 0 or more; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public static double Below(double x, double degreesOfFreedom)
    {
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        double a = degreesOfFreedom / 2, half = x / 2;
        if (!(x > 0))
            return 0;

        // The library rounds small arguments to 0; two terms of the series (26.4.6) are exact to 16 digits there.
        return half < 1e-8
            ? Math.Exp(a * Math.Log(half) - SpecialFunctions.GammaLn(a + 1)) * (1 - half * a / (a + 1))
            : SpecialFunctions.GammaLowerRegularized(a, half);
    }

    /// <summary>The value that a given probability lies below.</summary>
    /// <param name="probability">Between 0 and 1; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Probability.Require(probability);
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        return Math.Exp(Root.Near(
            v => probability < 0.5
                ? Root.LogRatio(Below(Math.Exp(v), degreesOfFreedom), probability)
                : Root.LogRatio(Above(Math.Exp(v), degreesOfFreedom), 1 - probability),
            Math.Log(degreesOfFreedom)));
    }
}
