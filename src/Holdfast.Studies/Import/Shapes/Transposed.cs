using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables that stand on their side: one column a vessel, one row a quantity.</summary>
internal static class Transposed
{
    private const int FewestQuantities = 3;
    private const int MostRows = 500;

    /// <summary>The grid turned, or null where it stands upright.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Turn(Grid grid)
    {
        // Quantities down the side are a few dozen at most.
        if (grid.Rows.Length > MostRows)
            return null;
        var rows = WithoutUnitColumn([.. grid.Rows.Where(r => r.Filled >= 2)]);
        // Down the first column stand quantities with units; along no row do.
        var down = rows.Where(r => IsQuantity(r.At(0)) && r.Cells.Skip(1).Count(TableLayout.IsNumeric) >= 2).ToList();
        if (down.Count < (rows.Count > 0 && rows.Max(r => r.Filled) > 4 ? 2 : FewestQuantities) || rows.Exists(r => r.Cells.Count(IsQuantity) >= 2) || down.Count * 2 < rows.Count)
            return null;
        // Cells under a heading are numbers of one size; across such a row they are, down a column they are not.
        var first = rows.FindIndex(r => r == down[0]);
        var top = first;
        while (top > 0 && rows[top - 1].Filled >= 3 && rows[top - 1].Filled + 2 >= down[0].Filled)
            top--;
        var names = top < first ? rows[top] : null;
        // Lines of text below it are no quantities.
        var last = rows.FindLastIndex(down.Contains);
        var body = rows.Skip(top).Take(Math.Max(last, rows.FindLastIndex(r => r.Filled * 2 > down[0].Filled)) - top + 1).ToList();
        var width = body.Max(r => r.Cells.Length);
        var turned = Enumerable.Range(0, width).Select(i => new GridRow(i + 1,
            [.. body.Select((r, at) => i == 0 && at == 0 && names is not null && r.At(0).IsBlank ? new Cell("Sample") : r.At(i))]))
            .Where(r => r.Number == 1 || !r.IsBlank);
        var above = grid.Rows.TakeWhile(r => r.Number < body[0].Number).Where(r => !r.IsBlank);
        return grid with { Rows = [.. above, .. turned] };
    }

    // "powder | mg | 23.87 | …": the unit stands in a column of its own, which every row has, also the heading and a row without unit.
    private static List<GridRow> WithoutUnitColumn(List<GridRow> rows)
    {
        var quantities = rows.Where(r => r.Cells.Length > 3 && r.At(0) is { Kind: CellKind.Text, IsBlank: false } name && name.Text.Any(char.IsLetter) && r.Cells.Skip(2).Count(TableLayout.IsNumeric) >= 2).ToList();
        var units = quantities.Count(r => UnitOf(r) is not null);
        if (units < 2 || units * 2 < quantities.Count || quantities.Exists(r => TableLayout.IsNumeric(r.At(1))))
            return rows;
        return [.. rows.Select(r => r.Cells.Length < 3 ? r : r with { Cells = [UnitOf(r) is { } unit ? new Cell($"{r.At(0).Text} ({unit})") : r.At(0), .. r.Cells.Skip(2)] })];
    }

    private static string? UnitOf(GridRow row) => !row.At(1).IsBlank && HeadingReading.UnitOf(row.At(1).Text) is UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous ? row.At(1).Text : null;

    private static bool IsQuantity(Cell cell)
    {
        if (cell.Kind != CellKind.Text || cell.IsBlank || cell.Text.Length > 60)
            return false;
        var heading = HeadingReading.Of(cell.Text);
        return (heading.Unit is UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous && heading.Name.Any(char.IsLetter) && !heading.Name.Any(char.IsDigit) | heading.Name.Length <= 3)
            || (heading.Has(HeadingWord.Ph) && heading.Tokens.Length <= 3);
    }
}
