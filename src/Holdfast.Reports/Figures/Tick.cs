namespace Holdfast.Reports.Figures;

/// <summary>A labelled tick.</summary>
/// <param name="Value">Its value, in the axis unit.</param>
/// <param name="Label">Its label.</param>
public sealed record Tick(double Value, RichText Label);
