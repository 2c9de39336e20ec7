using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>One column of percentages against what the powder can be: the kind that its heading says may be the other one.</summary>
/// <param name="Why">What contradicts the heading, in words.</param>
internal sealed record LabelAgainstFormula(string Why)
{
    // Work without standards is off by a few percent of atoms, oxygen by more; a formula read as the other kind is off by far more than that.
    private const double Gross = 6, TimesBetter = 3;

    // No oxide but OsO4 has four atoms of oxygen to one other, and none has less than one to two.
    private const double MostOxygen = 82, LeastOxygen = 33, UsualOxygen = 75;

    /// <summary>What speaks against the kind that a heading says; null where nothing does.</summary>
    /// <param name="lines">The amounts.</param>
    /// <param name="kind">What they are said to be.</param>
    /// <param name="grid">Where they stand; a line of it may hold the formula.</param>
    public static LabelAgainstFormula? Of(ImmutableArray<ElementLine> lines, string kind, Grid grid)
    {
        var amounts = lines.Where(l => l.Element.AtomicWeight is not null && (l.Mass ?? l.Atomic) is > 0).GroupBy(l => l.Element.Symbol, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Average(l => l.Mass ?? l.Atomic ?? 0), StringComparer.Ordinal);
        if (amounts.Count < 2 || lines.Any(l => l.Species.Oxide is not null))
            return null;
        var (labelled, other) = kind == ElementFiles.Mass ? (Atoms(amounts), Normal(amounts)) : (Normal(amounts), Atoms(amounts));
        return FormulaIn(grid, amounts.Keys) is var (formula, row) ? ByFormula(labelled, other, formula, row) : kind == ElementFiles.Mass ? ByOxygen(labelled, other) : null;
    }

    private static LabelAgainstFormula? ByFormula(Dictionary<string, double> labelled, Dictionary<string, double> other, Formula formula, int row)
    {
        // Only what both have is compared: hydrogen is never seen, carbon may be tape.
        var common = formula.Parts.Select(p => p.Key.Symbol).Where(labelled.ContainsKey).ToList();
        var meant = Normal(common.ToDictionary(s => s, formula.Count, StringComparer.Ordinal));
        var (asLabelled, asOther) = (Normal(common.ToDictionary(s => s, s => labelled[s], StringComparer.Ordinal)), Normal(common.ToDictionary(s => s, s => other[s], StringComparer.Ordinal)));
        var (off, fits) = (common.Max(s => Math.Abs(asLabelled[s] - meant[s])), common.Max(s => Math.Abs(asOther[s] - meant[s])));
        if (off < Gross || fits * TimesBetter > off)
            return null;
        var worst = common.MaxBy(s => Math.Abs(asLabelled[s] - meant[s]) / Math.Max(meant[s], 1))!;
        return new(string.Create(CultureInfo.InvariantCulture,
            $"contradicts the formula {formula.Text} (line {row}) by up to {off:0.0} at% as labelled ({worst} {asLabelled[worst]:0.0} at% instead of {meant[worst]:0.0}), and fits it within {fits:0.0} at% as the other kind"));
    }

    private static LabelAgainstFormula? ByOxygen(Dictionary<string, double> labelled, Dictionary<string, double> other)
        => labelled.GetValueOrDefault("O") is > MostOxygen and var share && other["O"] is >= LeastOxygen and <= UsualOxygen and var usual
            ? new(string.Create(CultureInfo.InvariantCulture, $"would mean {share:0.0} at% oxygen as labelled, more than an oxide holds, and {usual:0.0} at% as the other kind")) : null;

    // The formula that a line states of this powder: it holds every element of the table but what tape, coating and air bring.
    private static (Formula Formula, int Row)? FormulaIn(Grid grid, IEnumerable<string> elements)
    {
        string[] needed = [.. elements.Where(e => e is not ("C" or "O" or "H" or "N" or "Au" or "Pt"))];
        foreach (var row in grid.Rows.Where(r => r.Filled is 1 or 2))
        {
            foreach (var word in row.Cells.SelectMany(c => c.Text.Split([' ', ';', ':', '=', '"', '“', '”', '„'], StringSplitOptions.RemoveEmptyEntries)))
            {
                // "Ca0,95Eu0,05WO4" at the end of a sentence.
                var plain = word.TrimEnd('.', ',').Replace(',', '.');
                if (plain.Length > 2 && Formula.Read(plain).Value is { } formula && formula.Parts.Count > 1 && needed.Length > 0 && Array.TrueForAll(needed, e => formula.Count(e) > 0)
                    && formula.Parts.Count(p => elements.Contains(p.Key.Symbol, StringComparer.Ordinal)) > 1)
                    return (formula, row.Number);
            }
        }

        return null;
    }

    private static Dictionary<string, double> Atoms(Dictionary<string, double> masses)
        => Percentages.ToAtomic([.. masses.Select(m => new KeyValuePair<Element, Measured>(Element.Find(m.Key)!, m.Value))]).ToDictionary(a => a.Key.Symbol, a => a.Value.Value, StringComparer.Ordinal);

    private static Dictionary<string, double> Normal(Dictionary<string, double> amounts)
    {
        var total = amounts.Values.Sum();
        return amounts.ToDictionary(a => a.Key, a => 100 * a.Value / total, StringComparer.Ordinal);
    }
}
