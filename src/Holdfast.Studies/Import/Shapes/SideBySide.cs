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
        var heading = grid.Rows.Take(RowsSearched).Where(r => !r.Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c))).Select(r => new { Row = r, Known = TableLayout.KnownHeadings(r) })
            .Where(r => r.Known >= FewestHeadings).Take(LinesOfHeadings).MaxBy(r => r.Known)?.Row;
        if (heading is null)
            return null;
        var gap = Enumerable.Range(1, Math.Max(0, heading.Cells.Length - 2)).FirstOrDefault(i => heading.At(i).IsBlank && heading.At(i + 1) is { IsBlank: false } && grid.Rows.All(r => r.At(i).IsBlank));
        if (gap == 0)
            return null;
        var (left, right) = (Words(heading, 0, gap), Words(heading, gap, heading.Cells.Length));
        // An empty column stands within tables too; standards with readings of their own make a table.
        if (!IsCalibration(right) && !IsCalibration(left) && !(left.Exists(h => h.Has(HeadingWord.Sample)) && right.Count >= 3 && right[0].Has(HeadingWord.Sample)))
            return null;
        // A line above both that stands alone in its row holds for both.
        var above = grid.Rows.TakeWhile(r => r != heading).Where(r => r.Filled == 1).ToHashSet();
        return [grid with { Rows = [.. grid.Rows.Select(r => r with { Cells = [.. r.Cells.Take(gap)] })] }, grid with { Findings = [], Rows = [.. grid.Rows.Select(r => above.Contains(r) ? r : r with { Cells = [.. r.Cells.Skip(gap + 1)] })] }];
    }

    private static List<HeadingReading> Words(GridRow heading, int from, int to)
        => [.. Enumerable.Range(from, to - from).Where(i => !heading.At(i).IsBlank).Select(i => HeadingReading.Of(heading.At(i).Text))];

    private static bool IsCalibration(List<HeadingReading> headings)
        => headings.Count is 2 or 3 && headings.Exists(h => h.HasAny(HeadingWord.Standard, HeadingWord.Known) || UnitKinds.Of(h.Unit) == UnitKind.Concentration) && headings.Exists(h => h.HasAny(HeadingWord.Absorbance, HeadingWord.Signal) || TableKinds.Meant(h) is { } meant && SpectrometryProperties.IsCalibrated(meant.Name));
}
