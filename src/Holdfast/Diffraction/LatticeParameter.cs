namespace Holdfast.Diffraction;

/// <summary>A length or angle of the cell, or the shift that was refined with it.</summary>
/// <param name="Symbol">"a", "β".</param>
/// <param name="Value">Value, in <paramref name="Unit"/>.</param>
/// <param name="U">Standard uncertainty, in <paramref name="Unit"/>.</param>
/// <param name="Unit">"Å" or "°".</param>
public sealed record LatticeParameter(string Symbol, double Value, double U, string Unit);
