namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A laid-out figure: every line, mark and letter at its place, in pt from the top left. All outputs draw this and nothing else.</summary>
/// <param name="WidthMm">Width in mm.</param>
/// <param name="Height">Height in pt.</param>
/// <param name="Items">What is drawn, back to front.</param>
public sealed record Sheet(double WidthMm, double Height, IReadOnlyList<SheetItem> Items)
{
    /// <summary>Points in a millimetre: 72 to the inch of 25.4 mm.</summary>
    public const double PointsPerMm = 72 / 25.4;

    /// <summary>Where the panels plot, in the order of the panels.</summary>
    internal IReadOnlyList<PlotArea> Plots { get; init; } = [];

    /// <summary>Width in pt.</summary>
    public double Width => WidthMm * PointsPerMm;

    /// <summary>Height in mm.</summary>
    public double HeightMm => Height / PointsPerMm;

    /// <summary>All items, groups opened, back to front.</summary>
    public IEnumerable<SheetItem> Flat => Open(Items);

    private static IEnumerable<SheetItem> Open(IEnumerable<SheetItem> items)
        => items.SelectMany(i => i is SheetGroup group ? Open(group.Items) : [i]);
}
