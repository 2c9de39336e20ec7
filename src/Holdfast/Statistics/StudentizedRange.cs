namespace Holdfast.Statistics;

/// <summary>Studentised range: the spread of k means, in standard errors found with ν degrees of freedom. It judges all pairs at once (Tukey).</summary>
/// <remarks>
/// The tail of the range of k normal values, k ∫ φ(z)[Φ(z)^(k−1) − (Φ(z) − Φ(z − w))^(k−1)] dz, averaged over s/σ
/// (H. L. Harter, Ann. Math. Stat. 31 (1960) 1122–1147; from memory). The difference of powers is factored so that small p keep their digits.
/// </remarks>
public static class StudentizedRange
{
    /// <summary>Probability of a range above q.</summary>
    /// <param name="q">Largest difference divided by the standard error of a mean; no unit.</param>
    /// <param name="groups">Number of means, 2 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the standard error; may be infinite.</param>
    public static double Above(double q, int groups, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        return q > 0 ? Math.Min(1, ScaledChi.Average(degreesOfFreedom, s => RangeAbove(q * s, groups))) : 1;
    }

    /// <summary>The range that a given probability lies below.</summary>
    /// <param name="probability">Between 0 and 1, for example 0.95; no unit.</param>
    /// <param name="groups">Number of means, 2 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the standard error; may be infinite.</param>
    public static double Quantile(double probability, int groups, double degreesOfFreedom)
    {
        Probability.Require(probability);
        return Root.Of(q => Above(q, groups, degreesOfFreedom) - (1 - probability), 1e-3, 10);
    }

    /// <summary>Tail of the range of k standard normal values.</summary>
    private static double RangeAbove(double w, int k)
        => k * GaussLegendre.Integrate(
            z =>
            {
                var below = NormalDistribution.Below(z);
                var outside = NormalDistribution.Below(z - w);
                var inside = below - outside;
                double sum = 0, powers = 1;
                for (var i = 0; i < k - 1; i++)
                {
                    sum = sum * inside + powers;
                    powers *= below;
                }

                return NormalDistribution.Density(z) * outside * sum;
            },
            -8,
            Math.Max(8, w + 8),
            (int)Math.Ceiling((8 + Math.Max(8, w + 8)) / 2));
}
