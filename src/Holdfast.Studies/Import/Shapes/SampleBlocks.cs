using Holdfast.Studies.Import.Headings;
using W = Holdfast.Studies.Import.Headings.HeadingWord;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Printed reports with a block of lines for each sample, "Sample ID,K-1" first: turned into one row a sample.</summary>
internal static class SampleBlocks
{
    private const int FewestBlocks = 3;

    /// <summary>The grid with one row a block, or null where it is no such report.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Turn(Grid grid)
    {
        var places = Enumerable.Range(0, grid.Rows.Length).Where(i => grid.Rows[i] is var r && r.At(0) is { Kind: CellKind.Text, IsBlank: false } && r.Filled == 2)
            .GroupBy(i => grid.Rows[i].At(0).Text, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() >= FewestBlocks && IsName(g.Key)).MaxBy(g => g.Count())?.ToList();
        if (places is null)
            return null;
        List<GridRow> opening = [.. places.Select(i => grid.Rows[i])];
        if (opening.Exists(r => Value(r) is null) || opening.Select(r => Value(r)!.Value.Text).Distinct(StringComparer.Ordinal).Count() < FewestBlocks)
            return null;
        var blocks = places.Select((at, i) => grid.Rows[(at + 1)..(i + 1 < places.Count ? places[i + 1] : grid.Rows.Length)].Where(r => !r.IsBlank).ToList());
        // A block of two columns of codes and numbers is a table of its own, no block of one sample.
        var results = blocks.Select(Results).ToList();
        var keys = results[0].Select(r => r.Key).Where(k => results.Count(b => b.Exists(r => r.Key == k)) * 2 > results.Count).Distinct(StringComparer.Ordinal).ToList();
        if (!keys.Exists(k => HeadingReading.Of(k).HasAny(W.Result, W.Concentration, W.Mean, W.Absorbance)))
            return null;
        // What was made of the absorbance stands beside: the absorbance alone would need its standards again.
        if (keys.Exists(k => HeadingReading.Of(k) is var h && UnitKinds.Of(h.Unit) == UnitKind.Concentration))
            keys.RemoveAll(k => HeadingReading.Of(k).Has(W.Absorbance));
        var heading = new GridRow(opening[0].Number, [opening[0].At(0), .. keys.Select(k => new Cell(k))]);
        var body = opening.Zip(results, (o, found) => new GridRow(o.Number, [Value(o)!.Value, .. keys.Select(k => found.Find(r => r.Key == k).Value)]));
        return grid with { Rows = [.. grid.Rows.Take(places[0]), heading, .. body] };
    }

    // Lines of a block that say one thing: a dilution, a result, the mean of the readings under its heading.
    private static List<(string Key, Cell Value)> Results(List<GridRow> block)
    {
        var found = new List<(string Key, Cell Value)>();
        GridRow? columns = null;
        foreach (var row in block)
        {
            if (row.At(0).Kind != CellKind.Text || TableLayout.IsNumeric(row.At(0)) || row.At(0).IsBlank)
                continue;
            var label = HeadingReading.Of(row.At(0).Text);
            if (row.Filled > 1 && !row.Cells.Any(TableLayout.IsNumeric))
                columns = row;
            else if (label.HasAny(W.Spread, W.Limit, W.Date))
                continue;
            else if (label.HasAny(W.Dilution, W.Result, W.Concentration) && !label.Has(W.Mean) && Value(row) is { } only)
                found.Add((row.At(0).Text, only));
            else if (label.Has(W.Mean) && columns is not null)
                found.AddRange(Enumerable.Range(1, Math.Max(0, row.Cells.Length - 1)).Where(i => TableLayout.IsNumberLike(row.At(i)) && !columns.At(i).IsBlank).Select(i => (columns.At(i).Text, row.At(i))));
            else if (label.Has(W.Mean) && Value(row) is { } mean)
                found.Add((row.At(0).Text, mean));
        }

        return found;
    }

    private static bool IsName(string text) => HeadingReading.Of(text) is var h && h.Has(W.Sample) && h.Tokens.Length <= 3 && UnitKinds.Of(h.Unit) == UnitKind.None && !h.HasAny(W.Volume, W.Mass, W.Date, W.Role, W.Position, W.Dilution);

    private static Cell? Value(GridRow row) => row.Cells.Skip(1).Where(c => !c.IsBlank).Take(2).ToList() is [var only] ? only : null;
}
