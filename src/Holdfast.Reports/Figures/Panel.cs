namespace Holdfast.Reports.Figures;

/// <summary>One pair of axes and what is drawn between them.</summary>
/// <param name="X">The horizontal axis.</param>
/// <param name="Y">The vertical axis.</param>
/// <param name="Layers">What is drawn, back to front within each kind.</param>
public sealed record Panel(Axis X, Axis Y, IReadOnlyList<Layer> Layers)
{
    /// <summary>A short heading above the panel; null for none.</summary>
    public RichText? Heading { get; init; }

    /// <summary>The residual strip below; null for none.</summary>
    public Residuals? Residuals { get; init; }

    /// <summary>All marks of the panel.</summary>
    public IEnumerable<Mark> AllMarks => Layers.OfType<Marks>().SelectMany(m => m.Points);

    /// <summary>
    /// Panels of one kind with the same axes and the same ranges, for more series than one panel may hold.
    /// </summary>
    /// <param name="x">The shared horizontal axis.</param>
    /// <param name="y">The shared vertical axis.</param>
    /// <param name="groups">Heading and layers of each panel.</param>
    public static IReadOnlyList<Panel> Multiples(Axis x, Axis y, IEnumerable<(RichText Heading, IReadOnlyList<Layer> Layers)> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var all = groups.ToArray();
        var together = new Panel(x, y, all.SelectMany(g => g.Layers).ToArray());
        var (xs, ys) = (AxisRange.OfX(together), AxisRange.OfY(together));
        return all.Select(g => new Panel(x with { Min = xs.Low, Max = xs.High }, y with { Min = ys.Low, Max = ys.High }, g.Layers) { Heading = g.Heading })
            .ToArray();
    }
}
