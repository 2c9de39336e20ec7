using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;

namespace Holdfast.Studies.Import;

/// <summary>Where in a grid things are: what the file says about itself, the heading, a line of units, the rows.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="Preamble">Rows before the heading that hold something.</param>
/// <param name="Heading">The heading, or null when the table has none.</param>
/// <param name="Units">The line of units under it, or null.</param>
/// <param name="Body">The rows, up to the last that holds something; blank ones between them included.</param>
internal sealed record TableLayout(Grid Grid, ImmutableArray<GridRow> Preamble, GridRow? Heading, GridRow? Units, ImmutableArray<GridRow> Body)
{
    private const int RowsSearched = 200;
    private const int LongestHeading = 80;
    private const int RowsBelow = 3;
    private const double OverNumbers = 1.5;

    /// <summary>Headings as they stand, "column 3" where there is none.</summary>
    public ImmutableArray<string> Headings { get; } = Names(Heading, Body);

    /// <summary>What the file says about itself, by key as written.</summary>
    public ImmutableSortedDictionary<string, string> Details => Say(Preamble);

    /// <summary>Signature of the layout: two files with the same headings and units are understood alike.</summary>
    public string Signature => string.Join('|', Headings.Select((h, i) => HeadingWords.Key(h) + (Units is null ? "" : "~" + HeadingWords.Key(Units.At(i).Text))));

    /// <summary>Lines above and below the table that hold for all its rows.</summary>
    public Notes Notes { get; init; } = Notes.Of(Preamble);

    /// <summary>How the table was turned or cut before it was read, in words; null for as it stands.</summary>
    public string? Turned { get; init; }

    /// <summary>Which table of its sheet it is, from 0.</summary>
    public int Part { get; init; }

    /// <summary>The tables of a grid, one under the other; at least one.</summary>
    /// <param name="grid">The grid.</param>
    public static ImmutableArray<TableLayout> In(Grid grid)
    {
        if (grid.Rows.Any(r => !r.IsBlank) && grid.Rows.All(r => r.At(0).IsBlank))
            return In(grid with { Rows = [.. grid.Rows.Select(r => r with { Cells = r.Cells.IsEmpty ? r.Cells : r.Cells.RemoveAt(0) })] });
        if (Ditto.Fill(grid) is { } filled)
            return In(filled);
        if (UnitsBeside.Join(grid) is { } joined)
            return [.. In(joined).Select(t => t with { Turned = "units stood beside their numbers" })];
        if (LegendBeside.Move(grid) is { } moved)
            return In(moved);
        if (Transposed.Turn(grid) is { } turned)
            return [Of(turned, 0, turned.Rows.Length) with { Turned = "each column was a sample; rows are counted as columns" }];
        if (TitledList.Turn(grid) is { } list)
            return [Of(list, 0, list.Rows.Length)];
        if (AmountLines.Turn(grid) is { } lines)
            return [Of(lines, 0, lines.Rows.Length) with { Turned = "each line of amounts was a sample" }];
        if (SampleBlocks.Turn(grid) is { } blocks)
            return [Of(blocks, 0, blocks.Rows.Length) with { Turned = "each block of lines was a sample" }];
        if (SideBySide.Split(grid) is { } sides)
            return Together([.. sides.SelectMany((s, i) => In(s).Select(t => t with { Part = t.Part + (i * 100) }))]);
        var starts = Starts(grid.Rows);
        if (starts.Count < 2)
            return [Of(grid, 0, grid.Rows.Length)];
        var general = Notes.Of(grid.Rows[..LinesAbove(grid.Rows, starts[0])].Where(r => !r.IsBlank));
        // So does a line under the last table that says that it is of all: "all flasks: 50 mL, 4 h".
        var ofAll = Notes.Of(Footer.Split(grid.Rows[(starts[^1] + 1)..]).Lines.Where(r => Lexicon.Tokens(r.Cells.First(c => !c.IsBlank).Text).Any(Notes.Each.Contains)));
        var tables = ImmutableArray.CreateBuilder<TableLayout>();
        for (var i = 0; i < starts.Count; i++)
        {
            var from = i == 0 ? 0 : LinesAbove(grid.Rows, starts[i]);
            var to = i + 1 < starts.Count ? LinesAbove(grid.Rows, starts[i + 1]) : grid.Rows.Length;
            var table = Of(grid, from, to) with { Part = i };
            // What stands above the first table's own title holds for the later ones too.
            tables.Add(table with { Notes = (i == 0 ? table.Notes : table.Notes.Or(general)).Or(ofAll) });
        }

        return tables.ToImmutable();
    }

