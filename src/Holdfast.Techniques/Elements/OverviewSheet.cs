using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>A sheet that sums up what other sheets of its file hold place by place: taken as one more place it would make the scatter too small.</summary>
internal static class OverviewSheet
{
    private const string Words = "ubersicht* uebersicht* overview* summary summaries zusammenfass* gesamt resume* resumen* resumo* recap* riepilog* sintesi* synthes* sintese* zestawieni* podsumowani* przeglad* mittel* mean means average* moyenne* media medias medie srednia srednie";
    private const string LeaveOut = "leave-out", OwnPlace = "a-place-of-its-own";
    private const int FewestPlaces = 2;

    /// <summary>True where the sheet is no place: its amounts are the mean of the other sheets or stand there, or it was answered so. Null while it is asked.</summary>
    /// <param name="source">The sheet and its file.</param>
    /// <param name="table">Its amounts.</param>
    /// <param name="lines">The same, read.</param>
    public static bool? Is(MeasurementSource source, IElementTable table, ImmutableArray<ElementLine> lines)
    {
        var (grid, sums) = (source.Grid, SumsUp(source.Grid, table));
        if (lines.IsEmpty || ElementFiles.IsPlace(grid.Sheet))
            return false;

        // Beside a sheet that is called a summary every other one may be a place; beside any other only those that are called one.
        var others = source.File.Where(g => g != grid).Select(g => (Grid: g, Table: IElementTable.In(g))).Where(g => g.Table is not null && (ElementFiles.IsPlace(g.Grid.Sheet) || (sums && !SumsUp(g.Grid, g.Table))))
            .Select(g => Places(g.Table!, g.Table!.Lines(g.Table.Marks().Mark ?? DecimalMark.Point))).ToList();
        if (others.Count < FewestPlaces)
            return false;
        var places = others.SelectMany(o => o).ToList();
        var known = places.SelectMany(p => p.Keys).Select(k => k.Symbol).ToHashSet(StringComparer.Ordinal);
        var own = Places(table, lines);
        if (!own.TrueForAll(p => p.Keys.All(k => known.Contains(k.Symbol))))
            return false;
        if (own.TrueForAll(p => p.Count > 1 && (IsMean(p, places) || places.Exists(q => Agrees(p, k => q.TryGetValue(k, out var there) ? there.Value : null)))))
        {
            source.Talk.Note(Codes.Duplicate, Weight.Note, $"Sheet {grid.Sheet} repeats or averages the amounts of the other sheets: it is no place of its own and is left out.", grid.Sheet ?? "");
            return true;
        }

        var id = source.Question("overview");
        var answer = source.Talk.Ask(id, Codes.Duplicate, $"Sheet {grid.Sheet} stands beside {others.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} sheets of places, and is not their mean. Does it sum them up, or is it a place of its own?", [LeaveOut, OwnPlace], grid.Sheet ?? "");
        source.Talk.Explain(id, ["its amounts are left out; mean and scatter come from the other sheets", "it counts as one more place in mean and scatter"]);
        return answer is null ? null : answer == LeaveOut;
    }

    private static bool SumsUp(Grid grid, IElementTable table)
        => MeasuredTable.Has(grid.Sheet ?? "", Words) || (!ElementFiles.IsPlace(grid.Sheet) && table.Preamble.Any(r => r.Cells.Any(c => MeasuredTable.Has(c.Text, Words))));

    // Each place: by element and kind, the amount and a unit of its last digit.
    private static List<Dictionary<(string Symbol, string Kind), (double Value, double Rounding)>> Places(IElementTable table, ImmutableArray<ElementLine> lines)
        => [.. lines.GroupBy(l => l.Spot, StringComparer.Ordinal).Select(g => g.SelectMany(l => new[] { (l, Kind: table.HasBoth ? ElementFiles.Mass : table.Kind ?? "", Amount: l.Mass), (l, Kind: ElementFiles.Atomic, Amount: l.Atomic) })
            .Where(a => a.Amount is not null).DistinctBy(a => (a.l.Species.Symbol, a.Kind)).ToDictionary(a => (a.l.Species.Symbol, a.Kind), a => (a.Amount!.Value, Rounding(a.Amount.Value))))];

    private static bool IsMean(Dictionary<(string, string), (double Value, double Rounding)> place, List<Dictionary<(string, string), (double Value, double Rounding)>> places)
        => Agrees(place, k => places.Where(p => p.ContainsKey(k)).Select(p => p[k].Value).DefaultIfEmpty(double.NaN).Average());

    private static bool Agrees(Dictionary<(string, string), (double Value, double Rounding)> place, Func<(string, string), double?> there)
        => place.All(p => there(p.Key) is { } value && Math.Abs(p.Value.Value - value) <= p.Value.Rounding);

    // A unit of the last digit: what was rounded by hand may be off by more than half of it. A workbook does not keep a last zero, so "28.0" is taken as rounded to a tenth.
    private static double Rounding(double value)
    {
        var digits = 1;
        while (digits < 4 && Math.Abs(value - Math.Round(value, digits)) > 1e-9)
            digits++;
        return 1.001 * Math.Pow(10, -digits);
    }
}
