namespace Holdfast.Statistics;

/// <summary>Rank correlation as the correlation of the ranks, ties at their mean rank.</summary>
/// <remarks>C. Spearman, Am. J. Psychol. 15 (1904) 72–101 (from memory).</remarks>
public static class Spearman
{
    /// <summary>ρ, −1 to 1, no unit; null when one of the lists does not vary or has fewer than two values.</summary>
    /// <param name="x">Level or order; any unit.</param>
    /// <param name="y">Values in the same order; any unit.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static double? Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Values.Require(x);
        Values.Require(y);
        if (x.Count != y.Count)
            throw new ArgumentException($"There are {x.Count} and {y.Count} values; as many of each are needed.", nameof(y));
        double[] a = Ranks(x), b = Ranks(y);
        var middle = (x.Count + 1) / 2.0;
        double ab = 0, aa = 0, bb = 0;
        for (var i = 0; i < a.Length; i++)
            (ab, aa, bb) = (ab + (a[i] - middle) * (b[i] - middle), aa + (a[i] - middle) * (a[i] - middle), bb + (b[i] - middle) * (b[i] - middle));
        return aa > 0 && bb > 0 ? ab / Math.Sqrt(aa * bb) : null;
    }

    private static double[] Ranks(IReadOnlyList<double> values)
    {
        var sorted = values.Order().ToArray();
        return [.. values.Select(v => (Array.IndexOf(sorted, v) + Array.LastIndexOf(sorted, v)) / 2.0 + 1)];
    }
}
