namespace Holdfast.Fluorescence;

/// <summary>Where light that no emitter sent reaches the detector: the exciting light itself, its second order, and the Raman line of water.</summary>
public static class ScatteredLight
{
    /// <summary>Half-width around the exciting light and its second order that is kept out of a window, nm (common practice for slits up to 10 nm).</summary>
    public const double KeepsClear = 15;

    private const double RamanShiftOfWater = 3400;
    private const double NmTimesWavenumber = 1e7;

    /// <summary>Wavelength of the Raman line of water, nm: 3400 1/cm below the exciting light (O–H stretching; J. R. Lakowicz, chapter 2, from memory).</summary>
    /// <param name="excitation">Wavelength of the exciting light, nm, above 0 and below 2900.</param>
    public static double RamanOfWater(double excitation)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(excitation);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(excitation, 2900);
        return NmTimesWavenumber / (NmTimesWavenumber / excitation - RamanShiftOfWater);
    }

    /// <summary>True where the exciting light or its second order reaches.</summary>
    /// <param name="wavelength">Wavelength looked at, nm.</param>
    /// <param name="excitation">Wavelength of the exciting light, nm.</param>
    public static bool Reaches(double wavelength, double excitation)
        => Math.Abs(wavelength - excitation) <= KeepsClear || Math.Abs(wavelength - 2 * excitation) <= KeepsClear;
}
