using System.Collections.Immutable;

namespace Holdfast.Porosity;

/// <summary>Volume of pores from the amount near saturation, as liquid.</summary>
/// <remarks>The rule is L. Gurvich's (1915; from memory). Above p/p0 0.98 the voids between grains fill.</remarks>
public static class PoreVolume
{
    /// <summary>Relative pressure at which the volume is read; no unit.</summary>
    public const double ReadAt = 0.95;

    /// <summary>Relative pressure at which the voids between grains are filled as well; no unit.</summary>
    public const double WithVoids = 0.99;

    /// <summary>Amount at the top over that at 0.90 from which there is no plateau; no unit.</summary>
    public const double NoPlateauFrom = 1.25;

    /// <summary>Relative standard uncertainty of the liquid's density: 0.806 to 0.809 g/cm³ in use.</summary>
    public const double DensityU = 0.002;

    /// <summary>Smallest and largest diameter by 4V/A that can be one, nm.</summary>
    public const double SmallestAverage = 0.4, LargestAverage = 100;

    /// <summary>Volume at a relative pressure, cm³/g; null where the branch does not reach it.</summary>
    /// <param name="adsorption">Adsorption branch.</param>
    /// <param name="x">Relative pressure; no unit.</param>
    public static double? At(ImmutableArray<SorptionPoint> adsorption, double x) => SorptionBranches.At(adsorption, x) * Nitrogen.LiquidPerMmol;

    /// <summary>Average diameter of cylinders, nm: 4V/A.</summary>
    /// <param name="volume">Pore volume, cm³/g.</param>
    /// <param name="area">Area, m²/g.</param>
    public static double AverageDiameter(double volume, double area) => 4 * volume / area * 1000;
}
