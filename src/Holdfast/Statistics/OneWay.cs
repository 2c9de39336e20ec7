namespace Holdfast.Statistics;

/// <summary>One-way analysis of variance: is the scatter between groups larger than within them?</summary>
/// <remarks>R. A. Fisher's decomposition. Sums are centred on one value first, so large, close values keep their digits (NIST sets SmLs).</remarks>
/// <param name="Groups">The groups.</param>
/// <param name="BetweenSquares">Sum of squares between groups, in the unit squared.</param>
/// <param name="BetweenFreedom">Groups less 1.</param>
/// <param name="WithinSquares">Sum of squares within groups, in the unit squared.</param>
/// <param name="WithinFreedom">Values less groups.</param>
public sealed record OneWay(IReadOnlyList<Group> Groups, double BetweenSquares, int BetweenFreedom, double WithinSquares, int WithinFreedom)
{
    /// <summary>Analyses groups.</summary>
    /// <param name="groups">Two or more groups in one unit; at least one with replicates.</param>
    /// <exception cref="ArgumentException">Fewer than two groups.</exception>
    public static Outcome<OneWay> Of(IReadOnlyList<Group> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count < 2)
            throw new ArgumentException($"There are {groups.Count} groups; a comparison needs two or more.", nameof(groups));
        var shift = groups[0].Values[0];
        var total = groups.Sum(g => g.Values.Count);
        double[] means = [.. groups.Select(g => CentredSums.MeanAbove(g.Values, shift))];
        var grand = groups.Zip(means, (g, m) => g.Values.Count * m).Sum() / total;
        var between = groups.Zip(means, (g, m) => g.Values.Count * (m - grand) * (m - grand)).Sum();
        var within = groups.Sum(g => CentredSums.SquaresAboutMean(g.Values));
        return total == groups.Count || within == 0
            ? Outcome<OneWay>.None(NoScatter.Of(total == groups.Count ? 1 : total))
            : new(new(groups, between, groups.Count - 1, within, total - groups.Count), []);
    }

    /// <summary>Mean square between groups.</summary>
    public double BetweenMeanSquare => BetweenSquares / BetweenFreedom;

    /// <summary>Mean square within groups.</summary>
    public double WithinMeanSquare => WithinSquares / WithinFreedom;

    /// <summary>Ratio of the mean squares.</summary>
    public double F => BetweenMeanSquare / WithinMeanSquare;

    /// <summary>p of "all groups have one mean".</summary>
    public double P => FisherDistribution.Above(F, BetweenFreedom, WithinFreedom);

    /// <summary>Standard deviation of one value, pooled over all groups, in the unit of the values.</summary>
    public double PooledSd => Math.Sqrt(WithinMeanSquare);

    /// <summary>Share of the scatter that lies between groups; no unit.</summary>
    public double R2 => BetweenSquares / (BetweenSquares + WithinSquares);

    /// <summary>Difference of two group means, first less second, with the sd pooled over all groups.</summary>
    /// <param name="first">Index of the first group.</param>
    /// <param name="second">Index of the second group.</param>
    public Estimate Difference(int first, int second)
    {
        var difference = TwoMeans.WithSd(Groups[first].Values, Groups[second].Values, PooledSd, WithinFreedom);
        return difference with { Method = "difference of means, sd pooled over all groups" };
    }
}
