using Holdfast.Amounts;

namespace Holdfast.Fluorescence;

/// <summary>
/// From what the detector showed to the signal of the emitter, in this order: dark, solvent, lamp, dilution; then the inner filter and the drift,
/// which have rules of their own. Nothing is smoothed before.
/// </summary>
/// <remarks>The order follows from what each step multiplies or adds (derived); J. R. Lakowicz, chapter 2 (from memory).</remarks>
public static class SignalCorrection
{
    /// <summary>Share of the detector's range above which counts are lost (common practice).</summary>
    public const double LargestShareOfRange = 0.80;

    /// <summary>Signal less what the detector shows with the shutter closed, in the unit of the readings.</summary>
    /// <param name="raw">Reading.</param>
    /// <param name="dark">Reading with the shutter closed.</param>
    public static T LessDark<T>(T raw, T dark) where T : struct, IReal<T> => raw - dark;

    /// <summary>Signal less that of the same liquid without emitter (scatter, Raman line of water), in the unit of the readings.</summary>
    /// <param name="signal">Signal less dark.</param>
    /// <param name="solvent">Signal of the liquid without emitter, same slits, less dark.</param>
    public static T LessSolvent<T>(T signal, T solvent) where T : struct, IReal<T> => signal - solvent;

    /// <summary>Signal at the lamp's brightness of the first reading, in the unit of the readings.</summary>
    /// <param name="signal">Signal less dark and solvent.</param>
    /// <param name="lamp">Lamp reference at this reading.</param>
    /// <param name="lampAtStart">Lamp reference at the first reading, same unit.</param>
    public static T AtLampOfStart<T>(T signal, T lamp, T lampAtStart) where T : struct, IReal<T> => signal * (lampAtStart / lamp);

    /// <summary>Signal as if the quencher had been added without its water: F·(V0 + V)/V0, in the unit of the readings.</summary>
    /// <param name="signal">Signal.</param>
    /// <param name="volume">Volume V0 before the addition.</param>
    /// <param name="added">Volume V added so far, same unit.</param>
    public static T Undiluted<T>(T signal, T volume, T added) where T : struct, IReal<T> => signal * (volume + added) / volume;

    /// <summary>Whether a raw reading is near the end of the detector's range, where it no longer follows the light.</summary>
    /// <param name="id">The reading.</param>
    /// <param name="raw">What the detector showed, in its unit.</param>
    /// <param name="range">Largest reading the detector can show, same unit, above 0.</param>
    /// <returns>A finding, or null below 80 % of the range.</returns>
    public static Finding? Saturation(string id, double raw, double range)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(range);
        return raw > LargestShareOfRange * range ? FluorescenceFindings.Saturated(id, raw, range) : null;
    }
}
