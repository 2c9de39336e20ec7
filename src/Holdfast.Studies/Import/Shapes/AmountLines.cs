using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Notes with one line a vessel and each amount behind its unit: "vial 1: 5.1 mg -> 15.96 ppm left". Turned into one row a vessel.</summary>
internal static partial class AmountLines
{
    private const int FewestLines = 3, FewestAmounts = 2, MostRows = 500, LongestLabel = 30, MostNames = 3;
    private static readonly ImmutableArray<UnitKind> Kinds = [UnitKind.Mass, UnitKind.Volume, UnitKind.Concentration, UnitKind.Time, UnitKind.Temperature, UnitKind.Share];

    /// <summary>The grid with a heading over such lines, or null where they are none.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Turn(Grid grid)
    {
        if (grid.Rows.Length > MostRows || grid.Sheet is not null)
            return null;
        var lines = grid.Rows.Select(r => r.IsBlank ? null : Line.Of(r, Prose.Line(r, grid.Separator))).ToList();
        var alike = lines.OfType<Line>().Where(l => l.Amounts.Count >= FewestAmounts).GroupBy(l => string.Join('|', l.Amounts.Select(a => a.Kind))).MaxBy(g => g.Count())?.ToList();
        if (alike is not { Count: >= FewestLines } || alike.Select(l => l.Code).Distinct(StringComparer.OrdinalIgnoreCase).Count() < alike.Count)
            return null;
        var (first, last) = (lines.IndexOf(alike[0]), lines.IndexOf(alike[^1]));
        // Units stand in the cells of tables too: there a heading stands over them.
        if (grid.Rows.Take(first).Any(r => !r.Cells.Any(c => TableLayout.IsNumberLike(c) || HoldsAmount(c.Text)) && (StandsOverAll(r, alike) || (r.Filled > alike[0].Amounts.Count && TableLayout.KnownHeadings(r) * 2 >= r.Filled))))
            return null;
        // A control or a blank below the others may lack an amount.
        while (last + 1 < lines.Count && lines[last + 1] is { } next && next.Amounts.TrueForAll(a => alike[0].Amounts.Exists(b => b.Kind == a.Kind)))
            last++;
        var model = alike[0].Amounts;
        var units = model.Select((a, i) => alike.TrueForAll(l => l.Amounts[i].Unit == a.Unit) ? a.Unit : null).ToList();
        var names = model.Select((_, i) => Heading(alike.ConvertAll(l => l.Amounts[i]))).ToList();
        // Two concentrations without a word say not which is which, be they in one unit or in two.
        if (names.Distinct(StringComparer.OrdinalIgnoreCase).Count() < names.Count)
            return null;
        var heading = new GridRow(grid.Rows[first].Number, [new Cell("Sample"), .. names.Select((n, i) => new Cell(units[i] is { } unit ? $"{n} ({unit})" : n)), new Cell("Remark")]);
        var body = Enumerable.Range(first, last - first + 1).Where(i => lines[i] is not null).Select(i => Row(lines[i]!, model, units)).ToList();
        GridRow Whole(int i) => grid.Rows[i] with { Cells = grid.Rows[i].IsBlank ? [] : [new Cell(Prose.Line(grid.Rows[i], grid.Separator))] };
        return grid with { Rows = [.. Enumerable.Range(0, first).Select(Whole), heading, .. body, .. Enumerable.Range(first, lines.Count - first).Where(i => i > last || lines[i] is null).Select(Whole)] };
    }

    private static GridRow Row(Line line, List<Amount> model, List<string?> units)
    {
        var places = new Cell[model.Count];
        foreach (var amount in line.Amounts)
        {
            var place = Enumerable.Range(0, model.Count).FirstOrDefault(i => places[i].IsBlank && model[i].Kind == amount.Kind, -1);
            if (place >= 0)
                places[place] = new Cell(units[place] == amount.Unit ? amount.Number : $"{amount.Number} {amount.Unit}");
        }

        return line.Row with { Cells = [new Cell(line.Code), .. places, new Cell(line.Remark)] };
    }

    // Words over the cell of every amount, whatever words they are; the corner over the codes may be empty.
    private static bool StandsOverAll(GridRow row, List<Line> alike)
        => alike.TrueForAll(l => Enumerable.Range(0, l.Row.Cells.Length).Where(i => TableLayout.IsNumberLike(l.Row.At(i))).ToList() is var places && places.Count == l.Amounts.Count && places.TrueForAll(i => row.At(i).Text.Any(char.IsLetter)));

