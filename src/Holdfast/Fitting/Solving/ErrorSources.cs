using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// The sources behind the points of a series, each with how it moves y and x of every point; how far that moves what is fitted off the curve follows
/// from the curve (<see cref="Lever"/>), so that an error in the concentration left counts once although it is in both.
/// </summary>
internal sealed class ErrorSources
{
    // Nothing is taken to be known better than this: points without stated errors would otherwise have infinite weight.
    private const double FinestShare = 1e-3;
    private const double FinestOfStart = 1e-6;

    private readonly Entry[] sources;
    private readonly double[] least;

    public ErrorSources(SeriesPoints points)
    {
        Count = points.Count;
        var largest = points.Y.Max(y => Math.Abs(y.Value));
        least = points.Vessels is { } vessels
            ? [.. points.X.Select((c, i) => Math.Pow(FinestShare * c.Value, 2) + Math.Pow(FinestOfStart * vessels.Readings.XValues[i], 2))]
            : [.. points.Y.Select(_ => Math.Pow(FinestShare * largest, 2))];
        var found = new SortedDictionary<string, (Source Source, SortedDictionary<int, (double Dy, double Dx)> At)>(StringComparer.Ordinal);
        for (var i = 0; i < Count; i++)
        {
            foreach (var c in points.Y[i].Contributions)
                Add(c, i, c.D, 0);
            foreach (var c in points.X[i].Contributions)
                Add(c, i, 0, c.D);
        }

        string[] groups = [.. found.Values.Where(s => double.IsFinite(s.Source.DegreesOfFreedom)).Select(s => s.Source.GroupOrSelf).Distinct(StringComparer.Ordinal)];
        Freedom = [.. groups.Select(g => found.Values.Where(s => s.Source.GroupOrSelf == g).Min(s => s.Source.DegreesOfFreedom))];
        sources = [.. found.Values.Select(s => new Entry(
            [.. s.At.Keys], [.. s.At.Values.Select(v => v.Dy)], [.. s.At.Values.Select(v => v.Dx)], Array.IndexOf(groups, s.Source.GroupOrSelf)))];

        void Add(Contribution c, int i, double dy, double dx)
        {
            if (!found.TryGetValue(c.Source.Id, out var source))
                found[c.Source.Id] = source = (c.Source, []);
            var had = source.At.GetValueOrDefault(i);
            source.At[i] = (had.Dy + dy, had.Dx + dx);
        }
    }

    /// <summary>Number of points.</summary>
    public int Count { get; }

    /// <summary>Degrees of freedom of each group of sources that has finite ones.</summary>
    public double[] Freedom { get; }

    /// <summary>Covariance of the points about the curve as far as it is stated, by rows.</summary>
    /// <param name="levers">How y and x of each point move what is fitted off the curve.</param>
    public double[] Covariance(ReadOnlySpan<Lever> levers)
    {
        var v = new double[Count * Count];
        foreach (var s in sources)
            Add(s, levers, v);
        for (var i = 0; i < Count; i++)
            v[i * Count + i] += least[i];
        return v;
    }

    /// <summary>What each group of finite freedom adds to the covariance of the points, by rows, with its degrees of freedom.</summary>
    /// <param name="levers">How y and x of each point move what is fitted off the curve.</param>
    public IReadOnlyList<(double[] Covariance, double Freedom)> Groups(ReadOnlySpan<Lever> levers)
    {
        (double[] Covariance, double Freedom)[] groups = [.. Freedom.Select(f => (new double[Count * Count], f))];
        foreach (var s in sources)
        {
            if (s.Group >= 0)
                Add(s, levers, groups[s.Group].Covariance);
        }

        return groups;
    }

    private void Add(Entry s, ReadOnlySpan<Lever> levers, double[] v)
    {
        for (var a = 0; a < s.At.Length; a++)
        {
            var moved = s.Moves(a, levers);
            for (var b = 0; b < s.At.Length; b++)
                v[s.At[a] * Count + s.At[b]] += moved * s.Moves(b, levers);
        }
    }

    private sealed record Entry(int[] At, double[] Dy, double[] Dx, int Group)
    {
        public double Moves(int a, ReadOnlySpan<Lever> levers) => levers[At[a]].ByY * Dy[a] + levers[At[a]].ByX * Dx[a];
    }
}

/// <summary>How far an error of y and one of x move what is fitted off the curve.</summary>
/// <param name="ByY">Per unit of y.</param>
/// <param name="ByX">Per unit of x.</param>
internal readonly record struct Lever(double ByY, double ByX)
{
    /// <summary>y itself is fitted against an exact x.</summary>
    public static Lever Plain { get; } = new(1, 0);

    /// <summary>
    /// The concentration left is fitted through the mass balance with slope f′ of the isotherm there: an error of q moves the balance by s, one of Ce along
    /// the curve by s·f′, and both are divided by 1 + s·f′.
    /// </summary>
    /// <param name="dose">Dose s.</param>
    /// <param name="slope">f′ ≥ 0, infinite where the curve rises straight up.</param>
    public static Lever OfVessel(double dose, double slope)
        => double.IsPositiveInfinity(slope) ? new(0, 1) : new(-dose / (1 + dose * slope), dose * slope / (1 + dose * slope));
}
