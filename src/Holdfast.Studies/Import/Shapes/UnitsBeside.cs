using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables in which each number has its unit in the cell to its right: "19,6 | mg | 100 | ml".</summary>
internal static class UnitsBeside
{
    private const int FewestColumns = 2;
    private const int RowsSearched = 200;

    /// <summary>The grid with each unit behind its number, or null where the grid is not like that.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Join(Grid grid)
    {
        var heading = Array.FindIndex([.. grid.Rows.Take(RowsSearched)], r => r.Filled >= 3 && r.Cells.Any(IsUnitHeading));
        if (heading < 0)
            return null;
        var places = Enumerable.Range(1, grid.Rows[heading].Cells.Length - 1).Where(i => IsUnitHeading(grid.Rows[heading].At(i)) && !IsUnitHeading(grid.Rows[heading].At(i - 1))
            && grid.Rows.Skip(heading + 1).Where(r => r.Filled > 1 && !r.At(i - 1).IsBlank).ToList() is { Count: > 0 } body && body.TrueForAll(r => r.At(i).IsBlank || HeadingReading.UnitOf(r.At(i).Text) is UnitText.Known or UnitText.Ambiguous)).ToHashSet();
        if (places.Count >= FewestColumns)
            return grid with { Rows = [.. grid.Rows.Select((r, at) => at < heading ? r : r with { Cells = [.. Joined(r, places, at > heading)] })] };
        if (places.Count == 1 && IsOfOneResult(grid, heading, places.First()))
            return grid with { Rows = [.. grid.Rows.Select((r, at) => at < heading ? r : r with { Cells = [.. Joined(r, places, at > heading)] })] };
        return IsOfABalance(grid, heading, places) ? Weighed(grid, heading, places.First()) : null;
    }

    // "Brut | Tare | Net | Unité": one unit for all that the balance showed.
    private static Grid Weighed(Grid grid, int heading, int unit)
    {
        var first = unit - 1;
        while (first > 1 && HeadingReading.Of(grid.Rows[heading].At(first - 1).Text).HasAny(HeadingWord.Full, HeadingWord.Empty, HeadingWord.Boat, HeadingWord.Mass))
            first--;
        Cell Of(GridRow row, int i) => i >= first && i < unit && TableLayout.IsNumeric(row.At(i)) && !row.At(unit).IsBlank ? new Cell($"{row.At(i).Text} {row.At(unit).Text}") : row.Cells[i];
        return grid with { Rows = [.. grid.Rows.Select((r, at) => at < heading ? r : r with { Cells = [.. Enumerable.Range(0, r.Cells.Length).Where(i => i != unit).Select(i => at == heading ? r.Cells[i] : Of(r, i))] })] };
    }

    // A balance writes one number a line and its unit beside: "Netto | Einheit" over "7,86 | mg".
    private static bool IsOfABalance(Grid grid, int heading, HashSet<int> places)
        => places.Count == 1 && HeadingReading.Of(grid.Rows[heading].At(places.First() - 1).Text) is var weighed && (weighed.HasAny(HeadingWord.Mass, HeadingWord.Result) || weighed.Tokens.Any(ColumnGuess.IsNet))
            && grid.Rows[heading].Cells.Any(c => Lexicon.Of(c.Text).Contains(HeadingWord.Sample)) && grid.Rows.Skip(heading + 1).Where(r => r.Filled > 2).ToList() is { Count: > 0 } body
            && body.TrueForAll(r => r.At(places.First()).IsBlank || UnitKinds.Of(HeadingReading.UnitOf(r.At(places.First()).Text)) == UnitKind.Mass);

    // "Sample | Sb | Unit" over "FH1 | 76 | µg/L", "FH4 | 1.59 | mg/L": one result a row, and its unit changes on the way down.
    private static bool IsOfOneResult(Grid grid, int heading, int unit)
    {
        var headings = grid.Rows[heading].Cells.Where(c => !c.IsBlank).Select(c => HeadingReading.Of(c.Text)).ToList();
        var units = grid.Rows.Skip(heading + 1).Where(r => r.Filled > 1).Select(r => HeadingReading.UnitOf(r.At(unit).Text)).Where(u => u is UnitText.Known { Unit.IsOne: false }).ToList();
        return units.Count > 1 && units.TrueForAll(u => UnitKinds.Of(u) == UnitKind.Concentration) && units.Distinct().Count() > 1 && HeadingReading.Of(grid.Rows[heading].At(unit - 1).Text).Unit is UnitText.Absent
            && !headings.Exists(h => h.HasAny(HeadingWord.Parameter, HeadingWord.Metal)) && headings.Exists(h => h.Has(HeadingWord.Sample));
    }

    private static IEnumerable<Cell> Joined(GridRow row, HashSet<int> places, bool isBody)
    {
        for (var i = 0; i < row.Cells.Length; i++)
        {
            if (places.Contains(i))
                continue;
            yield return isBody && places.Contains(i + 1) && !row.At(i).IsBlank && !row.At(i + 1).IsBlank ? new Cell($"{row.At(i).Text} {row.At(i + 1).Text}") : row.Cells[i];
        }
    }

    private static bool IsUnitHeading(Cell cell) => !cell.IsBlank && Lexicon.Tokens(cell.Text) is [var only] && Lexicon.OfToken(only).Contains(HeadingWord.Unit);
}
