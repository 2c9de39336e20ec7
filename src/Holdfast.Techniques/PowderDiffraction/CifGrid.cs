using System.Collections.Immutable;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Cif;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A grid that was a block of a CIF, with its items and tables by name again.</summary>
internal static class CifGrid
{
    private const string Heading = "data_";

    /// <summary>The block, or null when the grid is none.</summary>
    /// <param name="grid">The grid.</param>
    public static CifBlock? Of(Grid grid)
    {
        if (grid.Separator is not null || grid.Rows.IsEmpty || grid.Rows[0] is not { Cells.Length: 1 } first || !first.At(0).Text.StartsWith(Heading, StringComparison.Ordinal))
            return null;
        var items = ImmutableDictionary.CreateBuilder<string, CifValue>(StringComparer.OrdinalIgnoreCase);
        var loops = ImmutableArray.CreateBuilder<CifLoop>();
        var at = 1;
        for (; at < grid.Rows.Length && grid.Rows[at].Cells.Length == 2; at++)
            items[grid.Rows[at].At(0).Text] = Value(grid.Rows[at].At(1), grid.Rows[at].Number);
        while (at < grid.Rows.Length)
        {
            // A row without cells, the tags, then the rows of the table.
            if (!grid.Rows[at].Cells.IsEmpty)
                return null;
            var tags = grid.Rows[at + 1];
            var body = grid.Rows.Skip(at + 2).TakeWhile(r => !r.Cells.IsEmpty).ToArray();
            loops.Add(new([.. tags.Cells.Select(c => c.Text)], [.. body.SelectMany(r => r.Cells.Select(c => Value(c, r.Number)))], tags.Number));
            at += 2 + body.Length;
        }

        return new(first.At(0).Text[Heading.Length..], first.Number, items.ToImmutable(), loops.ToImmutable());
    }

    // An empty cell was "?" or ".": nothing is said either way.
    private static CifValue Value(Cell cell, int line) => cell.Content is { } text ? new(text, line, false) : new("?", line, true);
}
