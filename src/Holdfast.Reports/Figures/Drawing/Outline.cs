namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Steps of the shapes that figures use, in pt.</summary>
internal static class Outline
{
    // Control point of a quarter circle drawn as a cubic: 4/3·(√2 − 1).
    private const double Quarter = 0.5522847498307936;

    public static IReadOnlyList<PathStep> Line(double x1, double y1, double x2, double y2)
        => [new(PathVerb.Move, x1, y1), new(PathVerb.Line, x2, y2)];

    public static IReadOnlyList<PathStep> Through(IReadOnlyList<(double X, double Y)> points, bool closed = false)
    {
        var steps = new List<PathStep>(points.Count + 1);
        for (var i = 0; i < points.Count; i++)
            steps.Add(new(i == 0 ? PathVerb.Move : PathVerb.Line, points[i].X, points[i].Y));
        if (closed)
            steps.Add(new(PathVerb.Close));
        return steps;
    }

    public static IReadOnlyList<PathStep> Box(double left, double top, double right, double bottom)
        => Through([(left, top), (right, top), (right, bottom), (left, bottom)], closed: true);

    /// <summary>The mark of a series about a place: circle, square, triangle, diamond.</summary>
    public static IReadOnlyList<PathStep> Mark(int slot, double x, double y) => slot switch
    {
        0 => Circle(x, y, 2.6),
        1 => Box(x - 2.35, y - 2.35, x + 2.35, y + 2.35),
        2 => Through([(x, y - 3.4), (x + 3.1, y + 2.1), (x - 3.1, y + 2.1)], closed: true),
        _ => Through([(x, y - 3.3), (x + 3.3, y), (x, y + 3.3), (x - 3.3, y)], closed: true),
    };

    private static IReadOnlyList<PathStep> Circle(double x, double y, double r)
    {
        var k = Quarter * r;
        return
        [
            new(PathVerb.Move, x + r, y),
            new(PathVerb.Curve, x, y + r, x + r, y + k, x + k, y + r),
            new(PathVerb.Curve, x - r, y, x - k, y + r, x - r, y + k),
            new(PathVerb.Curve, x, y - r, x - r, y - k, x - k, y - r),
            new(PathVerb.Curve, x + r, y, x + k, y - r, x + r, y - k),
            new(PathVerb.Close),
        ];
    }
}
