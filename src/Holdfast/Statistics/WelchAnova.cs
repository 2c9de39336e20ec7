namespace Holdfast.Statistics;

/// <summary>Do several groups share one mean, when their scatters differ?</summary>
/// <remarks>B. L. Welch, Biometrika 38 (1951) 330–336 (from memory).</remarks>
/// <param name="F">Welch's F; no unit.</param>
/// <param name="Above">Degrees of freedom of the numerator.</param>
/// <param name="Below">Degrees of freedom of the denominator, broken.</param>
/// <param name="P">p of "all groups have one mean"; no unit.</param>
public sealed record WelchAnova(double F, int Above, double Below, double P)
{
    /// <summary>Compares groups.</summary>
    /// <param name="groups">Two or more groups in one unit, each with replicates that scatter.</param>
    public static Outcome<WelchAnova> Of(IReadOnlyList<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.FirstOrDefault(g => g.Summary.Sd is null or 0) is { } flat)
            return Outcome<WelchAnova>.None(NoScatter.Of(flat.Values.Count, flat.Name));
        var k = groups.Count;
        double[] weights = [.. groups.Select(g => 1 / TwoMeans.VarianceOfMean(g.Summary))];
        var all = weights.Sum();
        var grand = groups.Zip(weights, (g, w) => w * g.Summary.Mean).Sum() / all;
        var between = groups.Zip(weights, (g, w) => w * Math.Pow(g.Summary.Mean - grand, 2)).Sum() / (k - 1);
        var lack = groups.Zip(weights, (g, w) => Math.Pow(1 - w / all, 2) / (g.Values.Count - 1)).Sum();
        var f = between / (1 + 2.0 * (k - 2) / (k * k - 1.0) * lack);
        var below = (k * k - 1.0) / (3 * lack);
        return new(new(f, k - 1, below, FisherDistribution.Above(f, k - 1, below)), []);
    }
}
