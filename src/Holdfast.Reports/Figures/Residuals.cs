namespace Holdfast.Reports.Figures;

/// <summary>The strip below a panel: what the model leaves over, on the panel's own x axis, about a line at zero.</summary>
/// <param name="Y">The axis: the same unit as the panel, or standardised without unit.</param>
/// <param name="Marks">The residuals, in the styles of their series.</param>
public sealed record Residuals(Axis Y, IReadOnlyList<Marks> Marks);
