using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>Student's t distribution; infinite degrees of freedom give the normal distribution.</summary>
/// <remarks>Tails through the regularised incomplete beta function (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.1).</remarks>
public static class StudentDistribution
{
    /// <summary>Probability of a value above t.</summary>
    /// <param name="t">Student's t; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0; may be infinite or broken.</param>
    public static double Above(double t, double degreesOfFreedom)
    {
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return NormalDistribution.Above(t);
        var half = 0.5 * Beyond(t, degreesOfFreedom);
        return t >= 0 ? half : 1 - half;
    }

    /// <summary>Probability of a value further from 0 than t, on either side: the two-sided p.</summary>
    /// <param name="t">Student's t; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0; may be infinite or broken.</param>
    public static double Beyond(double t, double degreesOfFreedom)
    {
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return NormalDistribution.Beyond(t);
        if (double.IsInfinity(t))
            return 0;
        var square = t * t;
        return square < 1
            ? 1 - SpecialFunctions.BetaRegularized(0.5, degreesOfFreedom / 2, square / (degreesOfFreedom + square))
            : SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + square));
    }

    /// <summary>The value that a given probability lies below.</summary>
    /// <param name="probability">Between 0 and 1; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0; may be infinite or broken.</param>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Probability.Require(probability);
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        if (double.IsPositiveInfinity(degreesOfFreedom))
            return NormalDistribution.Quantile(probability);
        return probability < 0.5 ? -UpperPoint(probability, degreesOfFreedom) : UpperPoint(1 - probability, degreesOfFreedom);
    }

    /// <summary>Half-width of a two-sided interval in standard errors: t((1 + confidence)/2).</summary>
    /// <param name="confidence">Between 0 and 1, for example 0.95; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0; may be infinite or broken.</param>
    public static double TwoSided(double confidence, double degreesOfFreedom)
    {
        Probability.Require(confidence);
        return Quantile(0.5 * (1 + confidence), degreesOfFreedom);
    }

    /// <summary>The t, 0 or more, above which a share of at most one half lies; searched in asinh(t), where the tail is nearly straight.</summary>
    private static double UpperPoint(double share, double dof)
    {
        if (share == 0.5)
            return 0;
        var t = Math.Sinh(Root.Of(v => Root.LogRatio(Above(Math.Sinh(v), dof), share), 0, 4));
        var density = Math.Exp(
            SpecialFunctions.GammaLn((dof + 1) / 2) - SpecialFunctions.GammaLn(dof / 2) - 0.5 * Math.Log(dof * Math.PI)
            - (dof + 1) / 2 * Math.Log(1 + t * t / dof));
        return t + (Above(t, dof) - share) / density;
    }
}
