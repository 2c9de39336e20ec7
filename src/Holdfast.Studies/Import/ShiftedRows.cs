using System.Collections.Immutable;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>Rows in which one cell is missing, so that the rest stands one column too far to the left.</summary>
internal static class ShiftedRows
{
    private const int FewestOthers = 3;

    /// <summary>Asks about them: a cell holds what the next column holds in every other row, and the last cell is empty.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Ask(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var numbers = columns.Where(c => c.Use is ColumnUse.Fact or ColumnUse.Signal && c.Property?.Holds == Holds.Number).OrderBy(c => c.Index).ToList();
        if (numbers.Count < 3 || rows.Count <= FewestOthers)
            return;
        string At(SampleRow row, Column column) => row.Row.At(column.Index).Text;
        var lacking = rows.Where(r => r is { IsLeftOut: false } && At(r, numbers[^1]).Length == 0 && numbers.Take(numbers.Count - 1).All(c => At(r, c).Length > 0)).ToList();
        foreach (var row in lacking)
        {
            var others = rows.Except(lacking).Where(r => At(r, numbers[^1]).Length > 0).ToList();
            var moved = others.Count < FewestOthers ? null : Enumerable.Range(0, numbers.Count - 1).Select(i => (Here: numbers[i], Next: numbers[i + 1]))
                .Where(p => others.TrueForAll(o => At(o, p.Next) == At(others[0], p.Next) && At(o, p.Here) == At(others[0], p.Here)))
                .Where(p => At(row, p.Here) == At(others[0], p.Next) && At(row, p.Here) != At(others[0], p.Here)).Select(p => p.Here).FirstOrDefault();
            if (moved is null)
                continue;
            var answer = source.Talk.Ask("moved-left:" + row.Written, Codes.OddCell, $"{row.Written} (row {Ordinal.Text(row.Row.Number)}): {moved.Heading} is {At(row, moved)}, as the column to its right is everywhere else, and {numbers[^1].Heading} is empty. Is a cell missing, so that the rest moved left? Mend the row in the file, or leave it out.",
                ["leave-out", "keep"], row.Written);
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= answer is "leave-out";
        }
    }
}
