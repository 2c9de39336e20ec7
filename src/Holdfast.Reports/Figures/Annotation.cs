namespace Holdfast.Reports.Figures;

/// <summary>A short text above a place in the panel: the letters of a comparison, the name of a peak.</summary>
/// <param name="X">Place along x, in the unit of the x axis.</param>
/// <param name="Y">Place along y, in the unit of the y axis; the text stands above it.</param>
/// <param name="Text">The text.</param>
public sealed record Annotation(double X, double Y, RichText Text) : Layer;
