using Holdfast.Amounts;
using Holdfast.Composition;

namespace Holdfast.Solutions;

/// <summary>One reagent of a recipe.</summary>
/// <param name="Name">Name in words.</param>
/// <param name="Formula">Formula, hydrate water included.</param>
/// <param name="Mass">Mass weighed, g.</param>
/// <param name="PerProduct">Formula units that one formula unit of product takes up, above 0.</param>
/// <param name="Purity">Mass fraction of the pure reagent, no unit.</param>
public sealed record Reagent(string Name, Formula Formula, Measured Mass, double PerProduct, double Purity = 1)
{
    /// <summary>Amount, mol.</summary>
    public Measured Amount => Mass * Purity / Formula.Mass;

    /// <summary>Formula units of product it can make, mol.</summary>
    public Measured Extent => Amount / PerProduct;
}
