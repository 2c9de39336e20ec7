namespace Holdfast.Diffraction;

/// <summary>A line whose planes are known.</summary>
/// <param name="Planes">Indices.</param>
/// <param name="TwoTheta">2θ as measured, degrees.</param>
/// <param name="U">Standard uncertainty of 2θ from the profile fit, degrees; 0 when not known.</param>
public sealed record IndexedLine(Miller Planes, double TwoTheta, double U = 0);
