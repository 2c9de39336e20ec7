using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Composition;

namespace Holdfast.Solutions;

/// <summary>A preparation: which reagent runs out first, how much product that makes at most, and what share of it was found.</summary>
/// <param name="Reagents">The reagents, as given.</param>
/// <param name="Product">The product's formula, as far as it is known.</param>
/// <param name="Limiting">The reagent that runs out first.</param>
/// <param name="IsStoichiometric">True when another reagent comes within 2 % of it: then none limits within the weighing.</param>
/// <param name="TheoreticalYield">Most product it can make, g.</param>
public sealed record Recipe(IReadOnlyList<Reagent> Reagents, Formula Product, Reagent Limiting, bool IsStoichiometric, Measured TheoreticalYield)
{
    /// <summary>Extents closer than this are taken for equal; share.</summary>
    public const double SameExtent = 0.02;

    /// <summary>Works out a recipe.</summary>
    /// <param name="product">The product.</param>
    /// <param name="reagents">The reagents that end up in it.</param>
    /// <exception cref="ArgumentException">No reagent is given, or one has no mass or stoichiometric number.</exception>
    public static Recipe Of(Formula product, params IReadOnlyList<Reagent> reagents)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(reagents);
        if (reagents.Count == 0 || reagents.Any(r => !(r.Mass.Value > 0 && r.PerProduct > 0 && r.Purity > 0)))
            throw new ArgumentException("A recipe needs reagents, each with a mass, a purity and a stoichiometric number above 0.", nameof(reagents));
        var limiting = reagents.MinBy(r => r.Extent.Value)!;
        var others = reagents.Where(r => !ReferenceEquals(r, limiting));
        return new(
            reagents, product, limiting,
            others.Any(r => r.Extent.Value / limiting.Extent.Value - 1 <= SameExtent),
            limiting.Extent * product.Mass);
    }

    /// <summary>The masses that give so much product: n = m/(M·yield) formula units, each reagent for the element that it brings, over its purity, with its excess.</summary>
    /// <param name="product">The product.</param>
    /// <param name="wanted">Mass of product wanted, dry and pure, g, above 0.</param>
    /// <param name="yield">Share of the theoretical yield that is expected, above 0 to 1; no unit.</param>
    /// <param name="supplies">The reagents, at least one, each with an element that the product and it hold.</param>
    /// <exception cref="ArgumentException">A reagent or the product lacks the element, or a share is out of its range.</exception>
    public static Recipe For(Formula product, double wanted, double yield, params IReadOnlyList<Supply> supplies)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(supplies);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wanted);
        if (!(yield is > 0 and <= 1))
            throw new ArgumentException("A yield lies above 0 and at most at 1.", nameof(yield));
        var amount = wanted / product.MolarMass / yield;
        return Of(product, [.. supplies.Select(s =>
        {
            if (!(product.Count(s.Element) > 0 && s.Formula.Count(s.Element) > 0 && s.Purity is > 0 and <= 1 && s.Excess >= 0))
                throw new ArgumentException($"{s.Formula.Text} cannot bring {s.Element} of {product.Text}.", nameof(supplies));
            var per = product.Count(s.Element) / s.Formula.Count(s.Element);
            return new Reagent(s.Formula.Text, s.Formula, amount * per * (1 + s.Excess) * s.Formula.MolarMass / s.Purity, per, s.Purity);
        })]);
    }

    /// <summary>How much of a reagent is left over, as a share of what is used; no unit.</summary>
    /// <param name="reagent">One of the reagents.</param>
    public double Excess(Reagent reagent)
    {
        ArgumentNullException.ThrowIfNull(reagent);
        return reagent.Extent.Value / Limiting.Extent.Value - 1;
    }

    /// <summary>Yield in percent of the theoretical one, with a finding when it cannot be one.</summary>
    /// <param name="found">Mass of product found, dry and pure, g.</param>
    public (Measured Percent, IReadOnlyList<Finding> Findings) Yield(Measured found)
    {
        var percent = 100 * found / TheoreticalYield;
        return percent.Value - 100 > 2 * percent.U
            ? (percent, [Finding.Of("HF-496", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"The product weighs {percent.Value:0.0} % of what the reagents can give: it is wet or holds salt. This is not a yield."))])
            : (percent, []);
    }

    /// <summary>Yield of one element, percent of what was put in: it needs no formula of the product.</summary>
    /// <param name="symbol">Symbol of the element.</param>
    /// <param name="found">Mass of the element found in the product, g.</param>
    /// <exception cref="ArgumentException">No reagent holds the element.</exception>
    public Measured ElementYield(string symbol, Measured found)
    {
        Measured put = 0;
        foreach (var reagent in Reagents)
            put += reagent.Mass * reagent.Purity * reagent.Formula.MassFraction(symbol);
        return put.Value > 0 ? 100 * found / put : throw new ArgumentException($"No reagent holds {symbol}.", nameof(symbol));
    }

    /// <summary>Masses of all reagents for another batch size; rates of addition, times, heating and filling do not scale like this. g.</summary>
    /// <param name="factor">New size over old size, above 0.</param>
    public IReadOnlyList<Reagent> ScaledBy(double factor)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);
        return [.. Reagents.Select(r => r with { Mass = r.Mass.Value * factor })];
    }
}

/// <summary>A reagent for the element that it brings into a product.</summary>
/// <param name="Formula">Its formula, hydrate water included.</param>
/// <param name="Element">Symbol of the element.</param>
/// <param name="Purity">Mass fraction of the pure reagent; no unit.</param>
/// <param name="Excess">Share taken beyond what the product holds; no unit.</param>
public sealed record Supply(Formula Formula, string Element, double Purity = 1, double Excess = 0);
