namespace Holdfast.Thermodynamics;

/// <summary>The molar gas constant.</summary>
public static class MolarGas
{
    /// <summary>R, J/(mol K); exact in the SI since 2019 (CODATA 2018), written to ten digits.</summary>
    public const double Constant = 8.314462618;
}
