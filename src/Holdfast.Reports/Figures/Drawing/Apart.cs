namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Shifts labels apart along a line: each as near to where it wants to be as its neighbours allow (least squares, pooling neighbours).</summary>
internal static class Apart
{
    /// <summary>Places of the centres, in the order given.</summary>
    /// <param name="wanted">Where each centre wants to be, in pt.</param>
    /// <param name="lengths">Room each needs, in pt.</param>
    /// <param name="low">Lower end of the room there is, in pt.</param>
    /// <param name="high">Upper end of the room there is, in pt.</param>
    public static double[] Place(IReadOnlyList<double> wanted, IReadOnlyList<double> lengths, double low, double high)
    {
        var order = Enumerable.Range(0, wanted.Count).OrderBy(i => wanted[i]).ThenBy(i => i).ToArray();

        // With the room before each label taken off, "do not overlap" becomes "do not fall": pool neighbours that would.
        var offsets = new double[order.Length];
        for (var i = 1; i < order.Length; i++)
            offsets[i] = offsets[i - 1] + (lengths[order[i - 1]] + lengths[order[i]]) / 2;
        var pools = new List<(double Sum, int Count)>();
        for (var i = 0; i < order.Length; i++)
        {
            pools.Add((wanted[order[i]] - offsets[i], 1));
            while (pools.Count > 1 && pools[^2].Sum / pools[^2].Count > pools[^1].Sum / pools[^1].Count)
            {
                pools[^2] = (pools[^2].Sum + pools[^1].Sum, pools[^2].Count + pools[^1].Count);
                pools.RemoveAt(pools.Count - 1);
            }
        }

        // The room at both ends caps the shifted places, which keeps their order.
        var places = new double[order.Length];
        var index = 0;
        foreach (var (sum, count) in pools)
        {
            for (var i = 0; i < count; i++, index++)
            {
                var first = low + lengths[order[0]] / 2;
                var last = high - lengths[order[^1]] / 2 - offsets[^1];
                places[order[index]] = Math.Max(first, Math.Min(sum / count, Math.Max(first, last))) + offsets[index];
            }
        }

        return places;
    }
}
