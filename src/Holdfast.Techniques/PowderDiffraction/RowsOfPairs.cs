using Holdfast.Studies.Import;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Several pairs of angle and intensity on each line, to be read along the line.</summary>
internal static class RowsOfPairs
{
    // Steps of an instrument are even; a number written with fewer digits may be off by this part of one.
    private const double Uneven = 0.02;
    private const int FewestRows = 5;

    /// <summary>The rows with one pair each where the angles go on along the lines and from line to line in even steps; the rows as they are elsewhere.</summary>
    /// <param name="rows">All rows of the grid.</param>
    public static List<GridRow> Unrolled(List<GridRow> rows)
    {
        var widths = rows.Where(IsOfPairs).GroupBy(r => r.Filled).MaxBy(g => g.Count());
        if (widths is null || widths.Count() < FewestRows || !IsEven([.. widths.SelectMany(Angles)]))
            return rows;
        // The last line may be short.
        return [.. rows.SelectMany(r => IsOfPairs(r) || (r.Filled == 2 && Angles(r).Any() && rows.IndexOf(r) > rows.IndexOf(widths.First())) ? Pairs(r) : [r])];
    }

    private static bool IsOfPairs(GridRow row) => row.Filled >= 4 && row.Filled % 2 == 0 && Filled(row).All(c => ScanLayout.Number(c, null) is not null);

    private static Cell[] Filled(GridRow row) => [.. row.Cells.Where(c => !c.IsBlank)];

    private static IEnumerable<double> Angles(GridRow row) => Filled(row).Where((_, i) => i % 2 == 0).Select(c => ScanLayout.Number(c, null)).OfType<double>();

    private static IEnumerable<GridRow> Pairs(GridRow row) => Filled(row).Chunk(2).Select(p => row with { Cells = [.. p] });

    private static bool IsEven(double[] angles)
    {
        var step = angles[1] - angles[0];
        return step > 0 && Enumerable.Range(1, angles.Length - 1).All(i => Math.Abs(angles[i] - angles[i - 1] - step) <= Uneven * step + 1e-9);
    }
}
