using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>Noncentral F: what the F of an analysis of variance does when the groups truly differ.</summary>
/// <remarks>
/// Poisson mixture of incomplete beta functions, summed from the heaviest term outward (N. L. Johnson, S. Kotz, N. Balakrishnan,
/// Continuous Univariate Distributions 2, chapter 30; from memory).
/// </remarks>
public static class NoncentralFisher
{
    /// <summary>Probability of a ratio above F.</summary>
    /// <param name="f">Ratio of mean squares, above 0; no unit.</param>
    /// <param name="above">Degrees of freedom of the numerator.</param>
    /// <param name="below">Degrees of freedom of the denominator.</param>
    /// <param name="noncentrality">λ = sum over groups of n (μ_i − μ)²/σ²; no unit.</param>
    public static double Above(double f, double above, double below, double noncentrality)
    {
        var rest = below / (above * f + below);
        return PoissonMixture.Sum(noncentrality / 2, j => SpecialFunctions.BetaRegularized(below / 2, above / 2 + j, rest));
    }
}
