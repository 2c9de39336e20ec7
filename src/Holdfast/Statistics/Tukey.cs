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
        var k = analysis.Groups.Count;
        var critical = StudentizedRange.Quantile(confidence, k, analysis.WithinFreedom) / Math.Sqrt(2);
        return [.. Pairs.Of(k).Select(pair =>
        {
            var d = analysis.Difference(pair.Later, pair.Earlier);
            var p = StudentizedRange.Above(Math.Abs(d.T(0)) * Math.Sqrt(2), k, analysis.WithinFreedom);
            var half = critical * d.StandardError;
            return new Comparison(
                analysis.Groups[pair.Later].Name, analysis.Groups[pair.Earlier].Name, d, p,
                new(d.Value - half, d.Value + half, confidence), "Tukey, all pairs", k * (k - 1) / 2);
        })];
    }
}
