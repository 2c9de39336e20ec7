using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A scan and a list of lines beside each other, an empty column between them: each becomes a grid of its own.</summary>
internal static class BesideEachOther
{
    /// <summary>The parts, where every one is a scan or a list of lines and not all are of one kind; the grid alone elsewhere.</summary>
    /// <param name="grid">The grid.</param>
    public static ImmutableArray<Grid> Of(Grid grid)
    {
        var width = grid.Rows.Select(r => r.Cells.Length).DefaultIfEmpty().Max();
        int[] gaps = [.. Enumerable.Range(1, Math.Max(0, width - 2)).Where(c => grid.Rows.All(r => r.At(c).IsBlank))];
        if (gaps.Length == 0)
            return [grid];
        int[] from = [0, .. gaps.Select(g => g + 1)], to = [.. gaps, width];
        ImmutableArray<Grid> parts = [.. from.Zip(to).Where(p => grid.Rows.Any(r => Enumerable.Range(p.First, p.Second - p.First).Any(c => !r.At(c).IsBlank)))
            .Select(p => grid with { Rows = [.. grid.Rows.Select(r => r with { Cells = [.. Enumerable.Range(0, width).Select(c => c >= p.First && c < p.Second ? r.At(c) : default)] })] })];
        var scans = parts.Count(p => ScanLayout.Of(p) is not null);
        return scans > 0 && scans < parts.Length && parts.All(p => ScanLayout.Of(p) is not null || LineListLayout.Of(p) is not null) ? parts : [grid];
    }
}
