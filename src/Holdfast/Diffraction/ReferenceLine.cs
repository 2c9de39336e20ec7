namespace Holdfast.Diffraction;

/// <summary>A line that a phase should show.</summary>
/// <param name="Planes">Indices; null when the list has none.</param>
/// <param name="Spacing">d, ångström.</param>
/// <param name="Intensity">Intensity as a share of the strongest line, per cent; null when the list has none.</param>
/// <param name="Multiplicity">Number of planes of the family; 0 when not known.</param>
public sealed record ReferenceLine(Miller? Planes, double Spacing, double? Intensity, int Multiplicity = 0);
