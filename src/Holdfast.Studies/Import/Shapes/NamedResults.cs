using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>
/// One setting down the side and beside it one column of results a powder: "t (min)", "Ce powder A (mg/L)", "Ce powder B (mg/L)". Columns that differ in a name are no
/// replicates; columns that differ in a number or in a word for replicates are, and stay as they are.
/// </summary>
internal static class NamedResults
{
    private const int FewestNames = 2;

    /// <summary>The table with one row a result and the name as its series; null where it is none.</summary>
    /// <param name="layout">The table.</param>
    public static TableLayout? Turn(TableLayout layout)
    {
        if (layout.Heading is not { } heading || layout.Headings.Length < FewestNames + 1)
            return null;
        var read = layout.Headings.Select((h, i) => (Place: i, Reading: HeadingReading.Of(h, layout.UnitUnder(i)))).Where(c => !heading.At(c.Place).IsBlank).ToList();
        // Vessels with codes of their own have one result each, whatever else stands beside it.
        if (read.Count < FewestNames + 1 || WideSeries.SettingDown(read[0].Reading) is null)
            return null;
        var results = read.Skip(1).ToList();
        if (results.Exists(r => UnitKinds.Of(r.Reading.Unit) != UnitKind.Concentration || !r.Reading.Has(HeadingWord.End) || r.Reading.HasAny(HeadingWord.Spread, HeadingWord.Replicate)
            || r.Reading.Unit != results[0].Reading.Unit))
            return null;

        string[] names = [.. results.Select(r => Name(r.Reading, results.ConvertAll(o => o.Reading)))];
        if (names.Distinct(StringComparer.OrdinalIgnoreCase).Count() < names.Length || Array.Exists(names, n => n.Length == 0))
            return null;
        var rows = layout.Body.Where(r => !r.IsBlank).SelectMany(r => results.Select((c, i) => (c.Place, Name: names[i])).Where(c => !r.At(c.Place).IsBlank).Select(c => new GridRow(r.Number,
            [new Cell($"{c.Name} {read[0].Reading.Name} {r.At(read[0].Place).Text}"), r.At(read[0].Place), r.At(c.Place), new Cell(c.Name)])));
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(heading.Number,
            [new Cell("Sample"), new Cell(WithUnit(layout, read[0].Place)), new Cell(WithUnit(layout, results[0].Place).Replace(results[0].Reading.Name, "Ce", StringComparison.Ordinal)), new Cell("Series")]), null, [.. rows])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a result: {read[0].Reading.Name} down, a column each for {string.Join(" and ", names)}",
        };
    }

    // What is left of the heading without the words that all share: a name where it is more than a number or a lone letter, or where a word for the powder stands with it.
    private static string Name(HeadingReading one, List<HeadingReading> all)
    {
        string[] own = [.. one.Name.Split([' ', ',', ';', '_', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Where(w => !all.TrueForAll(o => o.Name.Contains(w, StringComparison.OrdinalIgnoreCase)) || Lexicon.Of(w).Contains(HeadingWord.Sorbent))];
        var words = own.Where(w => w.Count(char.IsLetter) > 1).ToArray();
        return words.Length > 0 && !Array.TrueForAll(words, w => Lexicon.Of(w) is { Count: > 0 } known && !known.Contains(HeadingWord.Sorbent)) ? string.Join(' ', own) : "";
    }

    private static string WithUnit(TableLayout layout, int place) => layout.Units is { } units && !units.At(place).IsBlank ? $"{layout.Headings[place]} ({units.At(place).Text})" : layout.Headings[place];
}
