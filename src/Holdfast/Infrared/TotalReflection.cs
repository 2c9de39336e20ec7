namespace Holdfast.Infrared;

/// <summary>Attenuated total reflection: how deep the light goes.</summary>
/// <remarks>
/// d = λ/(2π n₁ √(sin²θ − (n₂/n₁)²)) (N. J. Harrick, Internal Reflection Spectroscopy, 1967; from memory). The depth grows with the wavelength, so bands at
/// low wavenumbers look too strong. Strong bands also move down by some 10 to 20 cm⁻¹ (from memory).
/// </remarks>
public static class TotalReflection
{
    /// <summary>Depth at which the field has fallen to 1/e, µm; null when the light is not totally reflected.</summary>
    /// <param name="wavenumber">cm⁻¹.</param>
    /// <param name="crystal">Refractive index of the crystal; diamond 2.4; no unit.</param>
    /// <param name="sample">Refractive index of the sample; no unit.</param>
    /// <param name="degrees">Angle of incidence, degrees.</param>
    public static double? Depth(double wavenumber, double crystal = 2.4, double sample = 1.5, double degrees = 45)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wavenumber);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(crystal);
        var sine = Math.Sin(degrees * Math.PI / 180);
        var under = sine * sine - sample / crystal * (sample / crystal);
        return under > 0 ? 1e4 / wavenumber / (2 * Math.PI * crystal * Math.Sqrt(under)) : null;
    }
}
