using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>A grid read as a table of elements: where they stand, which columns are mass, atoms, places, errors.</summary>
internal sealed class ElementTable
{
    /// <summary>Words for a place that was measured.</summary>
    public const string PlaceWords = "field* spot* spectrum spectra spektrum point punkt area site region stelle bild feld digest* aufschluss run replicate rep position champ campo zona zone espectro spectre punto ponto messung measurement analysis grain particle meting locatie widmo pole alan nokta titik area lokasi 区域 点 谱图";

    private const string ElementWords = "element* elem elemento* elemente symbol pierwiastek unsur элемент 元素";
    private const string MassWords = "wt weight mass massen* masse* masa massa gew gewicht* poids peso berat waga agirlik вес масс 质量 重量";
    private const string AtomWords = "at atom* mol mole molar моль ат атом* 原子 摩尔";
    private const string ErrorWords = "error err sigma uncertainty fehler abw* std sd dev* erreur errore incerteza blad hata 误差";
    private const string TotalWords = "total totals sum summe gesamt somme suma soma totale toplam jumlah razem итого 总 总计 合计 总量 σ";
    private const string OtherWords = "intensity counts ratio line series k z net apparent concentration standard label date";

    private readonly Grid grid;
    private readonly ImmutableArray<(int Row, int Column, Element Element)> cells;
    private readonly Layout layout;

    private ElementTable(Grid grid, Layout layout, ImmutableArray<(int Row, int Column, Element Element)> cells) => (this.grid, this.layout, this.cells) = (grid, layout, cells);

    private sealed record Layout(bool ByColumn, int HeadingRow, int ElementColumn, int SpotColumn, int MassColumn, int AtomicColumn, ImmutableArray<(int Column, Element Element)> ElementColumns, string Unit, string? Kind);

    /// <summary>What the only amount is: mass or atomic; null where nothing says so.</summary>
    public string? Kind => layout.Kind;

    /// <summary>True where mass and atomic percent are both there.</summary>
    public bool HasBoth => layout.MassColumn >= 0 && layout.AtomicColumn >= 0;

    /// <summary>Unit of the masses: "%" or "mg/g".</summary>
    public string Unit => layout.Unit;

    /// <summary>Whether nothing else is written like this.</summary>
    public bool IsCertain { get; private init; }

    /// <summary>By what it was recognised.</summary>
    public string Evidence { get; private init; } = "";

    /// <summary>Lines above the table.</summary>
    public ImmutableArray<GridRow> Preamble => [.. grid.Rows[..layout.HeadingRow].Where(r => !r.IsBlank)];

    /// <summary>Line of the heading.</summary>
    public int HeadingLine => grid.Rows[layout.HeadingRow].Number;

    /// <summary>The first line of the table itself.</summary>
    public int FirstRow => HeadingLine + 1;

    /// <summary>Rows with an element.</summary>
    public int RowsUsed => cells.Select(c => c.Row).Distinct().Count();

    /// <summary>Heading of the elements.</summary>
    public string ElementHeading => layout.ByColumn ? "" : Heading(layout.ElementColumn);

    /// <summary>Heading of the places; empty where they stand between the tables.</summary>
    public string SpotHeading => layout.SpotColumn >= 0 ? Heading(layout.SpotColumn) : "";

    /// <summary>Heading of the masses, or of the only amounts.</summary>
    public string MassHeading => layout.ByColumn ? Heading(layout.ElementColumns[0].Column) : Heading(layout.MassColumn);

    /// <summary>Heading of the atomic percentages.</summary>
    public string AtomicHeading => layout.AtomicColumn >= 0 ? Heading(layout.AtomicColumn) : "";

    /// <summary>The table of a grid; null where it is none.</summary>
    /// <param name="grid">The grid.</param>
    public static ElementTable? Of(Grid grid) => ByRow(grid) ?? ByColumn(grid);

