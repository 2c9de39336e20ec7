using Holdfast.Composition;

namespace Holdfast.Speciation;

/// <summary>A metal ion with what it forms in water.</summary>
/// <param name="Name">Its name, with the oxidation state where there are several: "Ni", "Fe(III)".</param>
/// <param name="Symbol">Symbol of the element.</param>
/// <param name="Charge">Charge of the free ion.</param>
/// <param name="Hydrolysis">Hydroxo complexes, the preferred set.</param>
/// <param name="SecondOpinion">Hydroxo complexes of an older compilation, for comparison; may be empty.</param>
/// <param name="CarbonateComplexes">Complexes with carbonate; empty when none is known here.</param>
/// <param name="Solids">Solids it can form.</param>
public sealed record MetalIon(
    string Name, string Symbol, int Charge, IReadOnlyList<HydrolysisConstant> Hydrolysis, IReadOnlyList<HydrolysisConstant> SecondOpinion,
    IReadOnlyList<CarbonateComplex> CarbonateComplexes, IReadOnlyList<Solid> Solids)
{
    /// <summary>Every ion of the tables.</summary>
    public static IReadOnlyList<MetalIon> All { get; } = Read();

    /// <summary>Atomic weight, g/mol.</summary>
    public double MolarMass => Element.Find(Symbol)!.AtomicWeight!.Value;

    /// <summary>True for ions that chloride holds in solution so firmly that indices without it mean nothing.</summary>
    public bool NeedsChloride => Symbol is "Hg" or "Ag";

    /// <summary>The ion of this name, or null.</summary>
    /// <param name="name">"Ni", "Fe(III)".</param>
    public static MetalIon? Named(string name) => All.FirstOrDefault(i => string.Equals(i.Name, name, StringComparison.Ordinal));

    /// <summary>The ions of an element: several where its oxidation state is not said, none where nothing is known here.</summary>
    /// <param name="symbol">Symbol of the element, or an ion's own name.</param>
    public static IReadOnlyList<MetalIon> Of(string symbol)
        => Named(symbol) is { } one ? [one] : [.. All.Where(i => string.Equals(i.Symbol, symbol, StringComparison.Ordinal))];

    private static MetalIon[] Read()
    {
        var complexes = TradeTable.Read(CarbonateConstants.Complexes).ToLookup(
            r => r["metal"],
            r => new CarbonateComplex((int)r.Number("carbonates")!.Value, r.Number("lg_beta")!.Value, r.Number("u")!.Value, r["source"], r["status"]));
        return
        [
            .. TradeTable.Read(HydrolysisTable.Table).GroupBy(r => r["metal"], StringComparer.Ordinal).Select(g =>
            {
                var constants = g.Select(r => new HydrolysisConstant(
                    (int)r.Number("p")!.Value, (int)r.Number("q")!.Value, r.Number("lg_star_beta")!.Value, r.Number("u")!.Value,
                    r["source"], r["status"], r["preferred"] == "yes")).ToArray();
                return new MetalIon(
                    g.Key, g.Key.Split('(')[0], (int)g.First().Number("charge")!.Value,
                    [.. constants.Where(c => c.Preferred)], [.. constants.Where(c => !c.Preferred)],
                    [.. complexes[g.Key]], [.. Solid.All.Where(s => s.Metal == g.Key)]);
            }),
        ];
    }
}
