using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Scans beside each other, each with angles of its own, or a scan beside a list of lines: each becomes a grid of its own.</summary>
internal static class BesideEachOther
{
    /// <summary>The parts with the name above each, where every one is a scan or a list of lines; the grid alone elsewhere.</summary>
    /// <param name="grid">The grid.</param>
    public static ImmutableArray<(string? Name, Grid Grid)> Of(Grid grid)
    {
        var width = grid.Rows.Select(r => r.Cells.Length).DefaultIfEmpty().Max();
        var first = grid.Rows.FirstOrDefault(r => r.Filled > 1 && r.Cells.All(c => c.IsBlank || ScanLayout.Number(c, null) is not null))?.Number ?? 0;
        foreach (var from in new[] { Gaps(grid, width), Axes(grid, first) })
        {
            if (from.Length < 2)
                continue;
            int[] to = [.. from.Skip(1), width];
            var parts = from.Zip(to).Where(p => grid.Rows.Any(r => r.Number >= first && Filled(r, p.First, p.Second).Any())).Select(p => (p.First, p.Second, Grid: Part(grid, first, width, p.First, p.Second))).ToList();
            var scans = parts.Count(p => ScanLayout.Of(p.Grid) is not null);
            if (parts.Count < 2 || scans == 0 || !parts.TrueForAll(p => ScanLayout.Of(p.Grid) is not null || LineListLayout.Of(p.Grid) is not null))
                continue;
            // A list of the lines of a scan is of the same powder; scans alone have a name each.
            var names = scans < parts.Count ? null : grid.Rows.LastOrDefault(r => r.Number < first && parts.TrueForAll(p => Filled(r, p.First, p.Second).ToList() is [var only] && ScanWords.Axis(only) is null && ScanWords.Column(only) is null));
            return [.. parts.Select(p => (names is null ? null : Filled(names, p.First, p.Second).First(), p.Grid))];
        }

        return [(null, grid)];
    }

    private static IEnumerable<string> Filled(GridRow row, int from, int to) => row.Cells.Skip(from).Take(to - from).Where(c => !c.IsBlank).Select(c => c.Text);

    // The columns of one part; a line with one cell above the numbers speaks of all of them.
    private static Grid Part(Grid grid, int first, int width, int from, int to)
        => grid with { Rows = [.. grid.Rows.Select(r => r.Number < first && r.Filled == 1 ? r : r with { Cells = [.. Enumerable.Range(0, width).Select(c => c >= from && c < to ? r.At(c) : default)] })] };

    // An empty column parts them.
    private static int[] Gaps(Grid grid, int width)
        => [0, .. Enumerable.Range(1, Math.Max(0, width - 2)).Where(c => grid.Rows.All(r => r.At(c).IsBlank)).Select(c => c + 1)];

    // Or the heading of the angles stands again over another column.
    private static int[] Axes(Grid grid, int first)
        => grid.Rows.Where(r => r.Number < first).Select(r => Enumerable.Range(0, r.Cells.Length).Where(c => ScanWords.Axis(r.At(c).Text) is ScanAxis.TwoTheta or ScanAxis.Theta && ScanWords.Column(r.At(c).Text) is null).ToArray()).LastOrDefault(a => a.Length > 1) ?? [];
}
