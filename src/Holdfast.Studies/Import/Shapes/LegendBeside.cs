using System.Collections.Immutable;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>A legend at the side of a table, to the right of an empty column: "EDTA (mol/L) | 0.005", "V (mL) | 25". Its lines are moved above the table, where lines hold for all its rows.</summary>
internal static class LegendBeside
{
    private const int RowsSearched = 200, FewestHeadings = 3, MostLines = 12;

    /// <summary>The grid with the legend above the table, or null where there is none.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Move(Grid grid)
    {
        var heading = grid.Rows.Take(RowsSearched).FirstOrDefault(r => TableLayout.KnownHeadings(r) >= FewestHeadings);
        if (heading is null)
            return null;
        var width = grid.Rows.Max(r => r.Cells.Length);
        var gap = Enumerable.Range(FewestHeadings, Math.Max(0, width - FewestHeadings)).FirstOrDefault(i => !heading.At(i - 1).IsBlank && grid.Rows.All(r => r.At(i).IsBlank), -1);
        if (gap < 0)
            return null;
        var lines = grid.Rows.Where(r => r.Cells.Length > gap + 1 && r.Cells.Skip(gap + 1).Any(c => !c.IsBlank)).ToList();
        if (lines.Count is 0 or > MostLines || lines.Exists(r => r.Cells.Skip(gap + 3).Any(c => !c.IsBlank)) || !lines.TrueForAll(r => r.At(gap + 1) is { IsBlank: false, Kind: CellKind.Text } key && key.Text.Any(char.IsLetter) && !TableLayout.IsNumberLike(key)))
            return null;
        // Words over numbers are a table of its own; a legend begins with its first key and value.
        if (!TableLayout.IsNumberLike(lines[0].At(gap + 2)))
            return null;
        var above = lines.Select(r => r with { Cells = [.. r.Cells.Skip(gap + 1)] });
        return grid with { Rows = [.. above, .. grid.Rows.Select(r => r with { Cells = [.. r.Cells.Take(gap)] })] };
    }
}
