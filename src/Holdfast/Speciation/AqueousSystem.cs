using System.Globalization;
using Holdfast.Statistics;
using static Holdfast.Speciation.CarbonateConstants;

namespace Holdfast.Speciation;

/// <summary>
/// Metals, ligands and carbonate in one water, 25 °C. pH is −lg activity; constants hold at zero ionic strength and are corrected by <see cref="Davies"/>.
/// </summary>
public sealed record AqueousSystem
{
    private const int MostPasses = 100;
    private const string CarbonateName = "CO3";

    /// <summary>Metal ions with their totals; may be empty.</summary>
    public IReadOnlyList<MetalTotal> Metals { get; init; } = [];

    /// <summary>Ligands with their totals.</summary>
    public IReadOnlyList<Ligand> Ligands { get; init; } = [];

    /// <summary>Complexes beyond those of the tables: of ligands with metals and protons.</summary>
    public IReadOnlyList<LigandComplex> Complexes { get; init; } = [];

    /// <summary>Solids that may form; none unless named.</summary>
    public IReadOnlyList<Solid> Solids { get; init; } = [];

    /// <summary>Where carbonate comes from.</summary>
    public CarbonDioxide CarbonDioxide { get; init; } = CarbonDioxide.None;

    /// <summary>Ionic strength of the background, mol/L, 0 to <see cref="Davies.Highest"/>.</summary>
    public double IonicStrength
    {
        get;
        init => field = value is >= 0 and <= Davies.Highest ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"Ionic strength must lie between 0 and {Davies.Highest.ToString(CultureInfo.InvariantCulture)} mol/L.");
    }

    /// <summary>True to add the ions solved for to the background's ionic strength.</summary>
    public bool CountsOwnIons { get; init; }

    /// <summary>The equilibrium at a pH.</summary>
    /// <param name="ph">pH.</param>
    /// <param name="start">lg activities to begin with, one for each component, or null; any give the same result.</param>
    public Equilibrium Solve(double ph, IReadOnlyList<double>? start = null)
    {
        var strength = IonicStrength;
        for (var pass = 0; ; pass++)
        {
            var found = Solve(ph, strength, start);
            if (!CountsOwnIons || pass >= MostPasses)
                return found;
            var own = Math.Min(Davies.Highest, IonicStrength + 0.5 * found.Species.Sum(s => s.Charge * s.Charge * s.Concentration));
            if (Math.Abs(own - strength) <= 1e-12 * own)
                return found;
            strength = own;
        }
    }

    /// <summary>The pH at which the charges balance.</summary>
    /// <param name="strongCharge">Charge of ions that take part in nothing (sodium less nitrate, say), mol/L.</param>
    public double PhOfBalance(double strongCharge = 0) => Root.Of(ph => Solve(ph).Charge + strongCharge, 0, 14);

    private Equilibrium Solve(double ph, double strength, IReadOnlyList<double>? start)
    {
        string[] names = [.. Metals.Select(m => m.Ion.Name), .. Ligands.Select(l => l.Name), .. CarbonDioxide.Total is null ? [] : new[] { CarbonateName }];
        double[] totals = [.. Metals.Select(m => m.Total), .. Ligands.Select(l => l.Total), .. CarbonDioxide.Total is { } carbonates ? new[] { carbonates } : []];
        int[] charges = [.. Metals.Select(m => m.Ion.Charge), .. Ligands.Select(l => l.Charge), .. CarbonDioxide.Total is null ? [] : new[] { -2 }];
        var fixedCarbonate = CarbonDioxide.LgPressure is { } p ? LgCarbonate(p, ph) : (double?)null;
        Reaction[] reactions = [.. Reactions(names)];
        var parts = new double[reactions.Length * names.Length];
        var lnFactors = new double[reactions.Length];
        var ofSpecies = new int[reactions.Length];
        for (var i = 0; i < reactions.Length; i++)
        {
            var (_, counts, hydroxides, airCarbonates, lg) = reactions[i];
            ofSpecies[i] = -hydroxides - 2 * airCarbonates;
            foreach (var (j, count) in counts)
            {
                parts[i * names.Length + j] += count;
                ofSpecies[i] += count * charges[j];
            }

            lnFactors[i] = Math.Log(10) * (lg + hydroxides * ph + airCarbonates * (fixedCarbonate ?? 0) - Davies.LgGamma(ofSpecies[i], strength));
        }

        var balances = new MassAction(parts, lnFactors, totals);
        double[] x = start is null ? [.. totals.Select(t => Math.Log(t))] : [.. start.Select(s => s * Math.Log(10))];
        Solid[] solids = [.. Solids.Where(s => names.Contains(s.Metal) && (s.Carbonates == 0 || fixedCarbonate is not null || CarbonDioxide.Total is not null))];
        double[] amounts = [];
        if (names.Length > 0)
        {
            var units = new double[solids.Length * names.Length];
            for (var s = 0; s < solids.Length; s++)
            {
                units[s * names.Length + Array.IndexOf(names, solids[s].Metal)] = solids[s].Metals;
                if (CarbonDioxide.Total is not null)
                    units[s * names.Length + names.Length - 1] = solids[s].Carbonates;
            }

            amounts = Precipitating.Solve(
                balances, x, totals, units, [.. solids.Select(s => Math.Log(10) * (s.LgKs - s.Protons * ph - s.Carbonates * (fixedCarbonate ?? 0)))]);
        }

        SpeciesAmount[] species =
        [
            .. reactions.Select((r, i) => new SpeciesAmount(r.Formula, ofSpecies[i], balances.Concentrations[i])),
            .. Ions(ph, strength, fixedCarbonate),
        ];
        var open = 0.0;
        for (var j = 0; j < names.Length; j++)
        {
            var held = balances.Dissolved[j];
            for (var k = 0; k < solids.Length; k++)
                held += amounts[k] * (solids[k].Metal == names[j] ? solids[k].Metals : names[j] == CarbonateName ? solids[k].Carbonates : 0);
            open = Math.Max(open, Math.Abs(held - totals[j]) / totals[j]);
        }

        return new(
            ph, strength, names, [.. x.Select(v => v / Math.Log(10))], [.. balances.Dissolved], species,
            [.. solids.Select((s, k) => new Precipitate(s, amounts[k])).Where(q => q.Amount > 0)],
            species.Sum(s => s.Charge * s.Concentration), open, balances.Steps);
    }

    private IEnumerable<Reaction> Reactions(string[] names)
    {
        for (var j = 0; j < names.Length; j++)
            yield return new(names[j], [(j, 1)], 0, 0, 0);
        var closed = CarbonDioxide.Total is not null;
        var carbonate = names.Length - 1;
        if (closed)
        {
            yield return new("HCO3", [(carbonate, 1)], -1, 0, PK2);
            yield return new("H2CO3", [(carbonate, 1)], -2, 0, PK1 + PK2);
        }

        for (var j = 0; j < Metals.Count; j++)
        {
            var ion = Metals[j].Ion;
            foreach (var h in ion.Hydrolysis)
                yield return new(h.Formula(ion.Symbol), [(j, h.Metals)], h.Hydroxides, 0, h.LgBeta);
            if (closed || CarbonDioxide.LgPressure is not null)
            {
                foreach (var c in ion.CarbonateComplexes)
                {
                    yield return closed
                        ? new(c.Formula(ion.Symbol), [(j, 1), (carbonate, c.Carbonates)], 0, 0, c.LgBeta)
                        : new(c.Formula(ion.Symbol), [(j, 1)], 0, c.Carbonates, c.LgBeta);
                }
            }
        }

        foreach (var c in Complexes)
        {
            yield return new(
                c.Formula,
                [.. c.Parts.Select(part => (Array.IndexOf(names, part.Key) is var at and >= 0 ? at
                    : throw new InvalidOperationException($"{c.Formula} holds {part.Key}, which is no component here."), part.Value))],
                c.Hydroxides, 0, c.LgBeta);
        }
    }

    private static IEnumerable<SpeciesAmount> Ions(double ph, double strength, double? fixedCarbonate)
    {
        yield return new("H", 1, Math.Pow(10, -ph - Davies.LgGamma(1, strength)));
        yield return new("OH", -1, Math.Pow(10, ph - PKw - Davies.LgGamma(1, strength)));
        if (fixedCarbonate is not { } carbonate)
            yield break;
        yield return new("CO3", -2, Math.Pow(10, carbonate - Davies.LgGamma(2, strength)));
        yield return new("HCO3", -1, Math.Pow(10, carbonate + PK2 - ph - Davies.LgGamma(1, strength)));
    }

    private sealed record Reaction(string Formula, (int Component, int Count)[] Counts, int Hydroxides, int AirCarbonates, double Lg);
}