    // A line under tables side by side speaks of all of them.
    private static ImmutableArray<TableLayout> Together(ImmutableArray<TableLayout> tables)
        => [.. tables.Select(t => t with { Notes = tables.Where(o => o != t).Aggregate(t.Notes, (notes, o) => notes.Or(o.Notes)) })];

    /// <summary>A grid as one table, whatever stands in it.</summary>
    /// <param name="grid">The grid.</param>
    public static TableLayout Whole(Grid grid) => Of(grid, 0, grid.Rows.Length);

    private static TableLayout Of(Grid grid, int from, int to)
    {
        var rows = grid.Rows[from..to];
        var heading = FindHeading(rows);
        // A blank line between the heading and its line of units is none of the rows.
        if (heading is { } over && over + 2 < rows.Length && rows[over + 1].IsBlank && !rows[over + 2].IsBlank && !rows[over + 2].Cells.Any(IsNumberLike))
            rows = rows.RemoveAt(over + 1);
        var first = heading is { } h ? h + 1 : FirstNumeric(rows) ?? rows.Length;
        var (named, joined) = heading is { } place ? TwoLines.Join(rows, place) : (null, 0);
        first += joined;
        var units = heading is not null && first < rows.Length && IsUnits(rows[first]) ? first : (int?)null;
        if (units is not null)
            first++;
        var last = rows.Length;
        while (last > first && rows[last - 1].IsBlank)
            last--;
        while (first < last && rows[first].IsBlank)
            first++;
        ImmutableArray<GridRow> preamble = [.. rows[..(heading ?? Math.Min(first, rows.Length))].Where(r => !r.IsBlank)];
        var (body, below) = first < last ? Footer.Split(rows[first..last]) : ([], []);
        return new(grid, preamble, named, units is { } u ? rows[u] : null, body) { Notes = Notes.Of([.. grid.Sheet is { } sheet ? [new GridRow(0, [new Cell(sheet)])] : ImmutableArray<GridRow>.Empty, .. preamble, .. below, .. TimesInHeadings(named)]) };
    }

    // "Ni after 24 h / (mg/L)" states the contact time of its rows.
    private static IEnumerable<GridRow> TimesInHeadings(GridRow? heading)
        => heading is null ? [] : heading.Cells.Where(c => !c.IsBlank && HeadingReading.Of(c.Text) is var h && h.Has(HeadingWord.End) && UnitKinds.Of(h.Unit) == UnitKind.Concentration && h.Name.Any(char.IsDigit))
            .Select(c => HeadingReading.Of(c.Text).Name.Split(' ') is var words ? string.Join(' ', words.SkipWhile(w => !char.IsDigit(w[0])).Take(2)) : "")
            .Where(t => CellParts.Split(t) is (_, Amounts.UnitText.Known known) && UnitKinds.Of(known) == UnitKind.Time)
            .Select(t => new GridRow(heading.Number, [new Cell(t)]));

    /// <summary>What the line of units says under a heading; null where there is none, or a word that is no unit.</summary>
    /// <param name="column">The column, from 0.</param>
    public string? UnitUnder(int column) => Units?.At(column).Text is { } said && !IsInsteadOfUnit(said) ? said : null;

    private static bool IsInsteadOfUnit(string said) => InsteadOfUnits.Contains(said.ToLowerInvariant().Trim('(', ')', '[', ']', '.'));

    /// <summary>How many cells of a row are headings that mean something here.</summary>
    /// <param name="row">The row.</param>
    public static int KnownHeadings(GridRow row) => row.Cells.Count(IsHeading);

