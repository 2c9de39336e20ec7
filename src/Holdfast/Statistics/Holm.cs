namespace Holdfast.Statistics;

/// <summary>A family of separate questions: sorted p are multiplied by the count that remains and kept in order.</summary>
/// <remarks>S. Holm, Scand. J. Stat. 6 (1979) 65–70 (from memory).</remarks>
public static class Holm
{
    /// <summary>Adjusted p, in the order given.</summary>
    /// <param name="p">p of each question alone, 0 to 1; no unit.</param>
    public static IReadOnlyList<double> Adjust(IReadOnlyList<double> p)
    {
        ArgumentNullException.ThrowIfNull(p);
        if (p.Any(v => !(v >= 0 && v <= 1)))
            throw new ArgumentOutOfRangeException(nameof(p), "Every p must lie between 0 and 1.");
        var adjusted = new double[p.Count];
        var largest = 0.0;
        var left = p.Count;
        foreach (var i in Enumerable.Range(0, p.Count).OrderBy(i => p[i]))
        {
            largest = Math.Max(largest, Math.Min(1, left-- * p[i]));
            adjusted[i] = largest;
        }

        return adjusted;
    }

    /// <summary>Every pair of groups, later less earlier, with the pooled sd.</summary>
    /// <param name="analysis">The analysis of variance that gives the pooled sd.</param>
    public static IReadOnlyList<Comparison> AllPairs(OneWay analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Compare(analysis, [.. Pairs.Of(analysis.Groups.Count)]);
    }

    /// <summary>Chosen pairs of groups, first less second, with the pooled sd.</summary>
    /// <param name="analysis">The analysis of variance that gives the pooled sd.</param>
    /// <param name="pairs">Indices of the groups of each planned pair.</param>
    public static IReadOnlyList<Comparison> Compare(OneWay analysis, IReadOnlyList<(int First, int Second)> pairs)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(pairs);
        Estimate[] differences = [.. pairs.Select(pair => analysis.Difference(pair.First, pair.Second))];
        var adjusted = Adjust([.. differences.Select(d => d.PDiffersFrom(0))]);
        return [.. pairs.Select((pair, i) => new Comparison(
            analysis.Groups[pair.First].Name, analysis.Groups[pair.Second].Name, differences[i], adjusted[i], null, "Holm, planned pairs", pairs.Count))];
    }
}
