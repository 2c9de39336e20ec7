namespace Holdfast.Reports.Figures;

/// <summary>A labelled dashed line across the panel: a detection limit, a margin, the line at one.</summary>
/// <param name="At">Which axis the value belongs to.</param>
/// <param name="Value">Where, in the unit of that axis.</param>
/// <param name="Label">What it is.</param>
public sealed record ReferenceLine(AxisName At, double Value, RichText Label) : Layer;
