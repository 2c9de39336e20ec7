namespace Holdfast.Speciation;

/// <summary>Carbonate in water at 25 °C, as lg or −lg at zero ionic strength.</summary>
/// <remarks>L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011, from memory.</remarks>
public static class CarbonateConstants
{
    /// <summary>lg of the solubility of carbon dioxide, mol/L at 1 atm; dissolved gas and carbonic acid counted together.</summary>
    public const double LgHenry = -1.468;

    /// <summary>−lg of the first dissociation constant.</summary>
    public const double PK1 = 6.352;

    /// <summary>−lg of the second dissociation constant.</summary>
    public const double PK2 = 10.329;

    /// <summary>−lg of the ion product of water (from memory).</summary>
    public const double PKw = 13.997;

    /// <summary>lg of the pressure of carbon dioxide in air, atm: 420 ppm by volume, common value about 2023.</summary>
    public const double LgAir = -3.377;

    /// <summary>lg activity of carbonate in water that stands with a gas.</summary>
    /// <param name="lgPressure">lg of the pressure of carbon dioxide, atm.</param>
    /// <param name="ph">pH.</param>
    public static double LgCarbonate(double lgPressure, double ph) => LgHenry + lgPressure - PK1 - PK2 + 2 * ph;

    /// <summary>lg activity of hydrogen carbonate in water that stands with a gas.</summary>
    /// <param name="lgPressure">lg of the pressure of carbon dioxide, atm.</param>
    /// <param name="ph">pH.</param>
    public static double LgHydrogenCarbonate(double lgPressure, double ph) => LgHenry + lgPressure - PK1 + ph;

    /// <summary>Complexes of metal ions with carbonate, lg beta with its standard uncertainty, comma-separated with a header row.</summary>
    internal const string Complexes =
        """
        metal,carbonates,lg_beta,u,source,status
        Cu,1,6.75,0.03,IUPAC 2007,from memory
        Cu,2,10.3,0.10,IUPAC 2007,from memory
        Pb,1,6.45,0.72,IUPAC 2009,from memory
        Pb,2,10.13,0.24,IUPAC 2009,from memory
        Cd,1,4.4,0.20,IUPAC 2011,from memory
        Zn,1,4.75,0.05,IUPAC 2013,from memory
        Ni,1,4.2,0.40,NEA 2005,from memory
        """;
}
