namespace Holdfast.Speciation;

/// <summary>
/// A solubility product that an author states, held against the constants here. Printed products of one hydroxide disagree by orders; more than half a unit
/// of lg away from every solid here, the source and the solid are asked for.
/// </summary>
/// <param name="LgProduct">lg of the stated product, [M][OH]^n.</param>
/// <param name="Nearest">The hydroxide or oxide whose product is nearest.</param>
/// <param name="Apart">Stated less nearest, in lg.</param>
public sealed record StatedProduct(double LgProduct, Solid Nearest, double Apart)
{
    /// <summary>Distance in lg above which the source is asked for; common practice.</summary>
    public const double Tolerated = 0.5;

    /// <summary>True when it is as near as sources usually are.</summary>
    public bool Agrees => Math.Abs(Apart) <= Tolerated;

    /// <summary>Compares a stated product; null when no oxide or hydroxide of the ion with this charge is known here.</summary>
    /// <param name="ion">The ion.</param>
    /// <param name="product">Product [M][OH]^n in (mol/L)^(n + 1), above 0.</param>
    public static StatedProduct? Of(MetalIon ion, double product)
    {
        ArgumentNullException.ThrowIfNull(ion);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(product);
        var lg = Math.Log10(product);
        return ion.Solids.Where(s => s.Carbonates == 0).MinBy(s => Math.Abs(s.LgProduct - lg)) is { } nearest
            ? new(lg, nearest, lg - nearest.LgProduct)
            : null;
    }
}
