namespace Holdfast.Reports.Figures;

/// <summary>A scan read out so densely that its readings form a line by themselves: a spectrum, a diffraction pattern. Nothing is smoothed.</summary>
/// <param name="Points">The readings in scan order, in axis units.</param>
public sealed record Trace(IReadOnlyList<(double X, double Y)> Points) : SeriesLayer;
