using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Lists with one row a sample and item: "jar 1 | mass | 15.0 | mg", "jar 1 | end conc. | 5.839 | mg/L". Turned into one row a sample, a column an item.</summary>
internal static class LongItems
{
    private const int FewestSamples = 2, FewestItems = 2, MostItems = 20;

    /// <summary>The list as a table with a column an item; null where the table is none.</summary>
    /// <param name="layout">The table.</param>
    public static TableLayout? Turn(TableLayout layout)
    {
        // "jar | item | value | unit" names so little that it may not have been taken for a heading.
        var rows = layout.Body.Where(r => !r.IsBlank).ToList();
        if (rows.Count < FewestSamples || (layout.Heading ?? rows[0]) is not { } heading || heading.Cells.Length is < 3 or > 5 || heading.Cells.Any(TableLayout.IsNumberLike))
            return null;
        rows = layout.Heading is null ? rows[1..] : rows;
        var places = Enumerable.Range(0, heading.Cells.Length).ToList();
        var value = places.Where(i => rows.TrueForAll(r => TableLayout.IsNumberLike(r.At(i)))).ToList();
        var unit = places.Where(i => rows.Exists(r => !r.At(i).IsBlank) && rows.TrueForAll(r => r.At(i).IsBlank || HeadingReading.UnitOf(r.At(i).Text) is UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous)).ToList();
        // The unit may have been joined to its number already: "15.0 mg".
        var stated = unit.Count == 1 ? unit[0] : -1;
        if (value is not [var number] || unit.Count > 1 || (stated < 0 && rows.Count(r => CellParts.Split(r.At(number).Text) is not null) * 2 < rows.Count))
            return null;
        var words = places.Where(i => i != number && i != stated && rows.TrueForAll(r => !r.At(i).IsBlank)).ToList();
        if (words is not [var first, var second] || Items(rows, first) is var a && Items(rows, second) is var b && a.Count == b.Count)
            return null;
        // What comes back for every sample names an item, and most of these names mean something.
        var (code, item) = Means(a) > Means(b) ? (second, first) : (first, second);
        var items = Items(rows, item);
        var samples = rows.GroupBy(r => r.At(code).Text, StringComparer.Ordinal).ToList();
        if (samples.Count < FewestSamples || items.Count is < FewestItems or > MostItems || Means(items) * 2 < items.Count || samples.Exists(s => s.Select(r => r.At(item).Text).Distinct(StringComparer.OrdinalIgnoreCase).Count() < s.Count()))
            return null;
        var units = items.ConvertAll(name => stated < 0 ? "" : rows.Where(r => string.Equals(r.At(item).Text, name, StringComparison.OrdinalIgnoreCase)).Select(r => r.At(stated).Text).Distinct(StringComparer.Ordinal).ToList() is [var only] ? only : null);
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number, [heading.At(code).IsBlank ? new Cell("Sample") : heading.At(code), .. items.Select((name, i) => new Cell(units[i] is { Length: > 0 } one ? $"{name} ({one})" : name))]), null,
            [.. samples.Select(s => new GridRow(s.First().Number, [new Cell(s.Key), .. items.Select((name, i) => s.FirstOrDefault(r => string.Equals(r.At(item).Text, name, StringComparison.OrdinalIgnoreCase)) is not { } row ? default : units[i] is null ? new Cell($"{row.At(number).Text} {row.At(stated).Text}") : row.At(number))]))])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a sample; its items {string.Join(", ", items.Take(6))} became columns",
        };
    }

    private static List<string> Items(List<GridRow> rows, int place) => [.. rows.Select(r => r.At(place).Text).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static int Means(List<string> names) => names.Count(n => TableKinds.Meant(HeadingReading.Of(n)) is not null || HeadingReading.Of(n).Words.Count > 0 && !HeadingReading.Of(n).Has(HeadingWord.Sample));
}
