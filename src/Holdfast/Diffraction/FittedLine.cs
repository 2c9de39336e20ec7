namespace Holdfast.Diffraction;

/// <summary>A line fitted with a pseudo-Voigt profile (a doublet where the radiation is one). Standard uncertainties: covariance × max(1, χ²ᵣ).</summary>
/// <param name="TwoTheta">2θ of Kα1, degrees.</param>
/// <param name="TwoThetaU">Its standard uncertainty, degrees.</param>
/// <param name="Spacing">d, ångström.</param>
/// <param name="SpacingU">Its standard uncertainty from that of 2θ alone, ångström; a shift of the whole scale is not in it.</param>
/// <param name="Height">Height of Kα1, unit of the readings.</param>
/// <param name="Width">Full width at half height, degrees.</param>
/// <param name="WidthU">Its standard uncertainty, degrees.</param>
/// <param name="Eta">Lorentz share, without unit.</param>
/// <param name="Area">Area of Kα1, unit of the readings × degree.</param>
/// <param name="AreaU">Its standard uncertainty.</param>
/// <param name="Significance">z of the search, without unit.</param>
/// <param name="ReducedChiSquare">χ²/ν of its group.</param>
/// <param name="Flags">What speaks against it.</param>
public sealed record FittedLine(
    double TwoTheta, double TwoThetaU, double Spacing, double SpacingU, double Height, double Width, double WidthU, double Eta,
    double Area, double AreaU, double Significance, double ReducedChiSquare, LineDoubts Flags)
{
    // Areas in standard uncertainties.
    private const double LeastArea = 3;

    /// <summary>True when nothing is there after all: the place ended at its limit, or the area could be chance.</summary>
    internal bool IsEmpty => !double.IsFinite(TwoThetaU) || !(Area > LeastArea * AreaU);

    /// <summary>True when place and uncertainty can be used.</summary>
    public bool IsSettled => (Flags & (LineDoubts.NotSettled | LineDoubts.NarrowerThanInstrument)) == LineDoubts.None;
}
