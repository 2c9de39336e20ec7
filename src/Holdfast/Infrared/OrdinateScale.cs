namespace Holdfast.Infrared;

/// <summary>What the ordinate of an infrared spectrum is.</summary>
public enum OrdinateScale
{
    /// <summary>Absorbance A = −log₁₀ T; no unit.</summary>
    Absorbance,

    /// <summary>Transmittance T as a fraction, 1 for an empty beam; no unit.</summary>
    Transmittance,

    /// <summary>Transmittance in percent, 100 for an empty beam.</summary>
    PercentTransmittance,
}
