namespace Holdfast.Diffraction;

/// <summary>What moves all lines of a pattern together.</summary>
public enum ShiftModel
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The zero of the scale: the same for every line.</summary>
    Zero,

    /// <summary>The sample's surface beside the axis: Δ2θ = D·cos θ with D = −2s/R in radians, s above 0 for a sample too low.</summary>
    Displacement,
}
