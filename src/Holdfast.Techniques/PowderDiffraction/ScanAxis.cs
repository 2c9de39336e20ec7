namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What the abscissa of a scan is.</summary>
internal enum ScanAxis
{
    /// <summary>2θ in degrees.</summary>
    TwoTheta,

    /// <summary>θ in degrees.</summary>
    Theta,

    /// <summary>Spacing d.</summary>
    Spacing,

    /// <summary>Scattering vector Q = 4π·sin θ/λ.</summary>
    Q,
}
