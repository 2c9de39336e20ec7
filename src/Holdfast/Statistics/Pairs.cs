namespace Holdfast.Statistics;

/// <summary>All pairs of k things, later against earlier.</summary>
internal static class Pairs
{
    /// <summary>(1,0), (2,0), (2,1), ...</summary>
    /// <param name="count">How many things.</param>
    public static IEnumerable<(int Later, int Earlier)> Of(int count)
    {
        for (var later = 1; later < count; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
                yield return (later, earlier);
        }
    }
}
