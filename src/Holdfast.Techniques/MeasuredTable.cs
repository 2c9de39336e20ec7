using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Holdfast.Amounts;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Techniques;

/// <summary>The table of numbers in a grid: the longest run of rows that hold them, with what stands above it.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="Preamble">Rows above the heading that hold something.</param>
/// <param name="Heading">The heading, or null when the table has none.</param>
/// <param name="Units">A row of units under it, or null.</param>
/// <param name="Body">The rows of numbers, blank ones between them left out.</param>
/// <param name="Blank">How many blank rows lie between them.</param>
/// <param name="Below">Rows below the run that hold something.</param>
internal sealed record MeasuredTable(
    Grid Grid, ImmutableArray<GridRow> Preamble, GridRow? Heading, GridRow? Units, ImmutableArray<GridRow> Body, int Blank, ImmutableArray<GridRow> Below)
{
    private const int RowsOfEvidence = 400;
    private const int LongestUnit = 8;

    // Each technique looks at each grid, some more than once.
    private static readonly ConditionalWeakTable<Grid, MeasuredTable?[]> Known = [];

    /// <summary>How many columns the rows have.</summary>
    public int Width { get; } = Body.Max(r => r.Cells.Length);

    /// <summary>Line of the heading, or null.</summary>
    public int? HeadingLine => Heading?.Number;

    /// <summary>The table of a grid; null where no row holds enough numbers.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="numbers">Fewest cells of a row that hold a number, 1 or 2.</param>
    public static MeasuredTable? Of(Grid grid, int numbers)
    {
        var known = Known.GetValue(grid, g => [Find(g, 1), Find(g, 2)]);
        return known[Math.Clamp(numbers, 1, 2) - 1];
    }

    private static MeasuredTable? Find(Grid grid, int numbers)
    {
        var rows = grid.Rows;
        var (from, to, most) = (-1, -1, 0);
        for (var i = 0; i < rows.Length;)
        {
            var (start, filled) = (i, 0);
            while (i < rows.Length && (rows[i].IsBlank || HoldsNumbers(rows[i], numbers)))
                filled += rows[i++].IsBlank ? 0 : 1;
            if (filled > most)
                (from, to, most) = (start, i, filled);
            i = Math.Max(i, start + 1);
        }

        if (most == 0)
            return null;
        while (rows[from].IsBlank)
            from++;
        ImmutableArray<GridRow> run = rows[from..to], body = [.. run.Where(r => !r.IsBlank)];
        while (run[^1].IsBlank)
            run = run.RemoveAt(run.Length - 1);
        // The first row may have a gap, as a blank without a mass has.
        var (heading, units, above) = HeadOf(rows, from, body.Take(RowsOfEvidence).Max(r => r.Filled));
        return new(grid, [.. rows[..above].Where(r => !r.IsBlank)], heading, units, body, run.Length - body.Length, [.. rows[to..].Where(r => !r.IsBlank)]);
    }

    /// <summary>What stands above a column, or empty.</summary>
    /// <param name="column">Its place, from 0.</param>
    public string Named(int column) => Heading?.At(column).Text ?? "";

    /// <summary>What stands above a column in words, the row of units included: "length nm".</summary>
    /// <param name="column">Its place, from 0.</param>
    public string Says(int column) => (Named(column) + " " + Units?.At(column).Text).Trim();

    /// <summary>The unit that heading or row of units state for a column; empty for none that is known.</summary>
    /// <param name="column">Its place, from 0.</param>
    public Unit? UnitOf(int column)
        => HeadingReading.Of(Named(column), Units?.At(column).Text).Unit is UnitText.Known known ? known.Unit
            : HeadingReading.UnitOf(Named(column)) is UnitText.Known { Unit.IsOne: false } itself ? itself.Unit : null;

    /// <summary>True for a column that holds numbers in at least nine of ten rows in which it holds something.</summary>
    /// <param name="column">Its place, from 0.</param>
    public bool IsNumeric(int column)
    {
        var (filled, numbers) = (0, 0);
        foreach (var row in Body.Take(RowsOfEvidence))
        {
            var cell = row.At(column);
            filled += cell.IsBlank ? 0 : 1;
            numbers += !cell.IsBlank && TableLayout.IsNumberLike(cell) ? 1 : 0;
        }

        return filled > 0 && numbers >= 0.9 * filled;
    }

    /// <summary>What the cells of some columns say of the decimal mark.</summary>
    /// <param name="columns">Columns that hold numbers.</param>
    public DecimalEvidence Marks(IReadOnlyCollection<int> columns) => DecimalEvidence.Of(new TableLayout(Grid, Preamble, Heading, Units, Body), columns);

    /// <summary>Numbers of a column, row by row; null where a row holds none.</summary>
    /// <param name="column">Its place, from 0.</param>
    /// <param name="mark">Decimal mark.</param>
    public ImmutableArray<double?> Numbers(int column, DecimalMark? mark) => [.. Body.Select(r => Number(r.At(column), mark))];

    /// <summary>Words of a column, row by row; empty where a row holds none.</summary>
    /// <param name="column">Its place, from 0.</param>
    public ImmutableArray<string> Words(int column) => [.. Body.Select(r => r.At(column).Text)];

    /// <summary>A column for the preview.</summary>
    /// <param name="column">Its place, from 0.</param>
    /// <param name="use">What becomes of it.</param>
    /// <param name="measures">What it holds in words, or null.</param>
    /// <param name="unit">Its unit as understood, or null.</param>
    /// <param name="remark">What to know about it, or null.</param>
    public ColumnUnderstanding Shown(int column, ColumnUse use, string? measures, string? unit, string? remark) => new(
        column, Named(column) is { Length: > 0 } name ? name : "column " + (column + 1).ToString(CultureInfo.InvariantCulture), use, null, unit, null, remark,
        [.. Body.Select(r => r.At(column)).Where(c => !c.IsBlank).Take(3).Select(c => c.Text)],
        use == ColumnUse.Measured && IsNumeric(column) ? [.. Body.Where(r => !r.At(column).IsBlank && !TableLayout.IsNumberLike(r.At(column))).Take(1000).Select(r => new OddCell(r.Number, r.At(column).Text, "no number"))] : [])
    { Measures = measures };

    /// <summary>The number in a cell, its unit or scatter left aside; null for none.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="mark">Decimal mark.</param>
    public static double? Number(Cell cell, DecimalMark? mark)
    {
        if (cell.IsBlank)
            return null;
        var text = CellParts.Split(cell.Text)?.Number ?? CellParts.Scatter(cell.Text)?.Number ?? cell.Text;
        return CellText.Read(text, cell.Kind == CellKind.Number ? DecimalMark.Point : mark) is CellText.Number { Value: var value } && double.IsFinite(value) ? value : null;
    }

    /// <summary>Its words: runs of letters of any script.</summary>
    /// <param name="text">Any text.</param>
    public static ImmutableArray<string> WordsOf(string text) => WordList.Of(text);

    /// <summary>True when a text has one of these words; a list of words ends a stem with "*".</summary>
    /// <param name="text">Any text.</param>
    /// <param name="words">"length longueur lang*".</param>
    public static bool Has(string text, string words) => WordList.Known(words).IsIn(text);

    // A dash holds the place of a number: "blank | - | 1:10 | 0.02".
    private static bool HoldsNumbers(GridRow row, int fewest)
        => row.Cells.Count(c => !c.IsBlank && TableLayout.IsNumberLike(c)) is > 0 and var numbers && numbers + row.Cells.Count(c => c.Text is "-" or "–" or "—") >= fewest;

    // "cm-1 | u. a. | % T" under words: short cells, one of them a unit at least, and none above.
    private static bool AreUnitsUnderWords(ImmutableArray<GridRow> rows, int over, int at)
    {
        static bool IsUnit(Cell cell) => !cell.IsBlank && HeadingReading.UnitOf(cell.Text) is UnitText.Known { Unit.IsOne: false };
        return over >= 0 && rows[at].Filled > 1 && rows[at].Cells.All(c => c.Text.Length <= LongestUnit) && rows[at].Cells.Any(IsUnit) && !rows[over].Cells.Any(IsUnit);
    }

    // A row of units belongs to the row above it only where both have as many cells; else it is the heading itself: "cm-1, %T".
    // "wavenumber | blank | loaded" over " | T (%) | T (%)": the names stand above, what all of them are below.
    private static bool IsOneWordUnderNames(ImmutableArray<GridRow> rows, int over, int at)
        => over >= 0 && rows[at].Filled >= 2 && rows[over].Filled > rows[at].Filled && rows[at].Cells.Where(c => !c.IsBlank).Select(c => c.Text).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1
            && rows[over].Cells.Where(c => !c.IsBlank).Select(c => c.Text).Distinct(StringComparer.OrdinalIgnoreCase).Count() == rows[over].Filled;

    private static (GridRow? Heading, GridRow? Units, int Above) HeadOf(ImmutableArray<GridRow> rows, int from, int fullest)
    {
        var at = from - 1;
        while (at >= 0 && rows[at].IsBlank)
            at--;
        if (at < 0 || rows[at].Cells.Any(c => c.Kind == CellKind.Number && !c.IsBlank))
            return (null, null, at + 1);
        var over = at - 1;
        if ((TableLayout.IsUnits(rows[at]) || AreUnitsUnderWords(rows, over, at) || IsOneWordUnderNames(rows, over, at)) && over >= 0 && !rows[over].IsBlank && rows[over].Filled >= rows[at].Filled && rows[over].Filled <= fullest && !rows[over].Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c)))
            return (rows[over], rows[at], over);
        return rows[at].Filled < 2 && rows[from].Filled > 1 ? (null, null, at + 1) : (rows[at], null, at);
    }
}
