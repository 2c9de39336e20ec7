namespace Holdfast.Statistics;

/// <summary>Noncentral t: what t does when the true difference is not zero. It gives the power of every t test.</summary>
/// <remarks>
/// T = (Z + δ)/S with Z standard normal and S = √(χ²(ν)/ν), so P(T ≤ t) is the average over S of Φ(t·S − δ)
/// (N. L. Johnson, S. Kotz, N. Balakrishnan, Continuous Univariate Distributions 2, chapter 31; from memory); integrated numerically.
/// </remarks>
public static class NoncentralStudent
{
    /// <summary>Probability of a value below t.</summary>
    /// <param name="t">The value; no unit.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0; may be infinite.</param>
    /// <param name="noncentrality">True difference divided by its true standard error, δ; no unit.</param>
    public static double Below(double t, double degreesOfFreedom, double noncentrality)
        => ScaledChi.Average(degreesOfFreedom, s => NormalDistribution.Below(t * s - noncentrality), Bend(t, noncentrality), Width(t));

    /// <summary>Probability of a value above t.</summary>
    /// <param name="t">The value; no unit.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0; may be infinite.</param>
    /// <param name="noncentrality">True difference divided by its true standard error, δ; no unit.</param>
    public static double Above(double t, double degreesOfFreedom, double noncentrality)
        => ScaledChi.Average(degreesOfFreedom, s => NormalDistribution.Above(t * s - noncentrality), Bend(t, noncentrality), Width(t));

    /// <summary>The noncentrality at which a value t is exceeded with a given probability: how large a true effect must be to be seen.</summary>
    /// <param name="t">The value to exceed, for example the critical t; no unit.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, above 0; may be infinite.</param>
    /// <param name="power">Probability of exceeding t, between 0 and 1; no unit.</param>
    public static double NoncentralityFor(double t, double degreesOfFreedom, double power)
    {
        Probability.Require(power);
        return Root.Of(d => Above(t, degreesOfFreedom, d) - power, t - 10, Math.Abs(t) * 3 + 20);
    }

    private static double? Bend(double t, double noncentrality) => t == 0 ? null : noncentrality / t;

    private static double Width(double t) => t == 0 ? 0 : 1 / Math.Abs(t);
}
