using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Isotherms of several powders beside each other, with lines above that hold a value for each: name, mass, p0. Each becomes a grid of its own, the other columns blank.</summary>
internal static class SideBySide
{
    /// <summary>The grids with the names of their powders; the grid alone where no line above tells the blocks apart.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="table">Its only table.</param>
    public static ImmutableArray<(string? Name, Grid Grid)> Of(Grid grid, SorptionTable table)
    {
        var pressure = table.Meanings.Contains(SorptionColumn.Relative) ? SorptionColumn.Relative : SorptionColumn.Absolute;
        int[] axes = [.. Enumerable.Range(0, table.Meanings.Length).Where(c => table.Meanings[c] == pressure)];
        var at = grid.Rows.IndexOf(table.Heading);
        if (axes.Length < 2)
            return [(null, grid)];
        // A line that has one value in each block, its key before the first or in each block again.
        bool IsForEach(GridRow row)
        {
            int[] filled = [.. axes.Select((a, k) => Filled(row, a, Until(k))).Distinct()];
            return filled is [1] && Filled(row, 0, axes[0]) <= 1 || filled is [2] && Filled(row, 0, axes[0]) == 0;
        }

        int Until(int block) => block + 1 < axes.Length ? axes[block + 1] : int.MaxValue;
        GridRow[] each = [.. grid.Rows[..at].Where(r => !r.IsBlank && IsForEach(r))];
        var named = each.FirstOrDefault(r => axes.All(a => Value(r, a) is { Length: > 0 } text && text.Any(char.IsLetter) && SorptionWords.Branch(text) is null && AmountUnit.In(text) is null) && IsName(r, axes[0]));
        if (named is null || !each.Any(r => !ReferenceEquals(r, named)))
            return [(null, grid)];
        return [.. axes.Select((a, k) => ((string?)Value(named, a), grid with { Rows = [.. grid.Rows.Where(r => !ReferenceEquals(r, named)).Select(r => Array.Exists(each, e => ReferenceEquals(e, r)) || IsBelow(r) ? Only(r, a, Until(k)) : r)] }))];

        // Over the columns nothing else stands; the heading and what is below it are cut to the block.
        bool IsBelow(GridRow row) => row.Number >= table.Heading.Number;

        GridRow Only(GridRow row, int from, int to) => row with { Cells = [.. row.Cells.Select((c, i) => i < axes[0] || (i >= from && i < to) ? c : default)] };

        string Value(GridRow row, int axis) => Enumerable.Range(axis, Math.Max(0, Math.Min(Until(Array.IndexOf(axes, axis)), row.Cells.Length) - axis)).Select(i => row.At(i).Text).FirstOrDefault(t => t.Length > 0) ?? "";
    }

    private static bool IsName(GridRow row, int firstAxis)
        => Enumerable.Range(0, firstAxis).All(i => row.At(i).IsBlank || SorptionWords.Setting(row.At(i).Text) == "sample");

    private static int Filled(GridRow row, int from, int to) => Enumerable.Range(from, Math.Max(0, Math.Min(to, row.Cells.Length) - from)).Count(i => !row.At(i).IsBlank);
}
