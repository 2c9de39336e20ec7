using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Shapes;
using static Holdfast.Techniques.Elements.AmountWords;

namespace Holdfast.Techniques.Elements;

/// <summary>A grid read as a table of elements: where they stand, which columns are mass, atoms, places, errors.</summary>
internal sealed class ElementTable : IElementTable
{
    private readonly Grid grid;
    private readonly ImmutableArray<(int Row, int Column, Species Species)> cells;
    private readonly Layout layout;

    private ElementTable(Grid grid, Layout layout, ImmutableArray<(int Row, int Column, Species Species)> cells) => (this.grid, this.layout, this.cells) = (grid, layout, cells);

    private sealed record Layout(bool ByColumn, int HeadingRow, int ElementColumn, int SpotColumn, int MassColumn, int AtomicColumn, ImmutableArray<(int Column, Species Species)> ElementColumns, string Unit, string? Kind, int PowderColumn = -1);

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

    /// <summary>Rows of standards and empty capsules between the powders: measured, and no powder.</summary>
    public ImmutableArray<GridRow> Beside { get; private init; } = [];

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

    /// <summary>Heading of the names of powders; empty for none.</summary>
    public string PowderHeading => Heading(layout.PowderColumn);

    /// <summary>Heading of the masses, or of the only amounts.</summary>
    public string MassHeading => layout.ByColumn ? Heading(layout.ElementColumns[0].Column) : Heading(layout.MassColumn);

    /// <summary>Heading of the atomic percentages.</summary>
    public string AtomicHeading => layout.AtomicColumn >= 0 ? Heading(layout.AtomicColumn) : "";

    // Rounded percentages of a whole may miss a hundred by this much.
    private const double WholeWithin = 1;

    // An empty capsule has less than this of all elements together, in the unit of the table.
    private const double EmptyBelow = 1;

    /// <summary>The table of a grid; null where it is none.</summary>
    /// <param name="grid">The grid.</param>
    public static ElementTable? Of(Grid grid) => new[] { ByRow(grid), ByColumn(grid) }.FirstOrDefault(t => t is not null && t.MayBeOxides());

    /// <summary>What the amounts say of the decimal mark.</summary>
    public DecimalEvidence Marks() => DecimalEvidence.Of(new TableLayout(grid, Preamble, grid.Rows[layout.HeadingRow], null, AmountRows), AmountColumns);

    /// <summary>Columns that hold amounts.</summary>
    public ImmutableArray<int> AmountColumns => layout.ByColumn ? [.. layout.ElementColumns.Select(c => c.Column)] : [.. new[] { layout.MassColumn, layout.AtomicColumn }.Where(c => c >= 0)];

    /// <summary>Rows that hold them.</summary>
    public ImmutableArray<GridRow> AmountRows => [.. cells.Select(c => c.Row).Distinct().Select(r => grid.Rows[r])];

    /// <summary>All amounts, place by place.</summary>
    /// <param name="mark">Decimal mark.</param>
    public ImmutableArray<ElementLine> Lines(DecimalMark mark)
    {
        var lines = ImmutableArray.CreateBuilder<ElementLine>();
        if (layout.ByColumn)
        {
            var spots = SpotsByRow();
            foreach (var (row, column, species) in cells)
            {
                if (MeasuredTable.Number(grid.Rows[row].At(column), mark) is { } amount)
                    lines.Add(new(grid.Rows[row].Number, spots[row], species, amount, null) { Powder = layout.PowderColumn >= 0 ? PowderIn(row) : null });
            }

            return lines.ToImmutable();
        }

        var (place, at, round) = ("", 0, 1);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (row, _, species) in cells)
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
            if (!seen.Add(species.Symbol))
            {
                round++;
                place = $"place {round.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
                seen.Clear();
                seen.Add(species.Symbol);
            }

