using System.Collections.Immutable;
using Holdfast.Amounts;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Rows that are nothing but the mean of the rows above them, though their label looks like a sample's.</summary>
internal static class MeanRows
{
    private const int FewestAveraged = 2, MostAveraged = 6, FewestColumns = 2;
    private const double AgreesWithin = 2e-4;

    /// <summary>Those rows.</summary>
    /// <param name="body">Rows of the table.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="mark">Its decimal mark, or null.</param>
    public static HashSet<GridRow> In(ImmutableArray<GridRow> body, ImmutableArray<Column> columns, DecimalMark? mark)
    {
        var numbers = columns.Where(c => c.Use is ColumnUse.Fact or ColumnUse.Signal && c.Property?.Holds == Holds.Number).ToList();
        var rows = body.Where(r => !r.IsBlank).ToList();
        var values = rows.Select(r => numbers.Select(c => c.Value(r.At(c.Index), mark)).ToArray()).ToList();
        var found = new HashSet<GridRow>();
        var since = 0;
        for (var i = 1; i < rows.Count; i++)
        {
            var above = i - since;
            if (above is < FewestAveraged or > MostAveraged || !IsMean(values, since, i))
                continue;
            found.Add(rows[i]);
            since = i + 1;
        }

        // One such row may be chance; it is the habit of a sheet that counts.
        return found.Count > 1 ? found : [];
    }

    // Every number is the mean of those above, and at least two columns have numbers that differ there.
    private static bool IsMean(List<double?[]> values, int from, int at)
    {
        var telling = 0;
        for (var column = 0; column < values[at].Length; column++)
        {
            var above = values.GetRange(from, at - from).Select(v => v[column]).ToList();
            if (values[at][column] is not { } value || above.Contains(null))
                continue;
            var mean = above.Average()!.Value;
            if (Math.Abs(value - mean) > AgreesWithin * Math.Abs(mean))
                return false;
            telling += above.Distinct().Count() > 1 ? 1 : 0;
        }

        return telling >= FewestColumns;
    }
}
