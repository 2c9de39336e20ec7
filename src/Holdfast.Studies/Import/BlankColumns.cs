using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>Columns set with blanks: a line with fewer cells than the others has its cells in the columns they stand under, as a reader sees them.</summary>
internal static class BlankColumns
{
    private const int FewestRows = 5;

    /// <summary>Puts the cells of short lines into their columns; lines that do not fit the columns stay as they are.</summary>
    /// <param name="rows">The rows, changed in place.</param>
    /// <param name="spots">Where each of their cells begins and ends in its line.</param>
    public static void Align(ImmutableArray<GridRow>.Builder rows, IReadOnlyList<(int From, int To)[]> spots)
    {
        // Columns are told by the rows of numbers, which are many and alike; words above reach further.
        var numbers = Enumerable.Range(0, rows.Count).Where(i => rows[i].Cells.Length > 2 && rows[i].Cells.Count(IsFigure) * 2 > rows[i].Cells.Length && spots[i].Length == rows[i].Cells.Length).GroupBy(i => rows[i].Cells.Length).MaxBy(g => g.Count());
        if (numbers is null || numbers.Count() < FewestRows)
            return;
        var columns = Enumerable.Range(0, numbers.Key).Select(c => (From: numbers.Min(i => spots[i][c].From), To: numbers.Max(i => spots[i][c].To))).ToArray();
        // Where columns run into each other no place tells them apart.
        if (Enumerable.Range(1, columns.Length - 1).Any(c => columns[c].From < columns[c - 1].To))
            return;
        for (var i = 0; i < rows.Count; i++)
        {
            if (rows[i].Cells.Length is < 2 || rows[i].Cells.Length >= columns.Length || spots[i].Length != rows[i].Cells.Length)
                continue;
            int[] at = [.. spots[i].Select(s => Under(s, columns))];
            if (at.Contains(-1) || at.Distinct().Count() < at.Length)
                continue;
            var cells = new Cell[columns.Length];
            foreach (var (place, column) in at.Select((c, k) => (k, c)))
                cells[column] = rows[i].Cells[place];
            rows[i] = rows[i] with { Cells = [.. cells] };
        }
    }

    // "13.42", "09:10", "< 0.5": what stands in columns of numbers, times of the day and ditto marks included.
    private static bool IsFigure(Cell cell) => cell.Text.Length > 0 && (char.IsDigit(cell.Text[0]) || TableLayout.IsNumeric(cell) || Shapes.Ditto.IsMark(cell));

    // The only column that a cell stands under, or -1.
    private static int Under((int From, int To) spot, (int From, int To)[] columns)
    {
        var found = -1;
        for (var c = 0; c < columns.Length; c++)
        {
            // Half of the gap to the next column belongs to either.
            var left = c == 0 ? 0 : (columns[c - 1].To + columns[c].From) / 2.0;
            var right = c + 1 == columns.Length ? double.PositiveInfinity : (columns[c].To + columns[c + 1].From) / 2.0;
            if (spot.From < right && spot.To > left)
            {
                if (spot.From < columns[c].To && spot.To > columns[c].From)
                {
                    if (found >= 0)
                        return -1;
                    found = c;
                }
            }
        }

        return found;
    }
}
