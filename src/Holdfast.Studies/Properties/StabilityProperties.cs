using System.Collections.Immutable;

namespace Holdfast.Studies.Properties;

/// <summary>What the sorbent itself gives to the liquid.</summary>
public static class StabilityProperties
{
    /// <summary>Calcium found in the liquid.</summary>
    public static readonly Property DissolvedCalcium = Property.Number("dissolved-calcium", "dissolved calcium", "mg/L", null, "dissolvedca", "dissolvedcalcium", "ca", "careleased", "releasedca");

    /// <summary>Loss of the powder's dry mass.</summary>
    public static readonly Property MassLoss = Property.Number("mass-loss", "loss of the powder's mass", "%", null, "massloss", "lossofmass", "weightloss");

    private static readonly (string Symbol, string Name)[] Others =
    [
        ("Al", "aluminium"), ("Ce", "cerium"), ("Cr", "chromium"), ("Cu", "copper"), ("Dy", "dysprosium"), ("Er", "erbium"), ("Eu", "europium"), ("Fe", "iron"),
        ("Gd", "gadolinium"), ("La", "lanthanum"), ("Mg", "magnesium"), ("Mn", "manganese"), ("Nd", "neodymium"), ("P", "phosphorus"), ("Si", "silicon"),
        ("Sm", "samarium"), ("Sr", "strontium"), ("Tb", "terbium"), ("Ti", "titanium"), ("Y", "yttrium"), ("Yb", "ytterbium"), ("Zn", "zinc"), ("Zr", "zirconium"),
    ];

    /// <summary>Other constituents of porous powders and of what they are doped with, found in the liquid: one property an element.</summary>
    public static readonly ImmutableArray<Property> OtherDissolved = [.. Others.Select(e => Of(e.Symbol.ToLowerInvariant(), e.Name))];

    /// <summary>Every constituent that can be recorded: symbol of the element, its name, its property.</summary>
    public static ImmutableArray<(string Symbol, string Name, Property Property)> Dissolved { get; }
        = [("Ca", "calcium", DissolvedCalcium), .. Others.Zip(OtherDissolved, (e, p) => (e.Symbol, e.Name, p))];

    private static Property Of(string symbol, string name)
        => Property.Number("dissolved-" + name, "dissolved " + name, "mg/L", null, "dissolved" + symbol, "dissolved" + name, symbol + "released", "released" + symbol) with { OfAnother = true };
}
