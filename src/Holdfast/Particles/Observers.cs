using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>
/// How well sizes are read: one observer again and again, and different observers on the same particles. An observer's own offset is common to all of her readings and does not shrink
/// with the number of particles.
/// </summary>
/// <param name="Repeatability">Standard deviation of one reading made again by the same observer, in the unit of the readings; null without repeats.</param>
/// <param name="RepeatabilityDf">Degrees of freedom of that.</param>
/// <param name="Between">Standard deviation between observers, in the unit of the readings; null for one observer.</param>
/// <param name="Count">Observers that read the same particles; 1 for one alone.</param>
/// <remarks>Two-way table without repeats: s_o² = (MS_o − MS_e)/n, 0 where that is negative (common practice; form of ISO 5725, from memory).</remarks>
public sealed record Observers(double? Repeatability, int RepeatabilityDf, double? Between, int Count)
{
    /// <summary>Standard deviation of one reading by any observer, in the unit of the readings; null without repeats.</summary>
    public double? OneReading => Repeatability is { } again ? Math.Sqrt(again * again + (Between ?? 0) * (Between ?? 0)) : null;

    /// <summary>Standard uncertainty that observers bring to a mean, in the unit of the readings: s_o/√m; 0 for one observer, whose offset nobody sees.</summary>
    public double OfMean => (Between ?? 0) / Math.Sqrt(Count);

    /// <summary>Works it out.</summary>
    /// <param name="repeats">Readings of one particle by one observer, a list for each; those of one reading say nothing.</param>
    /// <param name="table">First readings, a list for each observer, the same particles in the same order.</param>
    public static Observers Of(IReadOnlyList<IReadOnlyList<double>> repeats, IReadOnlyList<IReadOnlyList<double>> table)
    {
        ArgumentNullException.ThrowIfNull(repeats);
        ArgumentNullException.ThrowIfNull(table);
        Summary[] again = [.. repeats.Where(r => r.Count > 1).Select(Summary.Of)];
        var df = again.Sum(s => s.N - 1);
        double? repeatability = df > 0 ? Math.Sqrt(again.Sum(s => (s.N - 1) * s.Sd!.Value * s.Sd.Value) / df) : null;
        return new(repeatability, df, BetweenOf(table), Math.Max(1, table.Count));
    }

    private static double? BetweenOf(IReadOnlyList<IReadOnlyList<double>> table)
    {
        int m = table.Count, n = m > 0 ? table[0].Count : 0;
        if (m < 2 || n < 2)
            return null;
        if (table.Any(t => t.Count != n))
            throw new ArgumentException("Every observer has read every particle of the table.", nameof(table));
        double[] observers = [.. table.Select(t => t.Average())], particles = [.. Enumerable.Range(0, n).Select(i => table.Average(t => t[i]))];
        var all = observers.Average();
        var ofObservers = n * observers.Sum(o => (o - all) * (o - all)) / (m - 1);
        var residual = table.SelectMany((t, o) => t.Select((x, i) => x - observers[o] - particles[i] + all)).Sum(r => r * r) / ((m - 1) * (n - 1));
        return Math.Sqrt(Math.Max(0, (ofObservers - residual) / n));
    }
}
