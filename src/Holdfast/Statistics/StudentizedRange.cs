namespace Holdfast.Statistics;

/// <summary>Studentised range: the spread of k means, in standard errors found with ν degrees of freedom. It judges all pairs at once (Tukey).</summary>
/// <remarks>
/// The tail of the range of k normal values, k ∫ φ(z)[Φ(z)^(k−1) − (Φ(z) − Φ(z − w))^(k−1)] dz, averaged over s/σ
/// (H. L. Harter, Ann. Math. Stat. 31 (1960) 1122–1147; from memory). The difference of powers is factored so that small p keep their digits.
/// </remarks>
public static class StudentizedRange
{
    // Beyond eight standard deviations nothing is left that a double can hold beside the rest.
    private const double Far = 8;
    private const double PanelWidth = 2.4;

    // Φ and φ at the nodes do not depend on the range asked for: worked out once, they are half of the cost.
    private static readonly Lazy<(double Z, double Below, double Weight)[]> NearNodes = new(() => Nodes(2 * Far));

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
    /// <param name="w">Range, without unit.</param>
    /// <param name="k">Number of values.</param>
    private static double RangeAbove(double w, int k)
    {
        var sum = 0.0;
        foreach (var node in w <= Far ? NearNodes.Value : Nodes(w + Far))
            sum += node.Weight * Outside(node.Below, NormalDistribution.Below(node.Z - w), k);
        return k * sum;
    }

    // Φ(z)^(k−1) − (Φ(z) − Φ(z − w))^(k−1), factored.
    private static double Outside(double below, double outside, int k)
    {
        var inside = below - outside;
        double sum = 0, powers = 1;
        for (var i = 0; i < k - 1; i++)
        {
            sum = sum * inside + powers;
            powers *= below;
        }

        return outside * sum;
    }

    private static (double Z, double Below, double Weight)[] Nodes(double to)
        => [.. GaussLegendre.Nodes(-Far, to, (int)Math.Ceiling((to + Far) / PanelWidth)).Select(n => (n.Node, NormalDistribution.Below(n.Node), n.Weight * NormalDistribution.Density(n.Node)))];
}
