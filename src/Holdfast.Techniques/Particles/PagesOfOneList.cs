using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>A list that was printed on several pages: its heading stands again on each, and what is between the numbers only says that it goes on.</summary>
internal static class PagesOfOneList
{
    private const string GoesOn = "page pages sheet continued cont contd seite blatt fortsetzung forts suite page* feuille hoja pagina* sigue continua* cont* folha segue foglio strona arkusz ciag cd dalszy";

    /// <summary>The grid with one heading; as it is where a later heading may begin another list.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid Joined(Grid grid)
    {
        var rows = grid.Rows;
        var head = Enumerable.Range(0, rows.Length).FirstOrDefault(i => IsHeading(rows[i]) && Enumerable.Range(i + 1, rows.Length - i - 1).Any(k => Same(rows[i], rows[k])), -1);
        if (head < 0)
            return grid;
        var left = new HashSet<int>();
        for (var at = head + 1; at < rows.Length; at++)
        {
            if (!Same(rows[head], rows[at]))
                continue;
            int from = at, to = at + 1;
            while (from > head + 1 && !rows[from - 1].Cells.Any(TableLayout.IsNumberLike))
                from--;
            while (to < rows.Length && (rows[to].IsBlank || !rows[to].Cells.Any(TableLayout.IsNumberLike)))
                to++;
            var between = Enumerable.Range(from, to - from).Where(i => i != at && !rows[i].IsBlank).ToList();
            if (!between.TrueForAll(i => rows[..(head + 2)].Any(r => Same(r, rows[i])) || (rows[i].Filled == 1 && rows[i].Cells.Any(c => MeasuredTable.Has(c.Text, GoesOn)))) || !(between.Exists(i => rows[i].Filled == 1) || CountsOn(rows, head, from, to)))
                return grid;
            left.UnionWith(Enumerable.Range(from, to - from));
        }

        return grid with { Rows = [.. rows.Where((_, i) => !left.Contains(i))] };
    }

    private static bool IsHeading(GridRow row) => row.Filled > 0 && !row.Cells.Any(c => !c.IsBlank && TableLayout.IsNumberLike(c)) && row.Cells.Any(c => SizeTable.NameOf(c.Text) is not null);

    private static bool Same(GridRow a, GridRow b) => a.Filled > 0 && a.Filled == b.Filled && Enumerable.Range(0, Math.Max(a.Cells.Length, b.Cells.Length)).All(i => string.Equals(a.At(i).Text, b.At(i).Text, StringComparison.OrdinalIgnoreCase));

    // 45 above and 46 below, in a column that counts.
    private static bool CountsOn(ImmutableArray<GridRow> rows, int head, int above, int below)
        => below < rows.Length && above > head + 1 && Enumerable.Range(0, rows[head].Cells.Length).Any(i => MeasuredTable.Number(rows[above - 1].At(i), DecimalMark.Point) is { } last && MeasuredTable.Number(rows[below].At(i), DecimalMark.Point) == last + 1);
}
