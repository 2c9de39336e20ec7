namespace Holdfast.Reports.Figures.Drawing;

/// <summary>The space between the axes of a panel or strip.</summary>
/// <param name="X">Values along x to places.</param>
/// <param name="Y">Values along y to places.</param>
/// <param name="Box">Its edges.</param>
internal sealed record PlotArea(AxisMap X, AxisMap Y, Clip Box)
{
    public static PlotArea Of(Axis x, AxisRange xs, Axis y, AxisRange ys, Clip box)
        => new(AxisMap.Of(x, xs, box.Left, box.Right), AxisMap.Of(y, ys, box.Bottom, box.Top), box);

    /// <summary>Place of a point; null where a logarithmic axis cannot show it.</summary>
    public (double X, double Y)? Place(double x, double y) => X.Place(x) is { } px && Y.Place(y) is { } py ? (px, py) : null;

    /// <summary>Place of a point that the plot shows; null outside.</summary>
    public (double X, double Y)? Visible(double x, double y) => Place(x, y) is { } p && Box.Holds(p.X, p.Y) ? p : null;

    /// <summary>Visible pieces of a line through points.</summary>
    public IReadOnlyList<IReadOnlyList<(double X, double Y)>> Line(IEnumerable<(double X, double Y)> points)
        => Box.Line(points.Select(p => Place(p.X, p.Y)));
}
