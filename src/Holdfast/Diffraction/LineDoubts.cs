namespace Holdfast.Diffraction;

/// <summary>What speaks against taking a fitted line at its word.</summary>
[Flags]
public enum LineDoubts
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The Lorentz share ended at 0 or 1.</summary>
    MixingAtBound = 1,

    /// <summary>Narrower than the instrument can make a line: an artefact of the detector.</summary>
    NarrowerThanInstrument = 2,

    /// <summary>The width is known to worse than 30 %.</summary>
    WidthUncertain = 4,

    /// <summary>It cannot be told from a neighbour: correlation above 0.98.</summary>
    Entangled = 8,

    /// <summary>The fit did not come to rest, or the width or place ended at its limit.</summary>
    NotSettled = 16,

    /// <summary>At the place where Kβ of a stronger line would show.</summary>
    MaybeKBeta = 32,

    /// <summary>At the place where the tungsten line of a worn tube would show.</summary>
    MaybeTungsten = 64,
}
