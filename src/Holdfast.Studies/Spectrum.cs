using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>A whole spectrum as the instrument gave it: what one reading shows where it shows many points.</summary>
/// <param name="Wavelengths">Wavelengths, nm, in the order of the file, rising or falling.</param>
/// <param name="Intensities">Intensities, as many, in the detector's own unit.</param>
public sealed record Spectrum(ImmutableArray<double> Wavelengths, ImmutableArray<double> Intensities)
{
    /// <summary>In words: "61 points, 580 to 640 nm".</summary>
    public override string ToString()
        => FormattableString.Invariant($"{Wavelengths.Length} points, {Wavelengths.Min():R} to {Wavelengths.Max():R} nm");
}
