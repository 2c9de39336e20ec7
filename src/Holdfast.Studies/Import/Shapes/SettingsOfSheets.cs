using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>A table with one row a sheet: what holds for all vessels of that sheet, under the sheet's name.</summary>
internal static class SettingsOfSheets
{
    private const int FewestSheets = 2, FewestSettings = 2;

    /// <summary>True where the rows of a table are named like other sheets of the file.</summary>
    /// <param name="table">The table.</param>
    /// <param name="tables">All tables of the file.</param>
    public static bool Are(TableLayout table, IEnumerable<TableLayout> tables)
    {
        var sheets = tables.Where(t => t.Grid.Sheet != table.Grid.Sheet).Select(t => Plain(t.Grid.Sheet)).Where(s => s.Length > 0).ToHashSet(StringComparer.Ordinal);
        if (sheets.Count == 0)
            return false;
        var names = table.Body.Where(r => !r.IsBlank).Select(r => Plain(r.At(0).Text)).ToList();
        return table.Heading is not null && names.Count >= FewestSheets && names.Distinct(StringComparer.Ordinal).Count() == names.Count && names.Count(sheets.Contains) * 2 > names.Count;
    }

    /// <summary>What such a table says of one sheet.</summary>
    /// <param name="settings">The table.</param>
    /// <param name="sheet">Name of the sheet.</param>
    /// <param name="analyte">The study's element, or null.</param>
    public static Notes Of(TableLayout settings, string? sheet, string? analyte)
    {
        if (settings.Body.FirstOrDefault(r => Plain(r.At(0).Text) == Plain(sheet)) is not { } row || Plain(sheet).Length == 0)
            return Notes.None;
        return Notes.Of(Enumerable.Range(1, Math.Max(0, settings.Headings.Length - 1)).Where(i => TableLayout.IsNumberLike(row.At(i)))
            .Select(i => new GridRow(row.Number, [new Cell(settings.UnitUnder(i) is { Length: > 0 } unit ? $"{settings.Headings[i]} ({unit})" : settings.Headings[i]), row.At(i)])), analyte);
    }

    /// <summary>True for "quantity | value | unit" with one setting a line: it speaks of the vessels of other tables.</summary>
    /// <param name="layout">The table.</param>
    public static bool IsList(TableLayout layout)
    {
        if (layout.Heading is not { } heading || layout.Headings.Length is < 2 or > 4 || heading.Cells.Any(TableLayout.IsNumberLike) || !heading.Cells.Skip(1).Any(c => Lexicon.Of(c.Text) is var said && (said.Contains(HeadingWord.Unit) || said.Contains(HeadingWord.Result))))
            return false;
        var rows = layout.Body.Where(r => !r.IsBlank).ToList();
        var settings = rows.Where(r => TableLayout.IsNumberLike(r.At(1)) && !TableLayout.IsNumberLike(r.At(0))).SelectMany(r => Notes.Of([r]).All).Select(n => n.Property).ToList();
        return settings.Count >= FewestSettings && settings.Count * 2 > rows.Count && settings.Distinct().Count() == settings.Count;
    }

    private static string Plain(string? name) => string.Concat(Lexicon.Tokens(name ?? ""));
}
