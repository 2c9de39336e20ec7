namespace Holdfast.Speciation;

/// <summary>Activity coefficients of ions after C. W. Davies, 25 °C: lg γ = −A z² (√I/(1 + √I) − 0.3 I). Usable to 0.5 mol/L.</summary>
/// <remarks>C. W. Davies, Ion Association (1962), with the factor 0.3 in common use; both numbers from memory.</remarks>
public static class Davies
{
    /// <summary>A at 25 °C, (L/mol)^½.</summary>
    public const double A = 0.509;

    /// <summary>Highest ionic strength that the formula is used at, mol/L.</summary>
    public const double Highest = 0.5;

    /// <summary>lg of the activity coefficient.</summary>
    /// <param name="charge">Charge of the ion.</param>
    /// <param name="ionicStrength">Ionic strength, mol/L, from 0.</param>
    public static double LgGamma(int charge, double ionicStrength)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ionicStrength);
        var root = Math.Sqrt(ionicStrength);
        return -A * charge * charge * (root / (1 + root) - 0.3 * ionicStrength);
    }
}
