namespace Holdfast.Particles;

/// <summary>The outline of one particle as a person drew it: its area, perimeter and caliper widths. A line is an outline of two points, without area.</summary>
/// <remarks>Area by Gauss's sum over the edges; caliper widths over the convex hull, whose least width stands on one of its edges (from memory).</remarks>
public sealed class Outline
{
    private readonly (double X, double Y)[] points;

    private Outline((double X, double Y)[] points)
    {
        this.points = points;
        Box = new(points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y));
        var hull = Hull(points);
        Longest = hull.SelectMany((a, i) => hull.Skip(i + 1).Select(b => Distance(a, b))).DefaultIfEmpty(0).Max();
        Shortest = hull.Count < 3 ? 0 : Enumerable.Range(0, hull.Count).Min(i => WidthAcross(hull, hull[i], hull[(i + 1) % hull.Count]));
    }

    /// <summary>The upright rectangle around it.</summary>
    public PictureBox Box { get; }

    /// <summary>Longest caliper width (greatest Feret diameter), in the unit of the points.</summary>
    public double Longest { get; }

    /// <summary>Shortest caliper width (least Feret diameter), in the unit of the points; 0 for a line.</summary>
    public double Shortest { get; }

    /// <summary>Area, in the squared unit of the points.</summary>
    public double Area => Math.Abs(Edges().Sum(e => e.A.X * e.B.Y - e.B.X * e.A.Y)) / 2;

    /// <summary>Length of the edge all around, in the unit of the points.</summary>
    public double Perimeter => Edges().Sum(e => Distance(e.A, e.B));

    /// <summary>An outline from its points, in order around it.</summary>
    /// <param name="points">x and y of each, two or more, in one unit of length.</param>
    public static Outline Of(IEnumerable<(double X, double Y)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        (double X, double Y)[] known = [.. points];
        ArgumentOutOfRangeException.ThrowIfLessThan(known.Length, 2, nameof(points));
        return new(known);
    }

    private IEnumerable<((double X, double Y) A, (double X, double Y) B)> Edges() => points.Select((p, i) => (p, points[(i + 1) % points.Length]));

    private static double Distance((double X, double Y) a, (double X, double Y) b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    private static double Turn((double X, double Y) a, (double X, double Y) b, (double X, double Y) c) => (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);

    private static double WidthAcross(List<(double X, double Y)> hull, (double X, double Y) a, (double X, double Y) b)
        => hull.Max(p => Math.Abs(Turn(a, b, p))) / Distance(a, b);

    // Both chains of the hull, from left to right and back (A. M. Andrew, Inf. Process. Lett. 9 (1979) 216; from memory).
    private static List<(double X, double Y)> Hull((double X, double Y)[] points)
    {
        (double X, double Y)[] sorted = [.. points.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y)];
        if (sorted.Length < 3)
            return [.. sorted];
        var hull = new List<(double X, double Y)>();
        foreach (var chain in new[] { sorted, sorted.Reverse() })
        {
            var from = hull.Count;
            foreach (var p in chain)
            {
                while (hull.Count > from + 1 && Turn(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return hull;
    }
}
