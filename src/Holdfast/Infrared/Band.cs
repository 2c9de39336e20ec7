namespace Holdfast.Infrared;

/// <summary>One band of an infrared spectrum.</summary>
/// <param name="Wavenumber">Highest point, from a parabola through the top, cm⁻¹.</param>
/// <param name="U">Standard uncertainty of that: the largest of a quarter of the resolution, step/√12 and the parabola's own; cm⁻¹.</param>
/// <param name="Absorbance">Absorbance at the top; no unit.</param>
/// <param name="Prominence">Height above the higher of the two valleys beside it, absorbance; no unit.</param>
/// <param name="Width">Width at half its prominence, twice the narrower side, cm⁻¹; a lower bound for a shoulder.</param>
public sealed record Band(double Wavenumber, double U, double Absorbance, double Prominence, double Width)
{
    /// <summary>True for a band too strong to be compared in height.</summary>
    public bool IsFlattened => Absorbance > InfraredSpectrum.FlattenedAbove;
}