    private static string Heading(List<Amount> column)
        => column.Select(a => a.Name).Where(n => n.Length > 0).GroupBy(n => n, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() * 2 > column.Count).Select(g => g.Key).FirstOrDefault()
            ?? column[0].Kind switch { UnitKind.Mass => "mass", UnitKind.Volume => "volume", UnitKind.Time => "time", UnitKind.Temperature => "temperature", UnitKind.Share => "removal", _ => "conc" };

    /// <summary>True where a number with a unit stands in a text: "on the shaker for 24 h".</summary>
    /// <param name="text">The text.</param>
    public static bool HoldsAmount(string text) => AmountIn().Matches(text).Any(Line.IsAmount);

    /// <summary>The amounts of a text: each as written, its number and its unit.</summary>
    /// <param name="text">The text.</param>
    public static IEnumerable<(string Written, double Value, UnitText Unit)> AmountsIn(string text)
        => AmountIn().Matches(text).Where(Line.IsAmount).Select(m => (m.Value, Number: CellText.Read(m.Groups["number"].Value, m.Groups["number"].Value.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point) as CellText.Number, HeadingReading.UnitOf(m.Groups["unit"].Value)))
            .Where(a => a.Number is not null).Select(a => (a.Value, a.Number!.Value, a.Item3));

    private sealed record Amount(string Number, string Unit, UnitKind Kind, string Name);

    private sealed record Line(GridRow Row, string Code, List<Amount> Amounts, string? Remark)
    {
        public static Line? Of(GridRow row, string text)
        {
            var remark = Bracket().Match(text) is { Success: true } b ? b.Groups["words"].Value : null;
            var plain = remark is null ? text : Bracket().Replace(text, "");
            var found = AmountIn().Matches(plain).Where(IsAmount).Concat(WithoutUnit().Matches(plain)).OrderBy(m => m.Index).ToList();
            // "A = 0,2216 C": the number of one amount is not that of the next as well.
            found = [.. found.Where((m, i) => i == 0 || m.Index >= found[i - 1].Index + found[i - 1].Length)];
            if (found.Count == 0)
                return null;
            var label = plain[..found[0].Index];
            var colon = label.IndexOf(':', StringComparison.Ordinal);
            var code = Bare(colon > 0 ? label[..colon] : label);
            if (code.Length is 0 or > LongestLabel || !code.Any(char.IsLetterOrDigit) || code.Split(' ').Length > MostNames + 1)
                return null;
            var amounts = found.Select((m, i) =>
            {
                var before = i == 0 ? colon > 0 ? label[(colon + 1)..] : "" : plain[(found[i - 1].Index + found[i - 1].Length)..m.Index];
                var after = i + 1 < found.Count ? "" : plain[(m.Index + m.Length)..];
                var name = m.Groups["what"].Success ? m.Groups["what"].Value : Bare($"{Bare(before)} {Bare(after)}");
                return new Amount(m.Groups["number"].Value, m.Groups["unit"].Value, UnitKinds.Of(HeadingReading.UnitOf(m.Groups["unit"].Value)), name.Split(' ').Length <= MostNames ? name : "");
            }).ToList();
            return new Line(row, code, amounts, remark);
        }

        public static bool IsAmount(Match m) => HeadingReading.UnitOf(m.Groups["unit"].Value) is (UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous) and var unit && Kinds.Contains(UnitKinds.Of(unit));

        private static string Bare(string text) => text.Trim(' ', ':', '=', '-', '–', '—', '>', '→', ',', ';', '.', '|');
    }

    [GeneratedRegex(@"(?<number>\d+([.,]\d+)?)\s*(?<unit>[A-Za-zµμ%°][A-Za-zµμ%°/]*)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AmountIn();

    // "Abs 0.213", "pH 5.1": what has no unit needs its name.
    [GeneratedRegex(@"\b(?<what>[Aa]bs(orbance|orbanz)?|[Ee]xt(inktion)?|pH|A|E)\s*[:=]?\s*(?<number>\d+([.,]\d+)?)(?<unit>)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex WithoutUnit();

    [GeneratedRegex(@"\s*\((?<words>[^()\d]{3,})\)\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Bracket();
}
