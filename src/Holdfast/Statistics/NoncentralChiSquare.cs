namespace Holdfast.Statistics;

/// <summary>Noncentral chi-square: the test statistic of a model with one or more extra parameters when these are truly needed.</summary>
/// <remarks>Poisson mixture of central chi-square tails (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.4.25).</remarks>
public static class NoncentralChiSquare
{
    /// <summary>Probability of a value above x.</summary>
    /// <param name="x">Sum of squares; no unit.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    /// <param name="noncentrality">λ, 0 or more; no unit.</param>
    public static double Above(double x, double degreesOfFreedom, double noncentrality)
        => PoissonMixture.Sum(noncentrality / 2, j => ChiSquareDistribution.Above(x, degreesOfFreedom + 2 * j));

    /// <summary>The λ at which a test at level alpha finds the effect with the wanted power.</summary>
    /// <param name="degreesOfFreedom">Number of extra parameters.</param>
    /// <param name="alpha">Level of the test, for example 0.05; no unit.</param>
    /// <param name="power">Wanted power, for example 0.8; no unit.</param>
    public static double NoncentralityFor(double degreesOfFreedom, double alpha, double power)
    {
        Probability.Require(alpha);
        Probability.Require(power);
        var critical = ChiSquareDistribution.Quantile(1 - alpha, degreesOfFreedom);
        return Root.Of(l => Above(critical, degreesOfFreedom, l) - power, 0, 20);
    }
}
