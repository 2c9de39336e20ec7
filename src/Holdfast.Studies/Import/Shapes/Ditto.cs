namespace Holdfast.Studies.Import.Shapes;

/// <summary>Marks that stand for the cell above: a column of the same volume, written once.</summary>
internal static class Ditto
{
    private static readonly HashSet<string> Marks = new(["\"", "''", "″", "〃", "„", "“", "”", "do.", "dto.", "id.", "idem", "ditto", "-\"-", "- \" -"], StringComparer.OrdinalIgnoreCase);

    /// <summary>The grid with each mark replaced by what it stands for, or null where there is none.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Fill(Grid grid)
    {
        var rows = grid.Rows.ToBuilder();
        var isFilled = false;
        for (var i = 1; i < rows.Count; i++)
        {
            for (var place = 0; place < rows[i].Cells.Length; place++)
            {
                if (!IsMark(rows[i].At(place)) || rows[i - 1].At(place) is not { IsBlank: false } above || IsMark(above))
                    continue;
                rows[i] = rows[i] with { Cells = rows[i].Cells.SetItem(place, above) };
                isFilled = true;
            }
        }

        return isFilled ? grid with { Rows = rows.ToImmutable() } : null;
    }

    /// <summary>True for such a mark.</summary>
    /// <param name="cell">The cell.</param>
    public static bool IsMark(Cell cell) => cell.Kind == CellKind.Text && Marks.Contains(cell.Text.Trim());
}
