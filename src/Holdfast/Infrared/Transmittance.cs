using Holdfast.Amounts;

namespace Holdfast.Infrared;

/// <summary>Transmittance into absorbance: A = −log₁₀ T, u(A) = u(T)/(T·ln 10).</summary>
public static class Transmittance
{
    /// <summary>Absorbance; null where nothing came through, since such a point is saturated and has none. No unit.</summary>
    /// <param name="transmittance">Fraction of the light that came through; above 1 the absorbance is below 0 and the background is in doubt.</param>
    public static Measured? ToAbsorbance(Measured transmittance)
        => transmittance.Value > 0 ? -Measured.Log(transmittance) / Math.Log(10) : null;

    /// <summary>Absorbance; null for a saturated point. No unit.</summary>
    /// <param name="transmittance">Fraction of the light that came through.</param>
    public static double? ToAbsorbance(double transmittance) => transmittance > 0 ? -Math.Log10(transmittance) : null;
}
