using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques;

/// <summary>Measurements of several powders below each other in one grid, each with its own lines above its numbers: cut into grids of their own.</summary>
internal static class StackedBlocks
{
    /// <summary>
    /// One grid for each run of numbers, where the lines above a later run name what is measured anew ("Sample: B-2" under "Sample: B-1", "Scan 2: holder" under "Scan 1: B-1"); the grid
    /// alone elsewhere. What stands above the first such line holds for all; everything below it for its own block, so that no mass is lent to a neighbour.
    /// </summary>
    /// <param name="grid">The grid.</param>
    /// <param name="runs">Index of the heading (or first row of numbers) of each run, and the index after its last row of numbers.</param>
    /// <param name="names">True for a key that names what is measured, digits taken off: "sample", "scan".</param>
    public static ImmutableArray<(string? Name, Grid Grid)> Of(Grid grid, IReadOnlyList<(int From, int To)> runs, Func<string, bool> names)
    {
        var rows = grid.Rows;
        if (runs.Count < 2)
            return [(null, grid)];
        var own = runs.Select((run, k) => k == 0 ? 0 : OwnFrom(rows, runs[k - 1].To, run.From)).ToArray();
        var first = Naming(rows, 0, runs[0].From, names);
        var heads = runs.Select((run, k) => Naming(rows, own[k], run.From, names)).ToArray();
        // Every later block has a name of its own under the same key, or these are branches of one powder.
        if (first is null || heads.Skip(1).Any(h => h is null || h.Value.Key != first.Value.Key) || heads.Select(h => h!.Value.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() < heads.Length)
            return [(null, grid)];
        GridRow[] common = [.. rows[..first.Value.Index].Where(r => !r.IsBlank)];
        return [.. runs.Select((run, k) => (heads[k]!.Value.Name, grid with
        {
            Rows = [.. common, .. rows[heads[k]!.Value.Index..run.From], .. rows[run.From..(k + 1 < runs.Count ? own[k + 1] : rows.Length)]],
        }))];
    }

    // Lines of the next block begin after the last gap; without one, right after the numbers.
    private static int OwnFrom(ImmutableArray<GridRow> rows, int after, int to)
    {
        // A gap right above the numbers parts nothing.
        var from = after;
        var seen = false;
        for (var i = to - 1; i >= after; i--)
        {
            if (!rows[i].IsBlank)
                seen = true;
            else if (seen && Enumerable.Range(after, i - after).Any(k => !rows[k].IsBlank))
                return i + 1;
        }

        return from;
    }

    private static (int Index, string Key, string Name)? Naming(ImmutableArray<GridRow> rows, int from, int to, Func<string, bool> names)
    {
        for (var i = from; i < to; i++)
        {
            string[] cells = [.. rows[i].Cells.Where(c => !c.IsBlank).Select(c => c.Text)];
            if (cells.Length == 0)
                continue;
            var mark = cells[0].IndexOfAny([':', '=']);
            var key = FileWords.Plain(string.Concat((mark > 0 ? cells[0][..mark] : cells[0]).Where(c => !char.IsDigit(c)))).Trim(' ', '#', '.', '-', '!', '%', ';');
            var name = (mark > 0 ? cells[0][(mark + 1)..].Trim() : "") is { Length: > 0 } said ? said : cells.Length > 1 ? cells[1] : "";
            if (name.Length > 0 && key.Length is > 0 and <= 40 && names(key))
                return (i, key, name);
        }

        return null;
    }
}
