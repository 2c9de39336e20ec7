using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>The F distribution of a ratio of two variances.</summary>
/// <remarks>Tails through the regularised incomplete beta function (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.6.2).</remarks>
public static class FisherDistribution
{
    /// <summary>Probability of a ratio above F.</summary>
    /// <param name="f">Ratio of variances, 0 or more; no unit.</param>
    /// <param name="above">Degrees of freedom of the numerator.</param>
    /// <param name="below">Degrees of freedom of the denominator.</param>
    public static double Above(double f, double above, double below)
    {
        Probability.RequireDegreesOfFreedom(above);
        Probability.RequireDegreesOfFreedom(below);
        if (!(f > 0))
            return 1;
        if (double.IsPositiveInfinity(f))
            return 0;
        var share = above * f / (above * f + below);
        return f < 1
            ? 1 - SpecialFunctions.BetaRegularized(above / 2, below / 2, share)
            : SpecialFunctions.BetaRegularized(below / 2, above / 2, below / (above * f + below));
    }

    /// <summary>The ratio that a given probability lies below.</summary>
    /// <param name="probability">Between 0 and 1, for example 0.99; no unit.</param>
    /// <param name="above">Degrees of freedom of the numerator.</param>
    /// <param name="below">Degrees of freedom of the denominator.</param>
    public static double Quantile(double probability, double above, double below)
    {
        Probability.Require(probability);
        Probability.RequireDegreesOfFreedom(above);
        Probability.RequireDegreesOfFreedom(below);
        return probability < 0.5 ? 1 / UpperPoint(probability, below, above) : UpperPoint(1 - probability, above, below);
    }

    /// <summary>The ratio above which a share of at most one half lies; searched in ln F.</summary>
    private static double UpperPoint(double share, double above, double below)
    {
        var f = Math.Exp(Root.Near(v => Root.LogRatio(Above(Math.Exp(v), above, below), share), 0));
        var density = Math.Exp(
            0.5 * above * Math.Log(above / below) + (0.5 * above - 1) * Math.Log(f) - 0.5 * (above + below) * Math.Log(1 + above * f / below)
            - SpecialFunctions.BetaLn(0.5 * above, 0.5 * below));
        return f + (Above(f, above, below) - share) / density;
    }
}
