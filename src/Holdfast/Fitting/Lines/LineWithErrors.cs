namespace Holdfast.Fitting.Lines;

/// <summary>A straight line y = a + b·x fitted with errors on both axes.</summary>
/// <param name="Intercept">a, in the unit of y.</param>
/// <param name="Slope">b, in unit of y over unit of x.</param>
/// <param name="InterceptError">Standard error of a; null where the method gives none.</param>
/// <param name="SlopeError">Standard error of b; null where the method gives none.</param>
/// <param name="ChiSquare">Weighted sum of squares, χ² on n − 2 when the uncertainties are right; null where the method has none.</param>
public sealed record LineWithErrors(double Intercept, double Slope, double? InterceptError, double? SlopeError, double? ChiSquare);
