namespace Holdfast.Reports.Figures.Drawing;

/// <summary>One step of a path, in pt.</summary>
/// <param name="Verb">What it does.</param>
/// <param name="X">End, from the left, in pt.</param>
/// <param name="Y">End, from the top, in pt.</param>
/// <param name="X1">First control point of a curve, from the left, in pt.</param>
/// <param name="Y1">First control point of a curve, from the top, in pt.</param>
/// <param name="X2">Second control point of a curve, from the left, in pt.</param>
/// <param name="Y2">Second control point of a curve, from the top, in pt.</param>
public readonly record struct PathStep(PathVerb Verb, double X = 0, double Y = 0, double X1 = 0, double Y1 = 0, double X2 = 0, double Y2 = 0);
