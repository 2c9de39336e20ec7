namespace Holdfast.Porosity;

/// <summary>One point of an isotherm.</summary>
/// <param name="X">Relative pressure p/p0; no unit.</param>
/// <param name="Amount">Amount adsorbed, mmol/g.</param>
public readonly record struct SorptionPoint(double X, double Amount);
