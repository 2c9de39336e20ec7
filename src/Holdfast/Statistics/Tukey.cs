namespace Holdfast.Statistics;

/// <summary>All pairs of groups at once by the studentised range, honest about picking the best of several.</summary>
/// <remarks>J. W. Tukey (1953), for unequal replicates after C. Y. Kramer, Biometrics 12 (1956) 307–310 (both from memory).</remarks>
public static class Tukey
{
    /// <summary>Compares every pair, later group less earlier.</summary>
    /// <param name="analysis">The analysis of variance that gives the pooled sd.</param>
    /// <param name="confidence">Of all intervals together; no unit.</param>
    public static IReadOnlyList<Comparison> AllPairs(OneWay analysis, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var critical = StudentizedRange.Quantile(confidence, analysis.Groups.Count, analysis.WithinFreedom) / Math.Sqrt(2);
        return [.. Pairs.Of(analysis.Groups.Count).Select(pair =>
        {
            var found = Pair(analysis, pair.Later, pair.Earlier);
            var half = critical * found.Difference.StandardError;
            return found with { Simultaneous = new(found.Difference.Value - half, found.Difference.Value + half, confidence) };
        })];
    }

    /// <summary>Compares one group with each other, as part of all pairs: p pays for every pair that could have been picked. No intervals.</summary>
    /// <param name="analysis">The analysis of variance that gives the pooled sd.</param>
    /// <param name="group">Index of the group; differences are it less the other.</param>
    public static IReadOnlyList<Comparison> PairsOf(OneWay analysis, int group)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return [.. Enumerable.Range(0, analysis.Groups.Count).Where(i => i != group).Select(other => Pair(analysis, group, other))];
    }

    private static Comparison Pair(OneWay analysis, int first, int second)
    {
        var k = analysis.Groups.Count;
        var d = analysis.Difference(first, second);
        var p = StudentizedRange.Above(Math.Abs(d.T(0)) * Math.Sqrt(2), k, analysis.WithinFreedom);
        return new(analysis.Groups[first].Name, analysis.Groups[second].Name, d, p, null, "Tukey, all pairs", k * (k - 1) / 2);
    }
}
