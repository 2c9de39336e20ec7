using Holdfast.Amounts;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Tables;

/// <summary>A table as HTML: real headers with scope, caption, numbers aligned at the decimal mark, notes below.</summary>
public static class TableHtml
{
    // Spaces as wide as a figure and as a decimal mark: they push the mark of shorter numbers into line.
    private const char FigureSpace = '\u2007';
    private const char MarkSpace = '\u2008';

    /// <summary>The table and its notes.</summary>
    /// <param name="table">The table.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="idPrefix">Put before the id, so that one table may stand twice on a page.</param>
    public static Element Of(Table table, DecimalMark mark = DecimalMark.Point, string idPrefix = "")
    {
        ArgumentNullException.ThrowIfNull(table);
        var shown = table.Rows.Select(r => r.Cells.Select(c => Shown(c, mark)).ToArray()).ToArray();
        var tails = Enumerable.Range(0, table.Columns.Count)
            .Select(c => shown.Where((_, r) => IsNumber(table.Rows[r].Cells[c])).Select(s => Tail(s[c], mark)).DefaultIfEmpty(0).Max()).ToArray();
        var grid = Html.Element(
            "table",
            [("id", idPrefix + table.Id)],
            Html.Element("caption", RichTextNodes.Of(table.Caption)),
            Html.Element("thead", Html.Element("tr", table.Columns.Select((c, i) => Heading(c, table.Rows.Any(r => IsNumber(r.Cells[i])))))),
            Html.Element("tbody", table.Rows.Select((row, r) => Html.Element(
                "tr",
                [("class", row.Struck ? "struck" : row.Doubtful ? "doubtful" : null)],
                row.Cells.Select((cell, c) => Draw(table.Columns[c], row, cell, shown[r][c], tails[c], mark))))));
        return Html.Element("div", [("class", "table-block")], [grid, .. Notes(table)]);
    }

    private static IEnumerable<Node> Notes(Table table)
    {
        var notes = table.AllNotes;
        if (notes.Count > 0)
            yield return Html.Element("p", [("class", "table-notes")], notes.SelectMany((n, i) => i == 0 ? RichTextNodes.Of(n) : [" ", .. RichTextNodes.Of(n)]));
    }

    private static Element Heading(Column column, bool isNumber)
    {
        var heading = RichTextNodes.Of(column.Heading);
        var unit = string.IsNullOrWhiteSpace(column.Unit) ? [] : RichTextNodes.Of(RichText.Quantity("", column.Unit));
        return Html.Element("th", [("scope", "col"), ("class", isNumber ? "number" : null), ("aria-label", column.SpokenHeading)], [.. heading, .. unit]);
    }

    private static Element Draw(Column column, Row row, Cell cell, string shown, int tail, DecimalMark mark)
    {
        IReadOnlyList<Node> content = cell is TextCell text ? RichTextNodes.Of(text.Text) : Raised(shown);
        if (row.Struck && cell is not MissingCell)
            content = [Html.Element("s", content)];
        if (cell.Address is { } address)
            content = [Html.Element("a", [("href", address)], content)];
        if (row.Doubtful && column.NamesRows)
            content = [.. content, " †"];
        if (IsNumber(cell) && tail > Tail(shown, mark))
            content = [.. content, Html.Element("span", [("class", "pad"), ("aria-hidden", "true")], Pad(shown, tail, mark))];
        var kind = cell switch { TextCell => "text", MissingCell => "missing", _ => "number" };
        return column.NamesRows
            ? Html.Element("th", [("scope", "row"), ("class", kind)], content)
            : Html.Element("td", [("class", kind)], content);
    }

    // A common power of ten is raised, not written with a caret.
    private static IReadOnlyList<Node> Raised(string shown)
        => shown.IndexOf("10^", StringComparison.Ordinal) is >= 0 and var at
            ? [shown[..(at + 2)], Html.Element("sup", shown[(at + 3)..].Replace('-', '\u2212'))]
            : [shown];

    private static string Shown(Cell cell, DecimalMark mark) => cell switch
    {
        TextCell text => text.Text.Plain,
        NumberCell number => number.Shown(mark),
        MeasuredCell measured => measured.Shown(mark),
        CensoredCell censored => censored.Shown(mark),
        MissingCell missing => missing.Code,
        _ => throw new ArgumentOutOfRangeException(nameof(cell), cell, "No such cell."),
    };

    private static bool IsNumber(Cell cell) => cell is NumberCell or MeasuredCell;

    // How many characters stand from the decimal mark of the value on, the mark included.
    private static int Tail(string shown, DecimalMark mark) => shown.Length - Whole(shown, mark);

    private static int Whole(string shown, DecimalMark mark)
    {
        var end = shown.IndexOfAny([mark == DecimalMark.Comma ? ',' : '.', ' ']);
        return end < 0 ? shown.Length : end;
    }

    private static string Pad(string shown, int tail, DecimalMark mark)
    {
        var missing = tail - Tail(shown, mark);
        return Tail(shown, mark) == 0 ? MarkSpace + new string(FigureSpace, missing - 1) : new string(FigureSpace, missing);
    }
}
