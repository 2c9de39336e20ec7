namespace Holdfast;

/// <summary>Constants of nature and of convention, each written once. Those without another source are exact in the SI since 2019 (CODATA 2018).</summary>
public static class Constants
{
    /// <summary>Molar gas constant, J/(mol K), written to ten digits.</summary>
    public const double MolarGas = 8.314462618;

    /// <summary>Particles in a mole, 1/mol.</summary>
    public const double Avogadro = 6.02214076e23;

    /// <summary>Planck's constant times the speed of light, eV nm, written to ten digits.</summary>
    public const double PlanckTimesLightSpeed = 1239.841984;

    /// <summary>Temperature to which tables of constants refer, 25 °C, K; a convention.</summary>
    public const double TableTemperature = 298.15;
}
