namespace Holdfast.Diffraction;

/// <summary>K lines of six anodes, ångström, with their standard uncertainty.</summary>
/// <remarks>Cu Kα1 and Mo Kα1: International Tables for Crystallography C (2006), table 4.2.2.6, read. All others: the same table and G. Hölzer et al., Phys. Rev. A 56 (1997) 4554, from memory.</remarks>
internal static class WavelengthTable
{
    /// <summary>The table, comma-separated with a header row.</summary>
    public const string Table =
        """
        element,line,wavelength_angstrom,standard_uncertainty_angstrom
        Cr,Ka1,2.28972600,3.0e-06
        Cr,Ka2,2.29365100,3.0e-06
        Cr,Kb,2.08488100,4.0e-06
        Fe,Ka1,1.93604100,3.0e-06
        Fe,Ka2,1.93997300,3.0e-06
        Fe,Kb,1.75660400,4.0e-06
        Co,Ka1,1.78899600,1.0e-06
        Co,Ka2,1.79283500,1.0e-06
        Co,Kb,1.62082600,3.0e-06
        Cu,Ka1,1.54059292,4.5e-07
        Cu,Ka2,1.54442740,5.0e-07
        Cu,Kb,1.39223400,6.0e-06
        Mo,Ka1,0.70931713,4.1e-07
        Mo,Ka2,0.71360700,1.2e-06
        Mo,Kb,0.63228700,3.0e-06
        Ag,Ka1,0.55942178,7.6e-07
        Ag,Ka2,0.56381310,2.6e-06
        """;
}
