namespace Holdfast.Reports.Figures;

/// <summary>A shaded span across the panel: the range where one species leads, a tolerance, a region left out of a search.</summary>
/// <param name="Along">The axis whose values it spans.</param>
/// <param name="From">Lower end, in the unit of that axis.</param>
/// <param name="To">Upper end, in the unit of that axis.</param>
/// <param name="Label">What it is.</param>
public sealed record Zone(AxisName Along, double From, double To, RichText Label) : Layer;
