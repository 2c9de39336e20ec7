using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Two tables beside each other on one sheet: vessels, and to the right of an empty column the standards.</summary>
internal static class SideBySide
{
    private const int RowsSearched = 200, FewestHeadings = 3, LinesOfHeadings = 2;

    /// <summary>The parts, or null where the sheet holds one table.</summary>
    /// <param name="grid">The grid.</param>
    public static ImmutableArray<Grid>? Split(Grid grid)
    {
        // Over the headings a line may name each part: "pH 3", "pH 6".
        var candidates = grid.Rows.Take(RowsSearched).Where(r => !r.Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c))).Select(r => (Row: r, Known: TableLayout.KnownHeadings(r))).Where(r => r.Known >= FewestHeadings).Take(LinesOfHeadings).ToList();
        if (candidates.Count == 0)
            return null;
        var heading = candidates.MaxBy(r => r.Known).Row;
        var gap = Gap(heading, grid.Rows);
        if (gap == 0)
            return candidates.Select(c => TwoSets(grid, c.Row)).FirstOrDefault(s => s is not null);
        var (left, right) = (Words(heading, 0, gap), Words(heading, gap, heading.Cells.Length));
        // An empty column stands within tables too; standards with readings of their own make a table.
        if (!IsCalibration(right) && !IsCalibration(left) && !(left.Exists(h => h.Has(HeadingWord.Sample)) && right.Count >= 3 && right[0].Has(HeadingWord.Sample)))
            return null;
        // A line above both that stands alone in its row holds for both.
        var above = grid.Rows.TakeWhile(r => r != heading).Where(r => r.Filled == 1).ToHashSet();
        return [grid with { Rows = [.. grid.Rows.Select(r => r with { Cells = [.. r.Cells.Take(gap)] })] }, grid with { Findings = [], Rows = [.. grid.Rows.Select(r => above.Contains(r) ? r : r with { Cells = [.. r.Cells.Skip(gap + 1)] })] }];
    }

    // Two sets of standards beside each other, over a table that is wider than both: one below the other, so that they are held against each other.
    private static ImmutableArray<Grid>? TwoSets(Grid grid, GridRow heading)
    {
        var block = grid.Rows.SkipWhile(r => r != heading).TakeWhile(r => !r.IsBlank).ToList();
        var gap = Gap(heading, block);
        if (gap == 0 || !IsCalibration(Words(heading, 0, gap)) || !IsCalibration(Words(heading, gap, heading.Cells.Length)) || !heading.Cells.Take(gap).SequenceEqual(heading.Cells.Skip(gap + 1).TakeWhile(c => !c.IsBlank)))
            return null;
        var last = grid.Rows.IndexOf(block[^1]);
        return [grid with { Rows = [.. grid.Rows.Take(last + 1).Select(r => block.Contains(r) ? r with { Cells = [.. r.Cells.Take(gap)] } : r), .. block.Skip(1).Select(r => r with { Cells = [.. r.Cells.Skip(gap + 1)] }).Where(r => !r.IsBlank), .. grid.Rows.Skip(last + 1)] }];
    }

    // The first column without a heading and without a cell, between two that have both; 0 for none.
    private static int Gap(GridRow heading, IReadOnlyCollection<GridRow> rows)
        => Enumerable.Range(1, Math.Max(0, heading.Cells.Length - 2)).FirstOrDefault(i => heading.At(i).IsBlank && heading.At(i + 1) is { IsBlank: false } && rows.All(r => r.At(i).IsBlank));

    private static List<HeadingReading> Words(GridRow heading, int from, int to)
        => [.. Enumerable.Range(from, to - from).Where(i => !heading.At(i).IsBlank).Select(i => HeadingReading.Of(heading.At(i).Text))];

    private static bool IsCalibration(List<HeadingReading> headings)
        => headings.Count is 2 or 3 && headings.Exists(h => h.HasAny(HeadingWord.Standard, HeadingWord.Known) || UnitKinds.Of(h.Unit) == UnitKind.Concentration) && headings.Exists(h => h.HasAny(HeadingWord.Absorbance, HeadingWord.Signal) || TableKinds.Meant(h) is { } meant && SpectrometryProperties.IsCalibrated(meant.Name));
}