            double? mass = layout.MassColumn >= 0 ? MeasuredTable.Number(grid.Rows[row].At(layout.MassColumn), mark) : null;
            double? atomic = layout.AtomicColumn >= 0 ? MeasuredTable.Number(grid.Rows[row].At(layout.AtomicColumn), mark) : null;
            if (mass is not null || atomic is not null)
                lines.Add(new(grid.Rows[row].Number, place, species, mass, atomic));
        }

        return lines.ToImmutable();
    }

    // "ME-0 (1)" and "ME-0 (2)" are one powder twice.
    private string PowderIn(int row)
    {
        var text = NameAt(row);
        return text.EndsWith(')') && text.LastIndexOf('(') is > 0 and var at && text[(at + 1)..^1].All(char.IsAsciiDigit) ? text[..at].TrimEnd() : text;
    }

    // Of the row itself, or of the last one above that has a name.
    private string NameAt(int row) => Enumerable.Range(layout.HeadingRow + 1, row - layout.HeadingRow).Reverse().Select(r => grid.Rows[r].At(layout.PowderColumn).Text).FirstOrDefault(t => t.Length > 0) ?? "";

    // Without a column of places the powder's name is one; where two rows would be one place, both names and a number tell them apart.
    private Dictionary<int, string> SpotsByRow()
    {
        string At(int row, int column) => column < 0 ? "" : grid.Rows[row].At(column).Text is var text && text.All(char.IsDigit) && !MeasuredTable.Has(Heading(column), Places) ? $"{Heading(column)} {text}".Trim() : text;
        int[] rows = [.. cells.Select(c => c.Row).Distinct()];
        if (layout.PowderColumn < 0)
            return rows.ToDictionary(r => r, r => At(r, layout.SpotColumn));
        var plain = rows.Select(r => At(r, layout.SpotColumn)).ToList();
        var named = layout.SpotColumn >= 0 && plain.Distinct(StringComparer.Ordinal).Count() == plain.Count ? plain : [.. rows.Select(r => (NameAt(r) + " " + At(r, layout.SpotColumn)).Trim())];
        return rows.Index().ToDictionary(r => r.Item, r => named.Count(n => n == named[r.Index]) > 1 ? $"{named[r.Index]} ({(named.Take(r.Index).Count(n => n == named[r.Index]) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)})" : named[r.Index]);
    }

    /// <summary>Its columns for the preview.</summary>
    public ImmutableArray<ColumnUnderstanding> Columns()
    {
        var width = grid.Rows.Max(r => r.Cells.Length);
        return [.. Enumerable.Range(0, width).Select(i => layout.ByColumn && layout.ElementColumns.Any(c => c.Column == i)
                ? One(i, ColumnUse.Measured, layout.ElementColumns.First(c => c.Column == i).Species.Element.Name, layout.Unit, null)
            : i == layout.ElementColumn && !layout.ByColumn ? One(i, ColumnUse.Measured, "element", null, null)
            : i == layout.PowderColumn ? One(i, ColumnUse.Measured, "powder", null, null)
            : i == layout.SpotColumn ? One(i, ColumnUse.Measured, "field, spot or digest", null, null)
            : i == layout.MassColumn ? One(i, ColumnUse.Measured, layout.Kind == ElementFiles.Atomic && !HasBoth ? "atomic percent" : "amount by mass", layout.Unit, null)
            : i == layout.AtomicColumn ? One(i, ColumnUse.Measured, "atomic percent", "%", null)
            : One(i, ColumnUse.LeftOut, null, null, IsError(Heading(i))
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
        return filled.Count == 1 && filled[0].Text.Length <= 60 && MeasuredTable.Has(filled[0].Text, Places) && !IsTotal(filled[0].Text) ? filled[0].Text : null;
    }

    // A row an element: a column of symbols beside a column of amounts whose heading says percent or mg/g.
    private static ElementTable? ByRow(Grid grid)
    {
        var width = grid.Rows.IsEmpty ? 0 : grid.Rows.Max(r => r.Cells.Length);
        var best = Enumerable.Range(0, width)
            .Select(i => (Column: i, Rows: Enumerable.Range(0, grid.Rows.Length).Where(r => Species.In(grid.Rows[r].At(i)) is not null && grid.Rows[r].Cells.Any(c => !c.IsBlank && TableLayout.IsNumberLike(c))).ToList()))
            .Where(c => c.Rows.Count >= 2).OrderByDescending(c => c.Rows.Count).ThenBy(c => c.Rows.Count(r => Species.In(grid.Rows[r].At(c.Column))!.Oxide is not null)).ThenBy(c => c.Column).FirstOrDefault();
        if (best.Rows is null || best.Rows.Select(r => Species.In(grid.Rows[r].At(best.Column))!.Element.Number).Distinct().Count() < 2)
            return null;

        // The heading is the last row above the first element that names an amount; words alone between.
        var heading = Enumerable.Range(0, best.Rows[0]).Reverse().FirstOrDefault(r => grid.Rows[r].Filled >= 2 && !grid.Rows[r].Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c)), -1);
        if (heading < 0)
            return null;
        // "Oxide wt%" beside elements is of their oxides; beside oxides it is the one that is meant.
        var oxides = best.Rows.Exists(r => Species.In(grid.Rows[r].At(best.Column))!.Oxide is not null);
        var ofOxides = Enumerable.Range(0, width).Where(i => i != best.Column && MeasuredTable.Has(grid.Rows[heading].At(i).Text, Oxides)).ToList();
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
                spot = spot < 0 && (MeasuredTable.Has(says, Places) || (says.Length > 0 && best.Rows.Any(r => !grid.Rows[r].At(i).IsBlank) && !MeasuredTable.Has(says, Others) && !best.Rows.TrueForAll(r => grid.Rows[r].At(i).IsBlank || Species.IsLine(grid.Rows[r].At(i).Text)))) ? i : spot;
                continue;
            }

            if (MeasuredTable.Has(says, Places) && !says.Contains('%', StringComparison.Ordinal))
                spot = spot < 0 ? i : spot;
            else if (IsError(says) || IsWanted(says) || (oxides ? ofOxides.Count > 0 && !ofOxides.Contains(i) : ofOxides.Contains(i)) || (oxides && Species.Headed(says, IsAmount) is not null))
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
            else if (bare < 0 && (says.Contains('%', StringComparison.Ordinal) || MeasuredTable.Has(says, "percent prozent conc concentration content gehalt")) && !MeasuredTable.Has(says, Others.Replace("concentration ", "", StringComparison.Ordinal)))
                bare = i;
        }

        if (mass < 0 && atomic < 0 && bare < 0)
            return null;
        var kind = mass >= 0 || atomic >= 0 ? mass >= 0 ? ElementFiles.Mass : ElementFiles.Atomic : null;
        var said = kind ?? PercentKind.In(grid.Rows[..heading].SelectMany(r => r.Cells.Select(c => c.Text)).Append(grid.Sheet ?? ""));
        var layout = mass >= 0 || atomic >= 0
            ? new Layout(false, heading, best.Column, spot, mass, atomic, [], unit, kind)
            : new Layout(false, heading, best.Column, spot, bare, -1, [], unit, said);
        var headed = MeasuredTable.Has(grid.Rows[heading].At(best.Column).Text, ElementWords);
        ImmutableArray<(int, int, Species)> cells = [.. best.Rows.Where(r => r > heading).Select(r => (r, best.Column, Species.In(grid.Rows[r].At(best.Column))!))];
        return new(grid, layout, cells)
        {
            IsCertain = said is not null && ((kind is not null && unit == "%") || headed),
            Evidence = $"{cells.Select(c => c.Item3.Symbol).Distinct().Count()} elements with '{(kind is null ? grid.Rows[heading].At(bare).Text : string.Join("' and '", new[] { mass, atomic }.Where(c => c >= 0).Select(c => grid.Rows[heading].At(c).Text)))}'",
        };
    }

    // A column an element: headings that are symbols, with the kind of amount in them, under them or above them.
    private static ElementTable? ByColumn(Grid grid)
    {
        for (var h = 0; h < Math.Min(grid.Rows.Length, 60); h++)
        {
            var row = grid.Rows[h];
            ImmutableArray<(int Column, Species Species)> elements = [.. Enumerable.Range(0, row.Cells.Length).Select(i => (i, Species.Headed(row.At(i).Text, IsAmount))).Where(c => c.Item2 is not null && !IsError(row.At(c.i).Text)).Select(c => (c.i, c.Item2!))];
            if (elements.Select(e => e.Species.Element.Number).Distinct().Count() < 2)
                continue;
            var says = string.Join(' ', elements.Select(e => row.At(e.Column).Text));
            var units = h + 1 < grid.Rows.Length && !elements.Any(e => TableLayout.IsNumeric(grid.Rows[h + 1].At(e.Column))) ? string.Join(' ', elements.Select(e => grid.Rows[h + 1].At(e.Column).Text)) : "";
            var above = string.Join(' ', grid.Rows[..h].Where(r => !r.IsBlank).SelectMany(r => r.Cells.Select(c => c.Text)).Append(grid.Sheet ?? ""));
            var text = says + " " + units;
            var percent = text.Contains('%', StringComparison.Ordinal) || above.Contains('%', StringComparison.Ordinal) || PercentKind.In(grid.Rows[..h].SelectMany(r => r.Cells.Select(c => c.Text))) is not null;
            var per = PerGram(text) ?? PerGram(above);
            if (!percent && per is null)
                continue;
            var kind = per is not null ? ElementFiles.Mass : IsAtomic(text) ? ElementFiles.Atomic : IsMass(text) ? ElementFiles.Mass : PercentKind.In([units]) ?? PercentKind.In(grid.Rows[..h].SelectMany(r => r.Cells.Select(c => c.Text)).Append(grid.Sheet ?? ""));

            // Both kinds side by side: only the mass columns are read, the others follow from them.
            if (kind == ElementFiles.Atomic && elements.Any(e => IsMass(row.At(e.Column).Text)))
            {
                elements = [.. elements.Where(e => IsMass(row.At(e.Column).Text))];
                kind = ElementFiles.Mass;
            }

            var body = Enumerable.Range(h + 1, ElementPages.NextHeading(grid, h) - h - 1).Where(r => elements.Count(e => TableLayout.IsNumberLike(grid.Rows[r].At(e.Column))) * 2 >= elements.Length && !IsSummary(grid.Rows[r], elements)).ToList();
            if (body.Count == 0)
                continue;
            // A name on the first of several runs holds for those below it.
            var powder = Enumerable.Range(0, row.Cells.Length).Where(i => elements.All(e => e.Column != i) && FileWords.NamesAPowder(row.At(i).Text) && !grid.Rows[body[0]].At(i).IsBlank && body.TrueForAll(r => !TableLayout.IsNumeric(grid.Rows[r].At(i)))).DefaultIfEmpty(-1).First();
            // What names a row is a word before it is a number.
            int[] beside = [.. Enumerable.Range(0, row.Cells.Length).Where(i => elements.All(e => e.Column != i) && !grid.Rows[body[0]].At(i).IsBlank)];
            var labels = powder >= 0 ? powder : beside.Where(i => !TableLayout.IsNumberLike(grid.Rows[body[0]].At(i))).Concat(beside).FirstOrDefault(-1);
            var besides = body.Where(r => labels >= 0 && IsBeside(grid.Rows[r], labels, elements, row)).ToList();
            body = WithoutStatistics(grid, [.. body.Except(besides)], elements);
            if (body.Count == 0)
                continue;
            var spot = Enumerable.Range(0, row.Cells.Length).Where(i => i != powder && elements.All(e => e.Column != i)).Where(i => MeasuredTable.Has(row.At(i).Text, Places) || body.TrueForAll(r => !grid.Rows[r].At(i).IsBlank && !TableLayout.IsNumeric(grid.Rows[r].At(i)))).DefaultIfEmpty(-1).First();
            // Runs that are only numbered are places too: "Lauf | 1".
            if (spot < 0 && powder < 0)
                spot = beside.FirstOrDefault(i => body.Select(r => grid.Rows[r].At(i).Text).Distinct(StringComparer.Ordinal).Count() == body.Count && body.TrueForAll(r => grid.Rows[r].At(i).Text is { Length: > 0 and <= 3 } t && t.All(char.IsDigit)), -1);
            var others = Enumerable.Range(0, row.Cells.Length).Count(i => elements.All(e => e.Column != i) && i != spot && i != powder && !row.At(i).IsBlank && !MeasuredTable.Has(row.At(i).Text, Positions) && !IsTotal(row.At(i).Text) && !IsError(row.At(i).Text) && !IsLoss(row.At(i).Text) && !IsWeighed(row.At(i).Text + (units.Length > 0 ? $" ({grid.Rows[h + 1].At(i).Text})" : "")) && !IsRemark(row.At(i).Text) && !IsNumber(row.At(i).Text));
            ImmutableArray<(int, int, Species)> cells = [.. body.SelectMany(r => elements.Select(e => (r, e.Column, e.Species)))];
            return new(grid, new Layout(true, h, -1, spot, elements[0].Column, -1, elements, per ?? "%", kind, powder), cells)
            {
                IsCertain = others == 0 && per is null && (kind is not null || body.TrueForAll(r => AreWhole(grid.Rows[r], elements))),
                Beside = [.. besides.Select(r => grid.Rows[r])],
                Evidence = $"columns of {string.Join(", ", elements.Select(e => e.Species.Symbol).Distinct())} in {(per ?? "%")}",
            };
        }

        return null;
    }

    // A standard or an empty capsule between the powders; a powder that is called blank has more in it.
    private static bool IsBeside(GridRow row, int label, ImmutableArray<(int Column, Species Species)> elements, GridRow heading)
        => IsStandard(row.At(label).Text) || Enumerable.Range(0, row.Cells.Length).Any(i => IsRemark(heading.At(i).Text) && SaysStandard(row.At(i).Text)) || (IsEmpty(row.At(label).Text) && elements.Sum(e => MeasuredTable.Number(row.At(e.Column), null) ?? 0) < EmptyBelow);

    // Rows below three others that hold their largest, their scatter or their number, and are called by a word alone.
    private static List<int> WithoutStatistics(Grid grid, List<int> body, ImmutableArray<(int Column, Species Species)> elements)
    {
        var mark = DecimalEvidence.Of(new TableLayout(grid, [], null, null, [.. body.Select(r => grid.Rows[r])]), [.. elements.Select(e => e.Column)]).Mark ?? DecimalMark.Point;
        var own = new List<int>();
        double? At(int row, int column) => MeasuredTable.Number(grid.Rows[row].At(column), mark);
        foreach (var r in body)
        {
            var lines = elements.Where(e => At(r, e.Column) is not null).Select(e => ((IReadOnlyList<double>)[.. own.Select(o => At(o, e.Column)).OfType<double>()], At(r, e.Column)!.Value, grid.Rows[r].At(e.Column).Text)).ToList();
            if (grid.Rows[r].Cells.Where((c, i) => !c.IsBlank && elements.All(e => e.Column != i)).Any(c => c.Text.Any(char.IsDigit)) || !ClosingStatistics.Are(lines))
                own.Add(r);
        }

        return own;
    }

    private static bool IsSummary(GridRow row, ImmutableArray<(int Column, Species Species)> elements)
        => row.Cells.Where((_, i) => elements.All(e => e.Column != i)).Any(c => IsTotal(c.Text) || (c.Kind == CellKind.Text && !c.Text.Any(char.IsDigit) && (Footer.IsSummary(c.Text) || IsError(c.Text))) || MeasuredTable.Has(c.Text, "mean average mittelwert moyenne media gemiddelde prumer medelvarde ortalama sd std stdev deviation min max srednia ortalama 平均"));

    // "Weighed in (mg)" beside percentages: how much was burnt, no amount of what was found.
    private static bool IsWeighed(string heading) => FileWords.Plain(heading) is var plain && (plain.Contains("(mg)", StringComparison.Ordinal) || plain.Contains("[mg]", StringComparison.Ordinal) || plain.EndsWith("/ mg", StringComparison.Ordinal) || MeasuredTable.Has(heading, WeighedWords));

    // Percentages of elements that make a hundred together are no readings of vessels, whatever kind they are.
    private static bool AreWhole(GridRow row, ImmutableArray<(int Column, Species Species)> elements)
        => elements.Sum(e => MeasuredTable.Number(row.At(e.Column), null) ?? 0) is >= 100 - WholeWithin and <= 100 + WholeWithin;

    private bool MayBeOxides() => cells.All(c => c.Species.Oxide is null) || OxideSums.AreWhole(this, grid);
}
