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
        var values = numbers.Select(c => new Numbers(i => c.Value(rows[i].At(c.Index), mark), rows.Count)).ToList();
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
    private static bool IsMean(List<Numbers> columns, int from, int at)
    {
        var telling = 0;
        foreach (var column in columns)
        {
            var above = Enumerable.Range(from, at - from).Select(i => column[i]).ToList();
            if (column[at] is not { } value || above.Contains(null))
                continue;
            var mean = above.Average()!.Value;
            if (Math.Abs(value - mean) > AgreesWithin * Math.Abs(mean))
                return false;
            telling += above.Distinct().Count() > 1 ? 1 : 0;
        }

        return telling >= FewestColumns;
    }

    // A column, each cell read once and only where it is asked for: the first column tells most rows.
    private sealed class Numbers(Func<int, double?> read, int count)
    {
        private readonly double?[] values = new double?[count];
        private readonly bool[] known = new bool[count];

        public double? this[int row]
        {
            get
            {
                if (!known[row])
                    (values[row], known[row]) = (read(row), true);
                return values[row];
            }
        }
    }
}
