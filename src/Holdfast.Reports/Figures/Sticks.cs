namespace Holdfast.Reports.Figures;

/// <summary>Thin lines from the x axis upwards: the reference lines of a diffraction pattern.</summary>
/// <param name="Points">Places and heights, in axis units.</param>
public sealed record Sticks(IReadOnlyList<(double X, double Height)> Points) : SeriesLayer;
