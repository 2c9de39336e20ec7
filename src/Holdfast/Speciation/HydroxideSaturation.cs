namespace Holdfast.Speciation;

/// <summary>
/// Whether a metal hydroxide can form: the saturation index, lg of the ion product over the solubility product, at 25 °C without complexes
/// and at unit activity. Fair below pH 8; above it hydroxo complexes hold metal in solution that this does not see.
/// </summary>
public static class HydroxideSaturation
{
    /// <summary>Ion product of water as −lg, 25 °C.</summary>
    public const double PKw = 14;

    /// <summary>Uncertainty of an index where nothing better is known: solubility products differ by this between fresh and aged solids (common practice).</summary>
    public const double DefaultUncertainty = 0.5;

    /// <summary>Saturation index of M(OH)z: lg [M] + z (pH − 14) − lg Ks. Above 0 the solid can form.</summary>
    /// <param name="concentration">Dissolved metal, mol/L, above 0.</param>
    /// <param name="charge">Charge z of the ion, 1 to 4.</param>
    /// <param name="ph">pH.</param>
    /// <param name="solubilityProduct">Ks in (mol/L) to the power z + 1, above 0.</param>
    public static double Index(double concentration, int charge, double ph, double solubilityProduct)
    {
        Check(concentration, charge, solubilityProduct);
        return Math.Log10(concentration) + charge * (ph - PKw) - Math.Log10(solubilityProduct);
    }

    /// <summary>pH at which the index is 0.</summary>
    /// <param name="concentration">Dissolved metal, mol/L, above 0.</param>
    /// <param name="charge">Charge z of the ion, 1 to 4.</param>
    /// <param name="solubilityProduct">Ks in (mol/L) to the power z + 1, above 0.</param>
    public static double Onset(double concentration, int charge, double solubilityProduct)
    {
        Check(concentration, charge, solubilityProduct);
        return PKw + (Math.Log10(solubilityProduct) - Math.Log10(concentration)) / charge;
    }

    private static void Check(double concentration, int charge, double solubilityProduct)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(concentration);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(solubilityProduct);
        ArgumentOutOfRangeException.ThrowIfLessThan(charge, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(charge, 4);
    }
}
