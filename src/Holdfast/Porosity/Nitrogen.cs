namespace Holdfast.Porosity;

/// <summary>Nitrogen at its boiling point: constants of the trade for sorption at 77 K, each written once.</summary>
public static class Nitrogen
{
    /// <summary>Molar volume of a gas at 0 °C and 101.325 kPa, cm³(STP)/mol: R·273.15 K/101.325 kPa.</summary>
    public const double MolarVolumeStp = Constants.MolarGas * 273.15 / 101325 * 1e6;

    /// <summary>Molar mass, g/mol (CIAAW 2024, abridged atomic weight 14.007 twice, to the digits in use: 28.0134).</summary>
    public const double MolarMass = 28.0134;

    /// <summary>Area one molecule covers in a full layer, nm² (ISO 9277 and IUPAC 2015; from memory).</summary>
    public const double CrossSection = 0.162;

    /// <summary>Density of the liquid at 77 K, g/cm³ (0.806 to 0.809 in use; from memory).</summary>
    public const double LiquidDensity = 0.808;

    /// <summary>Surface tension of the liquid at 77 K, N/m (from memory).</summary>
    public const double SurfaceTension = 8.85e-3;

    /// <summary>Molar volume of the liquid in Kelvin's equation, m³/mol (from memory).</summary>
    public const double LiquidMolarVolume = 3.47e-5;

    /// <summary>Temperature of the bath, K.</summary>
    public const double BathTemperature = 77.35;

    /// <summary>Area per amount of a full layer, m²/mmol: Avogadro's number times the cross section.</summary>
    public const double AreaPerMmol = Constants.Avogadro * CrossSection * 1e-21;

    /// <summary>Volume of liquid per amount, cm³/mmol.</summary>
    public const double LiquidPerMmol = MolarMass / LiquidDensity / 1000;

    /// <summary>Volume of gas per amount, cm³(STP)/mmol.</summary>
    public const double StpPerMmol = MolarVolumeStp / 1000;

    /// <summary>More nitrogen than this at 0.95 of the saturation pressure no known solid holds, cm³(STP)/g (from memory).</summary>
    public const double LargestUptakeStp = 3500;
}
