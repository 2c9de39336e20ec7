namespace Holdfast.Reports.Figures;

/// <summary>A labelled dashed straight line y = Intercept + Slope·x, for example the identity line of a recovery plot.</summary>
/// <param name="Intercept">Value at x = 0, in the unit of y.</param>
/// <param name="Slope">Rise, in units of y per unit of x.</param>
/// <param name="Label">What it is.</param>
public sealed record SlopingLine(double Intercept, double Slope, RichText Label) : Layer;
