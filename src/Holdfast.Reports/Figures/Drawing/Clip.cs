namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Cuts lines and areas to a rectangle by arithmetic, so that every output shows the same and no output needs a clipping region.</summary>
/// <param name="Left">Left edge in pt.</param>
/// <param name="Top">Top edge in pt.</param>
/// <param name="Right">Right edge in pt.</param>
/// <param name="Bottom">Bottom edge in pt.</param>
internal readonly record struct Clip(double Left, double Top, double Right, double Bottom)
{
    /// <summary>True when a place lies inside or on the edge, with a hair of slack.</summary>
    public bool Holds(double x, double y) => x >= Left - 0.01 && x <= Right + 0.01 && y >= Top - 0.01 && y <= Bottom + 0.01;

    /// <summary>The visible pieces of a line through points; a null point breaks the line.</summary>
    public IReadOnlyList<IReadOnlyList<(double X, double Y)>> Line(IEnumerable<(double X, double Y)?> points)
    {
        var pieces = new List<IReadOnlyList<(double, double)>>();
        var piece = new List<(double X, double Y)>();
        (double X, double Y)? before = null;
        foreach (var point in points)
        {
            if (before is { } a && point is { } b)
            {
                if (Segment(a, b) is var (from, to))
                {
                    if (piece.Count == 0 || piece[^1] != from)
                    {
                        Keep();
                        piece.Add(from);
                    }

                    piece.Add(to);
                }
                else
                {
                    Keep();
                }
            }
            else
            {
                Keep();
            }

            before = point;
        }

        Keep();
        return pieces;

        void Keep()
        {
            if (piece.Count > 1)
                pieces.Add(piece.ToArray());
            piece.Clear();
        }
    }

    /// <summary>The visible part of a closed area (Sutherland and Hodgman, Commun. ACM 17 (1974) 32); empty when none is.</summary>
    public IReadOnlyList<(double X, double Y)> Area(IReadOnlyList<(double X, double Y)> corners)
    {
        var (left, top, right, bottom) = this;
        var area = Half(corners, p => p.X >= left, (a, b) => AtX(a, b, left));
        area = Half(area, p => p.X <= right, (a, b) => AtX(a, b, right));
        area = Half(area, p => p.Y >= top, (a, b) => AtY(a, b, top));
        return Half(area, p => p.Y <= bottom, (a, b) => AtY(a, b, bottom));
    }

    // Liang and Barsky, ACM Trans. Graph. 3 (1984) 1: the share of the segment inside each edge in turn.
    private ((double X, double Y) From, (double X, double Y) To)? Segment((double X, double Y) a, (double X, double Y) b)
    {
        double enters = 0, leaves = 1;
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        if (!Cut(-dx, a.X - Left, ref enters, ref leaves) || !Cut(dx, Right - a.X, ref enters, ref leaves)
            || !Cut(-dy, a.Y - Top, ref enters, ref leaves) || !Cut(dy, Bottom - a.Y, ref enters, ref leaves))
        {
            return null;
        }

        return (enters == 0 ? a : Inside(a.X + enters * dx, a.Y + enters * dy), leaves == 1 ? b : Inside(a.X + leaves * dx, a.Y + leaves * dy));
    }

    // Between ends very far outside the digits run out: what is cut at an edge is put on it.
    private (double X, double Y) Inside(double x, double y) => (Math.Clamp(x, Left, Right), Math.Clamp(y, Top, Bottom));

    private static bool Cut(double slope, double room, ref double enters, ref double leaves)
    {
        if (slope == 0)
            return room >= 0;
        var at = room / slope;
        if (slope < 0)
            enters = Math.Max(enters, at);
        else
            leaves = Math.Min(leaves, at);
        return enters <= leaves;
    }

    private static List<(double X, double Y)> Half(
        IReadOnlyList<(double X, double Y)> corners,
        Func<(double X, double Y), bool> inside,
        Func<(double X, double Y), (double X, double Y), (double X, double Y)> cross)
    {
        var kept = new List<(double X, double Y)>(corners.Count);
        for (var i = 0; i < corners.Count; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Count]);
            if (inside(from))
                kept.Add(from);
            if (inside(from) != inside(to))
                kept.Add(cross(from, to));
        }

        return kept;
    }

    private static (double X, double Y) AtX((double X, double Y) a, (double X, double Y) b, double x) => (x, a.Y + (b.Y - a.Y) * (x - a.X) / (b.X - a.X));

    private static (double X, double Y) AtY((double X, double Y) a, (double X, double Y) b, double y) => (a.X + (b.X - a.X) * (y - a.Y) / (b.Y - a.Y), y);
}
