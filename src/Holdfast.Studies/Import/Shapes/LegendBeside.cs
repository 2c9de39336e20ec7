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
        if (lines.Count is 0 or > MostLines || (!AreWords(lines, gap + 1) && !AreKeys(lines, gap + 1)))
            return null;
        var above = lines.Select(r => r with { Cells = [.. r.Cells.Skip(gap + 1)] });
        return grid with { Rows = [.. above, .. grid.Rows.Select(r => r with { Cells = [.. r.Cells.Take(gap)] })] };
    }

    // "ce after 24 h on the roller" under "Legend": lines of words, one cell each.
    private static bool AreWords(List<GridRow> lines, int at)
        => lines.TrueForAll(r => r.At(at) is { IsBlank: false, Kind: CellKind.Text } cell && !TableLayout.IsNumberLike(cell) && r.Cells.Skip(at + 1).All(c => c.IsBlank)) && lines.Exists(r => r.At(at).Text.Contains(' ', StringComparison.Ordinal));

    // Keys and values. Words over numbers are a table of its own; a legend begins with its first key and value.
    private static bool AreKeys(List<GridRow> lines, int at)
        => TableLayout.IsNumberLike(lines[0].At(at + 1)) && lines.TrueForAll(r => r.At(at) is { IsBlank: false, Kind: CellKind.Text } key && key.Text.Any(char.IsLetter) && !TableLayout.IsNumberLike(key) && r.Cells.Skip(at + 2).All(c => c.IsBlank));
}
