using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Reports of a laboratory with one row a sample and parameter: turned into one row a sample, a column a parameter.</summary>
internal static class LongReport
{
    private const int FewestParameters = 1;

    /// <summary>The report as a table with a column a parameter; null where the table is none.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="analyte">The study's element, or null.</param>
    public static TableLayout? Turn(TableLayout layout, string? analyte)
    {
        if (layout.Heading is null)
            return null;
        var headings = Columns.ReadHeadings(layout);
        var parameter = ParameterColumn(layout, headings);
        if (parameter < 0)
            return null;
        var result = Find(headings, h => h.Has(HeadingWord.Result) && !h.HasAny(HeadingWord.Limit, HeadingWord.Unit, HeadingWord.Spread));
        if (result < 0)
            result = Find(headings, h => h.Has(HeadingWord.Concentration) && !h.Has(HeadingWord.Limit));
        if (result < 0)
            result = Find(headings, h => h.Has(HeadingWord.Mean) && !h.HasAny(HeadingWord.Limit, HeadingWord.Spread));
        var code = CodeColumns.Of(layout, [.. headings.Select((h, i) => i == parameter ? HeadingReading.Of("") : h)]);
        // "Lab no." comes back with every parameter, so it names no row; it names a sample. Two lines of one metal are two readings, and asked about elsewhere.
        if (code < 0 && layout.Body.Select(r => r.At(parameter).Text).Where(n => analyte is not null && SymbolIn(n) == analyte).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1)
            code = Find(headings, h => headings.IndexOf(h) is var i && i != parameter && i != result && UnitKinds.Of(h.Unit) is UnitKind.None && IsKey(layout, i, parameter));
        if (result < 0 || code < 0 || code == parameter)
            return null;
        var unit = Find(headings, h => h.Has(HeadingWord.Unit) && !h.Has(HeadingWord.Limit));
        var line = Find(headings, h => h.Has(HeadingWord.Line));
        var rows = layout.Body.Where(r => !r.IsBlank && !r.At(parameter).IsBlank && !r.Cells.SequenceEqual(layout.Heading.Cells)).ToList();
        string NameOf(GridRow row) => line >= 0 && !row.At(line).IsBlank ? $"{row.At(parameter).Text} {row.At(line).Text}" : row.At(parameter).Text;
        var names = rows.Select(NameOf).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        var units = names.ToDictionary(n => n, n => rows.Where(r => string.Equals(NameOf(r), n, StringComparison.OrdinalIgnoreCase))
            .Select(r => unit >= 0 ? r.At(unit).Text : "").Where(u => u.Length > 0).Distinct(StringComparer.Ordinal).ToList(), StringComparer.OrdinalIgnoreCase);
        // Other facts of a sample that stand beside every one of its rows: its role, its dilution.
        var kept = Enumerable.Range(0, headings.Length).Where(i => i != code && i != parameter && i != result && i != unit && i != line && !headings[i].HasAny(HeadingWord.Limit, HeadingWord.Spread, HeadingWord.Unit)
            // The area of a peak stands beside what was made of it.
            && !(headings[i].Has(HeadingWord.Signal) && (unit >= 0 || UnitKinds.Of(headings[result].Unit) == UnitKind.Concentration))).ToList();
        if (names.Count < FewestParameters)
            return null;
        ImmutableArray<Cell> heading = [new Cell(layout.Headings[code]), .. kept.Select(i => new Cell(layout.Headings[i])), .. names.Select(n => new Cell(Heading(n, units[n], unit < 0 ? headings[result].Unit : null)))];
        var body = rows.GroupBy(r => r.At(code).Text, StringComparer.Ordinal).SelectMany(g => Repeats(g, NameOf)).Select(g =>
        {
            var own = g.Find(r => SymbolIn(NameOf(r)) == analyte && analyte is not null) ?? g[0];
            return new GridRow(own.Number, [own.At(code), .. kept.Select(i => own.At(i)), .. names.Select(n => g.Find(r => string.Equals(NameOf(r), n, StringComparison.OrdinalIgnoreCase)) is { } r ? CellOf(r, result, unit, units[n]) : default)]);
        });
        return new TableLayout(layout.Grid, layout.Preamble, new GridRow(layout.Heading.Number, heading), null, [.. body])
        {
            Notes = layout.Notes,
            Part = layout.Part,
            Turned = $"one row a sample; its parameters {string.Join(", ", names.Take(6))} became columns",
        };
    }

    // The same parameter of the same sample twice is a second reading: a row of its own.
    private static List<List<GridRow>> Repeats(IEnumerable<GridRow> rows, Func<GridRow, string> name)
    {
        var open = new List<List<GridRow>>();
        foreach (var row in rows)
        {
            var place = open.Find(g => !g.Exists(r => string.Equals(name(r), name(row), StringComparison.OrdinalIgnoreCase)));
            if (place is null)
                open.Add(place = []);
            place.Add(row);
        }

        return open;
    }

    private static Cell CellOf(GridRow row, int result, int unit, List<string> units)
        => units.Count > 1 && !row.At(result).IsBlank && !row.At(unit).IsBlank ? new Cell($"{row.At(result).Text} {row.At(unit).Text}") : row.At(result);

    private static string Heading(string name, List<string> units, UnitText? stated)
    {
        var spelled = units is [var one] && HeadingReading.UnitOf(one) is not UnitText.Unknown and not UnitText.Known { Unit.IsOne: true } ? one
            : units.Count == 0 && stated is UnitText.Known { Unit.IsOne: false } known && !name.Equals("pH", StringComparison.OrdinalIgnoreCase) ? known.Unit.Plain : null;
        return spelled is null ? name : $"{name} ({spelled})";
    }

    // A column is about parameters when its heading says so and most of its cells name an element, pH or conductivity.
    private static int ParameterColumn(TableLayout layout, ImmutableArray<HeadingReading> headings)
    {
        for (var i = 0; i < headings.Length; i++)
        {
            // "other ion" is a property of its own, no parameter of a report.
            if (!headings[i].HasAny(HeadingWord.Parameter, HeadingWord.Metal, HeadingWord.Line) || !HeadingWords.Properties(headings[i].Key).IsEmpty)
                continue;
            var cells = layout.Body.Select(r => r.At(i)).Where(c => !c.IsBlank).Take(100).ToList();
            if (cells.Count > 0 && cells.Count(c => SymbolIn(c.Text) is not null) * 3 >= cells.Count)
                return i;
        }

        return -1;
    }

    // With the parameter it is another one in each row; by itself it comes back.
    private static bool IsKey(TableLayout layout, int place, int parameter)
    {
        var rows = layout.Body.Where(r => !r.IsBlank && !r.At(parameter).IsBlank).Select(r => (Name: r.At(place).Text, Parameter: r.At(parameter).Text)).ToList();
        return rows.TrueForAll(r => r.Name.Length > 0) && rows.Distinct().Count() == rows.Count && rows.Select(r => r.Name).Distinct(StringComparer.Ordinal).Count() is > 1 and var names && names < rows.Count;
    }

    private static int Find(ImmutableArray<HeadingReading> headings, Func<HeadingReading, bool> fits)
    {
        for (var i = 0; i < headings.Length; i++)
        {
            if (fits(headings[i]))
                return i;
        }

        return -1;
    }

    // "Lead", "Pb (dissolved)", "Metaal (Pb)".
    private static string? SymbolIn(string name) => ElementNames.SymbolOf(FirstWord(name)) ?? HeadingReading.Of(name).Element;

    private static string FirstWord(string text) => Lexicon.Plain(text).Split([' ', ',', '('], 2)[0];
}
