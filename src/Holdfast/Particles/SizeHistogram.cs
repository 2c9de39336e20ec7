namespace Holdfast.Particles;

/// <summary>Counts of sizes in bins of equal width, for the eye; every statistic uses the list itself.</summary>
/// <remarks>Width 2·IQR/n^⅓ (D. Freedman and P. Diaconis, Z. Wahrscheinlichkeitstheorie 57 (1981) 453; from memory), 5 to 50 bins.</remarks>
/// <param name="Edges">Borders of the bins, one more than bins, in the unit of the sizes.</param>
/// <param name="Counts">Particles in each bin; the last border belongs to the last bin.</param>
public sealed record SizeHistogram(IReadOnlyList<double> Edges, IReadOnlyList<int> Counts)
{
    private const int FewestBins = 5;
    private const int MostBins = 50;

    /// <summary>Bins of a list of sizes.</summary>
    /// <param name="statistics">The sizes.</param>
    public static SizeHistogram Of(SizeStatistics statistics)
    {
        ArgumentNullException.ThrowIfNull(statistics);
        var sizes = statistics.Sizes;
        double low = sizes[0], range = sizes[^1] - low, width = Width(statistics);
        var bins = range > 0 && width > 0 ? Math.Clamp((int)Math.Ceiling(range / width), FewestBins, MostBins) : 1;
        var step = range > 0 ? range / bins : 1;
        var counts = new int[bins];
        foreach (var size in sizes)
            counts[Math.Min(bins - 1, (int)((size - low) / step))]++;
        return new([.. Enumerable.Range(0, bins + 1).Select(k => low + k * step)], counts);
    }

    /// <summary>Width of a bin that the rule asks for, in the unit of the sizes.</summary>
    /// <param name="statistics">The sizes.</param>
    public static double Width(SizeStatistics statistics)
    {
        ArgumentNullException.ThrowIfNull(statistics);
        return 2 * (statistics.Quantile(0.75) - statistics.Quantile(0.25)) / Math.Cbrt(statistics.Sizes.Count);
    }
}
