using Holdfast.Speciation;
using Holdfast.Statistics;

namespace Holdfast.Tests.Speciation;

/// <summary>Waters drawn at random over all that the tables offer: the same ones each time.</summary>
internal sealed class RandomWaters(ulong seed)
{
    private readonly SeededStream chance = new(seed, "random waters");

    /// <summary>The next water with its pH and a start that is far from anything.</summary>
    public (AqueousSystem Water, double Ph, double[] Start) Next()
    {
        var metals = Enumerable.Range(0, 1 + Draw(4)).Select(_ => MetalIon.All[Draw(MetalIon.All.Count)]).DistinctBy(i => i.Name).Select(i => new MetalTotal(i, Total())).ToArray();
        Ligand[] ligands = [.. Enumerable.Range(0, Draw(3)).Select(k => new Ligand($"L{k}", -1 - Draw(3), Total()))];
        var carbonate = Draw(3) switch { 0 => CarbonDioxide.None, 1 => CarbonDioxide.Air, _ => CarbonDioxide.Closed(Total()) };
        var water = new AqueousSystem
        {
            Metals = metals,
            Ligands = ligands,
            Complexes = [.. ligands.SelectMany(l => Complexes(l, metals))],
            CarbonDioxide = carbonate,
            IonicStrength = Davies.Highest * chance.Uniform(),
            Solids = Draw(2) == 0 ? [] : [.. metals.SelectMany(m => m.Ion.Solids)],
        };
        var components = metals.Length + ligands.Length + (carbonate.Total is null ? 0 : 1);
        return (water, 14 * chance.Uniform(), [.. Enumerable.Range(0, components).Select(_ => -40 + 45 * chance.Uniform())]);
    }

    private IEnumerable<LigandComplex> Complexes(Ligand ligand, MetalTotal[] metals)
    {
        yield return new("H" + ligand.Name, new Dictionary<string, int> { [ligand.Name] = 1 }, -1, 12 * chance.Uniform());
        foreach (var metal in metals)
        {
            for (var n = 1; n <= 1 + Draw(3); n++)
                yield return new($"{metal.Ion.Name}{ligand.Name}{n}", new Dictionary<string, int> { [metal.Ion.Name] = 1, [ligand.Name] = n }, 0, 12 * n * chance.Uniform());
        }
    }

    private double Total() => Math.Pow(10, -8 + 6 * chance.Uniform());

    private int Draw(int below) => (int)(below * chance.Uniform());
}
