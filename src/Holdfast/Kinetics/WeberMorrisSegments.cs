using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>
/// Straight segments on the square root of time, with breaks found by least squares over every split: hand-drawn breaks are no evidence.
/// Each candidate must still beat one smooth curve by AICc, since a smooth curve splits convincingly too.
/// </summary>
public static class WeberMorrisSegments
{
    /// <summary>Fewest points in a segment.</summary>
    public const int FewestPoints = 3;

    /// <summary>The best split into each number of segments that the data allow, fewest segments first; empty with fewer than three points.</summary>
    /// <param name="time">Times in increasing order, 0 or above; (0, 0) is a definition and does not belong here.</param>
    /// <param name="uptake">Uptake at those times.</param>
    /// <param name="most">Largest number of segments, 1 to 4.</param>
    public static IReadOnlyList<Segmentation> Search(ReadOnlySpan<double> time, ReadOnlySpan<double> uptake, int most = 3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(most, 4);
        if (time.Length != uptake.Length)
            throw new ArgumentException($"{time.Length} times and {uptake.Length} uptakes.", nameof(uptake));
        var root = new double[time.Length];
        for (var i = 0; i < time.Length; i++)
        {
            if (!(time[i] >= 0) || (i > 0 && time[i] < time[i - 1]))
                throw new ArgumentException("Times are 0 or above and in increasing order.", nameof(time));
            root[i] = Math.Sqrt(time[i]);
        }

        var q = uptake.ToArray();
        var found = new List<Segmentation>();
        for (var segments = 1; segments <= most && FewestPoints * segments <= q.Length; segments++)
            found.AddRange(Best(root, q, 0, segments) is { } lines ? [Of(lines)] : []);
        return found;
    }

    // The best split of everything from a point on; null where replicates at one time leave a segment without two different times.
    private static List<StraightLine>? Best(double[] root, double[] q, int from, int segments)
    {
        if (segments == 1)
            return root[^1] > root[from] ? [StraightLine.Through(root.AsSpan(from), q.AsSpan(from))] : null;
        List<StraightLine>? best = null;
        for (var count = FewestPoints; from + count + FewestPoints * (segments - 1) <= q.Length; count++)
        {
            // Replicates at one time stay together.
            if (root[from + count] == root[from + count - 1] || root[from + count - 1] == root[from])
                continue;
            if (Best(root, q, from + count, segments - 1) is not { } rest)
                continue;
            List<StraightLine> lines = [StraightLine.Through(root.AsSpan(from, count), q.AsSpan(from, count)), .. rest];
            if (best is null || lines.Sum(l => l.ResidualSquares) < best.Sum(l => l.ResidualSquares))
                best = lines;
        }

        return best;
    }

    private static Segmentation Of(List<StraightLine> lines)
    {
        var rss = lines.Sum(l => l.ResidualSquares);
        var n = lines.Sum(l => l.Count);

        // Slopes, intercepts and breaks; with the variance that is 3 for each segment.
        return new(lines, rss, Criteria.Of(n, 3 * lines.Count - 1, rss, known: false)?.Aicc);
    }
}

/// <summary>One way to cut the data into straight segments.</summary>
/// <param name="Lines">The segments in order of time, uptake on the square root of time.</param>
/// <param name="ResidualSquares">Sum of squared residuals over all segments.</param>
/// <param name="Aicc">AICc, counting every slope, intercept and break and the variance; null where it is undefined.</param>
public sealed record Segmentation(IReadOnlyList<StraightLine> Lines, double ResidualSquares, double? Aicc);
