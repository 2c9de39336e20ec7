using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>A chemical element with its standard atomic weight.</summary>
/// <remarks>
/// CIAAW, standard atomic weights 2024 (abridged to five digits): T. Prohaska et al., Pure Appl. Chem. 94 (2022) 573–600, with the changes of
/// zirconium, gadolinium and lutetium of 2024. The half-width covers normal materials; it is read as a rectangular distribution.
/// </remarks>
/// <param name="Number">Atomic number.</param>
/// <param name="Symbol">Symbol: "Ni".</param>
/// <param name="Name">English name.</param>
/// <param name="Published">Standard atomic weight as published, value or interval; empty where there is none.</param>
/// <param name="AtomicWeight">Abridged standard atomic weight, g/mol; null for an element without one, such as technetium.</param>
/// <param name="HalfWidth">Half-width of the abridged value, g/mol; null without a weight.</param>
public sealed record Element(int Number, string Symbol, string Name, string Published, double? AtomicWeight, double? HalfWidth)
{
    private static readonly Dictionary<string, Element> BySymbol = Read();

    /// <summary>All elements, by atomic number.</summary>
    public static IReadOnlyList<Element> All { get; } = [.. BySymbol.Values.OrderBy(e => e.Number)];

    /// <summary>The element with a symbol, or null when there is none; case counts.</summary>
    /// <param name="symbol">"Ni".</param>
    public static Element? Find(string symbol) => BySymbol.GetValueOrDefault(symbol);

    /// <summary>The atomic weight with its uncertainty, one source that every formula with this element shares; null without a weight. g/mol.</summary>
    public Measured? Weight
        => AtomicWeight is { } weight && HalfWidth is { } half
            ? Measured.From(weight, TypeB.Tolerance($"atomic-weight:{Symbol}", $"atomic weight of {Name}", half, unit: "g/mol"))
            : null;

    private static Dictionary<string, Element> Read()
        => TradeTable.Read(AtomicWeights.Table)
            .Select(r => new Element((int)r.Number("z")!.Value, r["symbol"], r["name"], r["published"], r.Number("abridged"), r.Number("half_width")))
            .ToDictionary(e => e.Symbol, StringComparer.Ordinal);
}