    /// <summary>What the amounts say of the decimal mark.</summary>
    public DecimalEvidence Marks()
    {
        int[] columns = layout.ByColumn ? [.. layout.ElementColumns.Select(c => c.Column)] : [.. new[] { layout.MassColumn, layout.AtomicColumn }.Where(c => c >= 0)];
        return DecimalEvidence.Of(new TableLayout(grid, Preamble, grid.Rows[layout.HeadingRow], null, [.. cells.Select(c => c.Row).Distinct().Select(r => grid.Rows[r])]), columns);
    }

    /// <summary>All amounts, place by place.</summary>
    /// <param name="mark">Decimal mark.</param>
    public ImmutableArray<ElementLine> Lines(DecimalMark mark)
    {
        var lines = ImmutableArray.CreateBuilder<ElementLine>();
        if (layout.ByColumn)
        {
            foreach (var (row, column, element) in cells)
            {
                var spot = layout.SpotColumn >= 0 ? grid.Rows[row].At(layout.SpotColumn).Text : "";
                if (MeasuredTable.Number(grid.Rows[row].At(column), mark) is { } amount)
                    lines.Add(new(grid.Rows[row].Number, spot, element, amount, null));
            }

            return Distinct(lines);
        }

        var (place, at, round) = ("", 0, 1);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (row, _, element) in cells)
        {
            // A title between two tables, a cell of a place that is filled once for its table, or an element that comes again, begins the next place.
            var changed = false;
            for (; at <= row; at++)
            {
                if (Title(at) is { } title)
                    (place, changed) = (title, true);
                if (layout.SpotColumn >= 0 && grid.Rows[at].At(layout.SpotColumn).Text is { Length: > 0 } own && at > layout.HeadingRow && !IsTotal(own) && own != place && cells.Any(c => c.Row >= at))
                    (place, changed) = (own, true);
            }

            if (changed)
                seen.Clear();
            if (!seen.Add(element.Symbol))
            {
                round++;
                place = $"place {round.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
                seen.Clear();
                seen.Add(element.Symbol);
            }

            double? mass = layout.MassColumn >= 0 ? MeasuredTable.Number(grid.Rows[row].At(layout.MassColumn), mark) : null;
            double? atomic = layout.AtomicColumn >= 0 ? MeasuredTable.Number(grid.Rows[row].At(layout.AtomicColumn), mark) : null;
            if (mass is not null || atomic is not null)
                lines.Add(new(grid.Rows[row].Number, place, element, mass, atomic));
        }