    private static bool IsHeading(Cell cell)
    {
        if (cell.Kind != CellKind.Text || cell.IsBlank || cell.Text.Length > LongestHeading || IsNumeric(cell) || !cell.Text.Any(char.IsLetter))
            return false;
        if (char.IsLetter(cell.Text[0]) && HeadingWords.IsKnown(HeadingWords.Key(Header.Read(cell.Text).Name)))
            return true;
        if (cell.Text.Count(c => c == ' ') > 6)
            return false;
        var heading = HeadingReading.Of(cell.Text);
        return !heading.Words.IsEmpty || (heading.Unit is UnitText.Known { Unit.IsOne: false } && (heading.Name.Length > 0 || UnitKinds.Of(heading.Unit) == UnitKind.Concentration)) || heading.Element is not null;
    }

    // A heading further down begins another table: words alone, unlike the heading before, with numbers under it.
    private static List<int> Starts(ImmutableArray<GridRow> rows)
    {
        var starts = new List<int>();
        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i].Cells.Any(IsPlainNumber) || rows[i].Cells.Any(IsNumeric) || (KnownHeadings(rows[i]) < 2 && !Repeats(rows[i], starts, rows)) || IsUnits(rows[i]))
                continue;
            var next = i + 1;
            while (next < rows.Length && next < i + 3 && (rows[next].IsBlank || IsUnits(rows[next])))
                next++;
            // Key and value, line by line, look like a table of two columns and are none.
            if (next >= rows.Length || !rows[next].Cells.Any(IsNumberLike) || (rows[i].Filled == 2 && rows[next].Cells.Count(IsNumberLike) < 2 && !Repeats(rows[i], starts, rows)) || (starts.Count > 0 && i - starts[^1] < 2))
                continue;
            // The same heading once more is a new page, unless a title of its own stands above it.
            var titled = i > 0 && !rows[i - 1].IsBlank && (rows[i - 1].Filled <= 2 || IsLineOfSettings(rows, i - 1)) && !rows[i - 1].Cells.Any(IsNumeric) && !(starts.Count > 0 && rows[starts[^1]].Cells.SequenceEqual(rows[i].Cells) && IsTopOfPage(rows, starts[^1], i));
            if (starts.Count > 0 && !titled && (!rows[i - 1].IsBlank || rows[starts[^1]].Cells.SequenceEqual(rows[i].Cells)))
                continue;
            starts.Add(i);
        }

        return starts;
    }

    // "Page 2 of 3" over the same heading: the report goes on, and the lines above the heading are those of the page before.
    private static bool IsTopOfPage(ImmutableArray<GridRow> rows, int before, int heading)
    {
        var counted = false;
        for (var i = 1; heading - i > before && before - i >= 0 && !rows[heading - i].IsBlank && !rows[before - i].IsBlank; i++)
        {
            var (one, other) = (rows[before - i], rows[heading - i]);
            if (one.Cells.SequenceEqual(other.Cells))
                continue;
            if (!one.Cells.Select(WithoutDigits).SequenceEqual(other.Cells.Select(WithoutDigits)) || !Lexicon.Tokens(string.Join(' ', other.Cells.Select(c => c.Text))).Any(Page.Contains))
                return false;
            counted = true;
        }

        return counted;
    }

    private static readonly HashSet<string> Page = new("page pag pagina seite strona sida strana sayfa halaman bladzijde folha hoja blatt feuille".Split(' '), StringComparer.Ordinal);

    private static string WithoutDigits(Cell cell) => string.Concat(cell.Text.Where(c => !char.IsDigit(c)));

    // "Code | Waktu | Ce (mg/L)" after "Code | Massa | Ce (mg/L)": two headings of the table before, so the third is one as well.
    private static bool Repeats(GridRow row, List<int> starts, ImmutableArray<GridRow> rows)
        => starts.Count > 0 && row.Filled >= 2 && row.Cells.Count(c => !c.IsBlank && rows[starts[^1]].Cells.Contains(c)) >= Math.Max(1, row.Filled / 2);

    /// <summary>True for a cell that holds a number, alone or with its unit or scatter.</summary>
    internal static bool IsNumberLike(Cell cell) => !cell.IsBlank && (IsNumeric(cell) || CellParts.Split(cell.Text) is not null || CellParts.Scatter(cell.Text) is not null || CellParts.Remarked(cell.Text) is not null);

    // Title lines right above a heading belong to it: back to the blank row, or to the last row that is a full one.
    private static int LinesAbove(ImmutableArray<GridRow> rows, int heading)
    {
        var from = heading;
        // A paragraph of text, one blank row above the heading and one below the table before, speaks of what follows.
        if (from > 1 && rows[from - 1].IsBlank && IsText(rows[from - 2]))
        {
            var above = from - 1;
            while (above > 0 && IsText(rows[above - 1]))
                above--;
            if (above > 0 && rows[above - 1].IsBlank)
                return above;
        }

        while (from > 0 && !rows[from - 1].IsBlank && (rows[from - 1].Filled <= 2 || IsLineOfSettings(rows, from - 1)))
            from--;
        return from;
    }

    private static bool IsText(GridRow row) => row.Filled is 1 or 2 && !row.Cells.Any(c => !c.IsBlank && IsNumeric(c)) && row.Cells.First(c => !c.IsBlank).Text.Any(char.IsLetter);

    // "20 mg powder, 25 mL, C0 = 15 mg/L", cut at its commas, under a title: amounts in words, none of them a bare number.
    private static bool IsLineOfSettings(ImmutableArray<GridRow> rows, int at) => (at == 0 || rows[at - 1].Filled <= 1) && rows[at] is var row && row.Cells.All(c => c.IsBlank || (!IsNumeric(c) && c.Text.Any(char.IsLetter))) && row.Cells.Count(c => !c.IsBlank && c.Text.Any(char.IsDigit) && c.Text.Contains(' ', StringComparison.Ordinal)) >= 2;

    // The heading is the row that names most things; where nothing is known, the words just above the first numbers.
    private static int? FindHeading(ImmutableArray<GridRow> rows)
    {
        var (best, score) = (-1, 1.5);
        for (var i = 0; i < Math.Min(rows.Length, RowsSearched); i++)
        {
            var known = KnownHeadings(rows[i]);
            // Rows of data hold words as well: a row of numbers is no heading.
            var numbers = rows[i].Cells.Count(c => !c.IsBlank && IsNumberLike(c));
            if (IsWide(rows, i))
                return i;
            var weight = known - numbers + (StandsOverNumbers(rows, i) ? OverNumbers : 0);
            if (weight > score && numbers * 2 <= rows[i].Filled && !IsUnits(rows[i]))
                (best, score) = (i, weight);
        }

        // A heading that a later page repeats stands over the rows of the first page too.
        if (best >= 0)
            return Enumerable.Range(0, best + 1).First(i => rows[i].Cells.SequenceEqual(rows[best].Cells));
        for (var i = (FirstNumeric(rows) ?? 0) - 1; i >= 0; i--)
        {
            if (rows[i].IsBlank || IsUnits(rows[i]))
                continue;
            return rows[i].Filled >= 2 && rows[i].Cells.All(c => c.IsBlank || !IsNumeric(c)) ? i : null;
        }

        return null;
    }

    // "t (min) | 25 °C | 35 °C | 45 °C" over full rows of numbers: one setting down, another along.
    private static bool IsWide(ImmutableArray<GridRow> rows, int at)
    {
        var row = rows[at];
        if (row.Filled < 3 || !IsHeading(row.At(0)) || HeadingReading.Of(row.At(0).Text).Unit is not UnitText.Known { Unit.IsOne: false } || at + 1 >= rows.Length || rows[at + 1].Cells.Any(c => !c.IsBlank && !IsNumeric(c)) || rows[at + 1].Filled < 3)
            return false;
        var kinds = row.Cells.Skip(1).Where(c => !c.IsBlank).Select(c => CellParts.Split(c.Text) is (_, var unit) ? UnitKinds.Of(unit) : UnitKind.None).Distinct().ToList();
        return kinds is [not UnitKind.None];
    }

    // The next rows all have a number in one column: what stands above them is more likely their heading than a line of keys and values.
    private static bool StandsOverNumbers(ImmutableArray<GridRow> rows, int heading)
    {
        var below = rows.Skip(heading + 1).Where(r => !r.IsBlank && !IsUnits(r)).Take(RowsBelow).ToList();
        return below.Count > 0 && Enumerable.Range(0, below.Max(r => r.Cells.Length)).Any(i => below.TrueForAll(r => !r.At(i).IsBlank && (IsNumberLike(r.At(i)) || IsLimit(r.At(i)))) && below.Exists(r => IsNumberLike(r.At(i))));
    }

    // "<10": a result too.
    private static bool IsLimit(Cell cell) => cell.Kind == CellKind.Text && CellText.Read(cell.Text, null) is CellText.Censored;

    private static int? FirstNumeric(ImmutableArray<GridRow> rows)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i].Cells.Count(IsNumeric) >= 2)
                return i;
        }
        return null;
    }

    /// <summary>True for a cell that holds a number and nothing else.</summary>
    internal static bool IsNumeric(Cell cell)
        => IsPlainNumber(cell) || (cell.Kind == CellKind.Text && !cell.IsBlank && CellText.Read(cell.Text, null) is CellText.Number or CellText.Ambiguous);

    // One look tells nearly every row of a long table.
    private static bool IsPlainNumber(Cell cell) => cell.Kind == CellKind.Number || (cell.Kind == CellKind.Text && CellText.IsPlainNumber(cell.Text));

    /// <summary>True for a row that holds units and nothing else.</summary>
    internal static bool IsUnits(GridRow row)
    {
        if (row.Cells.Any(IsPlainNumber))
            return false;
        var units = 0;
        foreach (var cell in row.Cells.Where(c => !c.IsBlank))
        {
            // "V-01" is a code and no volt.
            if (IsNumeric(cell) || cell.Text.Contains('0', StringComparison.Ordinal))
                return false;
            switch (HeadingReading.UnitOf(cell.Text))
            {
                case UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous:
                    units++;
                    break;
                case UnitText.Unknown when !IsInsteadOfUnit(cell.Text):
                    return false;
            }
        }

        return units > 0;
    }

    // What stands in a line of units over codes, running numbers, names and times of the day.
    private static readonly HashSet<string> InsteadOfUnits = new("code label text name unit units einheit unité unidad no nr num number nummer numéro numero número # n° nº id clock time uhr h:min h:mm hh:mm std:min".Split(' '), StringComparer.Ordinal);

    private static ImmutableArray<string> Names(GridRow? heading, ImmutableArray<GridRow> body)
    {
        var width = Math.Max(heading?.Cells.Length ?? 0, heading is null && body.Length > 0 ? body.Max(r => r.Cells.Length) : 0);
        while (width > 0 && heading is not null && heading.At(width - 1).IsBlank)
            width--;
        return [.. Enumerable.Range(0, width).Select(i => heading?.At(i).Text is { Length: > 0 } name ? name : "column " + Ordinal.Text(i + 1))];
    }

    private static ImmutableSortedDictionary<string, string> Say(ImmutableArray<GridRow> preamble)
    {
        var details = Ordinal.Words.ToBuilder();
        foreach (var row in preamble)
        {
            var cells = row.Cells.Where(c => !c.IsBlank).Select(c => c.Text).ToList();
            var (key, value) = (cells[0], string.Join(' ', cells.Skip(1)));
            var mark = key.IndexOfAny([':', '=']);
            if (cells.Count == 1 && mark > 0)
                (key, value) = (key[..mark].Trim(), key[(mark + 1)..].Trim());
            else if (cells.Count == 1)
                (key, value) = ("line " + Ordinal.Text(row.Number), key);
            key = key.TrimEnd(':', '=', ' ');
            var name = key;
            for (var n = 2; details.ContainsKey(name); n++)
                name = $"{key} ({Ordinal.Text(n)})";
            details[name] = value;
        }
        return details.ToImmutable();
    }
}
