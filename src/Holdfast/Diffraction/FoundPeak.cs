namespace Holdfast.Diffraction;

/// <summary>A place where a pattern rises above its surroundings by more than chance.</summary>
/// <param name="TwoTheta">2θ of its top, degrees.</param>
/// <param name="Significance">z: net counts over their standard uncertainty, the largest over all widths tried. Without unit.</param>
/// <param name="Width">First estimate of the full width at half height, degrees.</param>
/// <param name="Height">First estimate of the height above its surroundings, in the unit of the readings.</param>
public sealed record FoundPeak(double TwoTheta, double Significance, double Width, double Height);