        return Distinct(lines);
    }

    /// <summary>Its columns for the preview.</summary>
    public ImmutableArray<ColumnUnderstanding> Columns()
    {
        var width = grid.Rows.Max(r => r.Cells.Length);
        return [.. Enumerable.Range(0, width).Select(i => layout.ByColumn && layout.ElementColumns.Any(c => c.Column == i)
                ? One(i, ColumnUse.Measured, layout.ElementColumns.First(c => c.Column == i).Element.Name, layout.Unit, null)
            : i == layout.ElementColumn && !layout.ByColumn ? One(i, ColumnUse.Measured, "element", null, null)
            : i == layout.SpotColumn ? One(i, ColumnUse.Measured, "field, spot or digest", null, null)
            : i == layout.MassColumn ? One(i, ColumnUse.Measured, layout.Kind == ElementFiles.Atomic && !HasBoth ? "atomic percent" : "amount by mass", layout.Unit, null)
            : i == layout.AtomicColumn ? One(i, ColumnUse.Measured, "atomic percent", "%", null)
            : One(i, ColumnUse.LeftOut, null, null, MeasuredTable.Has(Heading(i), ErrorWords) || Heading(i).Contains('±', StringComparison.Ordinal)
                ? "Counting error of the instrument: the scatter between places is used instead." : "It is neither element nor amount."))];
    }

    private ColumnUnderstanding One(int column, ColumnUse use, string? measures, string? unit, string? remark) => new(
        column, Heading(column) is { Length: > 0 } name ? name : "column " + (column + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), use, null, unit, null, remark,
        [.. grid.Rows.Skip(layout.HeadingRow + 1).Select(r => r.At(column)).Where(c => !c.IsBlank).Take(3).Select(c => c.Text)], [])
    { Measures = measures };

    private string Heading(int column) => column < 0 ? "" : grid.Rows[layout.HeadingRow].At(column).Text;

    // "Spectrum 3" alone in its row.
    private string? Title(int row)
    {
        var filled = grid.Rows[row].Cells.Where(c => !c.IsBlank).ToList();
        return filled.Count == 1 && filled[0].Text.Length <= 60 && MeasuredTable.Has(filled[0].Text, PlaceWords) && !IsTotal(filled[0].Text) ? filled[0].Text : null;
    }

    private static ImmutableArray<ElementLine> Distinct(IEnumerable<ElementLine> lines) => [.. lines];

    // A row an element: a column of symbols beside a column of amounts whose heading says percent or mg/g.
    private static ElementTable? ByRow(Grid grid)
    {
        var width = grid.Rows.IsEmpty ? 0 : grid.Rows.Max(r => r.Cells.Length);
        var best = Enumerable.Range(0, width)
            .Select(i => (Column: i, Rows: Enumerable.Range(0, grid.Rows.Length).Where(r => Symbol(grid.Rows[r].At(i)) is not null && grid.Rows[r].Cells.Any(c => !c.IsBlank && TableLayout.IsNumberLike(c))).ToList()))
            .Where(c => c.Rows.Count >= 2).OrderByDescending(c => c.Rows.Count).ThenBy(c => c.Column).FirstOrDefault();
        if (best.Rows is null || best.Rows.Select(r => Symbol(grid.Rows[r].At(best.Column))!.Number).Distinct().Count() < 2)
            return null;

        // The heading is the last row above the first element that names an amount; words alone between.
        var heading = Enumerable.Range(0, best.Rows[0]).Reverse().FirstOrDefault(r => grid.Rows[r].Filled >= 2 && !grid.Rows[r].Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c)), -1);
        if (heading < 0)
            return null;
        int mass = -1, atomic = -1, bare = -1, spot = -1;
        var unit = "%";
        for (var i = 0; i < width; i++)
        {
            var says = grid.Rows[heading].At(i).Text;
            if (i == best.Column || says.Length == 0 && !best.Rows.Any(r => TableLayout.IsNumberLike(grid.Rows[r].At(i))))
                continue;
            var numeric = best.Rows.Count(r => TableLayout.IsNumberLike(grid.Rows[r].At(i))) >= 0.6 * best.Rows.Count;
            if (!numeric)
            {
                spot = spot < 0 && (MeasuredTable.Has(says, PlaceWords) || (says.Length > 0 && best.Rows.Any(r => !grid.Rows[r].At(i).IsBlank) && !MeasuredTable.Has(says, OtherWords))) ? i : spot;
                continue;
            }

            if (MeasuredTable.Has(says, PlaceWords) && !says.Contains('%', StringComparison.Ordinal))
                spot = spot < 0 ? i : spot;
            else if (IsError(says))
                continue;
            else if (IsAtomic(says))
                atomic = atomic < 0 ? i : atomic;
            else if (IsMass(says))
            {
                // Of two columns by mass, the one that was not normalised says more.
                if (mass < 0 || (MeasuredTable.Has(grid.Rows[heading].At(mass).Text, "norm*") && !MeasuredTable.Has(says, "norm*")))
                    mass = i;
            }
            else if (PerGram(says) is { } per)
                (mass, unit) = mass < 0 ? (i, per) : (mass, unit);
            else if (bare < 0 && (says.Contains('%', StringComparison.Ordinal) || MeasuredTable.Has(says, "percent prozent conc concentration content gehalt")) && !MeasuredTable.Has(says, OtherWords.Replace("concentration ", "", StringComparison.Ordinal)))
                bare = i;
        }

        if (mass < 0 && atomic < 0 && bare < 0)
            return null;
        var kind = mass >= 0 || atomic >= 0 ? mass >= 0 ? ElementFiles.Mass : ElementFiles.Atomic : null;
        var layout = mass >= 0 || atomic >= 0
            ? new Layout(false, heading, best.Column, spot, mass, atomic, [], unit, kind)
            : new Layout(false, heading, best.Column, spot, bare, -1, [], unit, null);
        var headed = MeasuredTable.Has(grid.Rows[heading].At(best.Column).Text, ElementWords);
        ImmutableArray<(int, int, Element)> cells = [.. best.Rows.Where(r => r > heading).Select(r => (r, best.Column, Symbol(grid.Rows[r].At(best.Column))!))];
        return new(grid, layout, cells)
        {
            IsCertain = (kind is not null && unit == "%") || (headed && kind is not null),
            Evidence = $"{cells.Select(c => c.Item3.Symbol).Distinct().Count()} elements with '{(kind is null ? grid.Rows[heading].At(bare).Text : string.Join("' and '", new[] { mass, atomic }.Where(c => c >= 0).Select(c => grid.Rows[heading].At(c).Text)))}'",
        };
    }

    // A column an element: headings that are symbols, with the kind of amount in them, under them or above them.
    private static ElementTable? ByColumn(Grid grid)
    {
        for (var h = 0; h < Math.Min(grid.Rows.Length, 60); h++)
        {
            var row = grid.Rows[h];
            ImmutableArray<(int Column, Element Element)> elements = [.. Enumerable.Range(0, row.Cells.Length).Select(i => (i, Headed(row.At(i).Text))).Where(c => c.Item2 is not null && !IsError(row.At(c.i).Text)).Select(c => (c.i, c.Item2!))];
            if (elements.Select(e => e.Element.Number).Distinct().Count() < 2)
                continue;
            var says = string.Join(' ', elements.Select(e => row.At(e.Column).Text));
            var units = h + 1 < grid.Rows.Length && !elements.Any(e => TableLayout.IsNumeric(grid.Rows[h + 1].At(e.Column))) ? string.Join(' ', elements.Select(e => grid.Rows[h + 1].At(e.Column).Text)) : "";
            var above = string.Join(' ', grid.Rows[..h].Where(r => !r.IsBlank).SelectMany(r => r.Cells.Select(c => c.Text)).Append(grid.Sheet ?? ""));
            var text = says + " " + units;
            var percent = text.Contains('%', StringComparison.Ordinal) || above.Contains('%', StringComparison.Ordinal);
            var per = PerGram(text) ?? PerGram(above);
            if (!percent && per is null)
                continue;
            var kind = per is not null ? ElementFiles.Mass : IsAtomic(text) ? ElementFiles.Atomic : IsMass(text) ? ElementFiles.Mass : IsAtomic(above) ? ElementFiles.Atomic : IsMass(above) ? ElementFiles.Mass : null;

            // Both kinds side by side: only the mass columns are read, the others follow from them.
            if (kind == ElementFiles.Atomic && elements.Any(e => IsMass(row.At(e.Column).Text)))
            {
                elements = [.. elements.Where(e => IsMass(row.At(e.Column).Text))];
                kind = ElementFiles.Mass;
            }

            var body = Enumerable.Range(h + 1, grid.Rows.Length - h - 1).Where(r => elements.Count(e => TableLayout.IsNumberLike(grid.Rows[r].At(e.Column))) * 2 >= elements.Length && !IsSummary(grid.Rows[r], elements)).ToList();
            if (body.Count == 0)
                continue;
            var spot = Enumerable.Range(0, row.Cells.Length).Where(i => elements.All(e => e.Column != i)).Where(i => MeasuredTable.Has(row.At(i).Text, PlaceWords) || body.TrueForAll(r => !grid.Rows[r].At(i).IsBlank && !TableLayout.IsNumeric(grid.Rows[r].At(i)))).DefaultIfEmpty(-1).First();
            var others = Enumerable.Range(0, row.Cells.Length).Count(i => elements.All(e => e.Column != i) && i != spot && !row.At(i).IsBlank && !IsTotal(row.At(i).Text) && !IsError(row.At(i).Text));
            ImmutableArray<(int, int, Element)> cells = [.. body.SelectMany(r => elements.Select(e => (r, e.Column, e.Element)))];
            return new(grid, new Layout(true, h, -1, spot, elements[0].Column, -1, elements, per ?? "%", kind), cells)
            {
                IsCertain = others == 0 && per is null && kind is not null,
                Evidence = $"columns of {string.Join(", ", elements.Select(e => e.Element.Symbol).Distinct())} in {(per ?? "%")}",
            };
        }

        return null;
    }

    private static bool IsSummary(GridRow row, ImmutableArray<(int Column, Element Element)> elements)
        => row.Cells.Where((_, i) => elements.All(e => e.Column != i)).Any(c => IsTotal(c.Text) || MeasuredTable.Has(c.Text, "mean average mittelwert moyenne media sd std stdev deviation min max srednia ortalama 平均"));

    private static bool IsTotal(string text) => MeasuredTable.Has(text, TotalWords);

    private static bool IsAtomic(string text) => MeasuredTable.Has(text, AtomWords);

    private static bool IsMass(string text) => MeasuredTable.Has(text, MassWords) && !text.Contains("mg", StringComparison.Ordinal);

    private static bool IsError(string text) => MeasuredTable.Has(text, ErrorWords) || text.Contains('±', StringComparison.Ordinal) || text.StartsWith('σ');

    private static string? PerGram(string text)
    {
        var plain = FileWords.Plain(text).Replace(" ", "", StringComparison.Ordinal);
        return plain.Contains("mg/g", StringComparison.Ordinal) || plain.Contains("mgg-1", StringComparison.Ordinal) ? "mg/g"
            : plain.Contains("g/kg", StringComparison.Ordinal) ? "mg/g"
            : plain.Contains("mg/kg", StringComparison.Ordinal) ? "mg/kg" : null;
    }

    // "Co", "Co K", "CoK", "Co-Kα", "cobalt"; a letter alone only where nothing else stands beside it.
    private static Element? Symbol(Cell cell)
    {
        if (cell.Kind != CellKind.Text || cell.IsBlank || cell.Text.Length > 24)
            return null;
        var text = cell.Text.Trim();
        if (Element.Find(text) is { } plain)
            return plain;
        if (text.Length == 2 && char.IsUpper(text[1]) && text[1] is not ('K' or 'L' or 'M') && Element.Find(text[0] + text[1..].ToLowerInvariant()) is { } shouted)
            return shouted;
        foreach (var length in new[] { 2, 1 })
        {
            if (text.Length > length && Element.Find(text[..length]) is { } start && IsLine(text[length..]))
                return start;
        }

        return text.Length > 3 && !text.Any(char.IsDigit) ? ElementNames.Find(text) : null;
    }

    private static bool IsLine(string rest)
    {
        var line = rest.Trim(' ', '-', '_', '(', ')');
        return line.Length is > 0 and <= 4 && line[0] is 'K' or 'L' or 'M' && line[1..].All(c => c is 'α' or 'β' or 'a' or 'b' or '1' or '2' or ' ');
    }

    // "Co", "Co (wt%)", "Zn_at%", "Ca / mg/g", "Zn K wt%".
    private static Element? Headed(string text)
    {
        var end = 0;
        while (end < text.Length && char.IsAsciiLetter(text[end]))
            end++;
        if (end == 0 || (end < text.Length && char.IsAsciiDigit(text[end])))
            return null;
        var element = Element.Find(text[..end]) ?? (end > 3 ? ElementNames.Find(text[..end]) : null);
        var rest = text[end..].Trim(' ', '_', '-', '/', ',', '(', ')', '[', ']');
        return rest.Length == 0 || IsLine(rest) || rest.Contains('%', StringComparison.Ordinal) || IsAtomic(rest) || IsMass(rest) || PerGram(rest) is not null ? element : null;
    }
}

/// <summary>One amount of one element at one place.</summary>
/// <param name="Row">Row of the file.</param>
/// <param name="Spot">Field, spot or digest; empty where only one was measured.</param>
/// <param name="Element">The element.</param>
/// <param name="Mass">What stands in the column of mass, or of the only amount.</param>
/// <param name="Atomic">What stands in the column of atoms.</param>
internal sealed record ElementLine(int Row, string Spot, Element Element, double? Mass, double? Atomic);
