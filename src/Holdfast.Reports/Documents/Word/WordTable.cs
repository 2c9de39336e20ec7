using System.Globalization;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Word;

/// <summary>A table: head repeated on each page, rows kept whole, columns as wide as their words ask.</summary>
internal static class WordTable
{
    // 7.5 pt letters are about half as wide as high; a cell has margins of 3 pt on both sides.
    private const int LetterWidth = 82;
    private const int HeadLetterWidth = 94;
    private const int CellMargins = 140;
    private const int MostLettersWanted = 110;

    // A table of this few letters fits a third of a page and is not broken over pages.
    private const int FewLetters = 1200;

    /// <summary>The least width at which no word is broken, in twentieths of a point.</summary>
    /// <param name="table">The table's element.</param>
    public static int Least(Element table) => Asked([.. Rows(table)]).Least.Sum();

    /// <summary>The table.</summary>
    /// <param name="table">The table's element.</param>
    /// <param name="text">Writes its text.</param>
    /// <param name="width">Width of the text, in twentieths of a point.</param>
    public static Table Of(Element table, WordText text, int width)
    {
        Element[] rows = [.. Rows(table)];
        var widths = Widths(rows, width);
        var head = WordText.All(table).Where(e => e.Name == "thead").SelectMany(h => h.Content.OfType<Element>()).ToHashSet(ReferenceEqualityComparer.Instance);
        var written = new Table(
            new TableProperties(
                new TableStyle { Val = "StudyTable" }, new TableWidth { Width = widths.Sum().ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa },
                new TableLayout { Type = TableLayoutValues.Fixed }, new TableLook { FirstRow = true, LastRow = false, FirstColumn = false, LastColumn = false, NoHorizontalBand = true, NoVerticalBand = true }),
            new TableGrid(widths.Select(w => new GridColumn { Width = w.ToString(CultureInfo.InvariantCulture) })));
        var whole = rows.Sum(r => WordText.Text(r.Content).Length) <= FewLetters;
        for (var i = 0; i < rows.Length; i++)
            written.Append(Row(rows[i], head.Contains(rows[i]), i < rows.Length - 1 && (whole || i < 2), widths, text));
        return written;
    }

    private static TableRow Row(Element row, bool isHead, bool keepsNext, int[] widths, WordText text)
    {
        var properties = new TableRowProperties(new CantSplit());
        if (isHead)
            properties.Append(new TableHeader());
        var written = new TableRow(properties);
        var cells = Cells(row).ToArray();
        for (var c = 0; c < cells.Length; c++)
        {
            var paragraph = WordText.Paragraph("TableText", text.Runs(cells[c].Content, new(Bold: isHead)));
            if (keepsNext)
                paragraph.ParagraphProperties!.Append(new KeepNext());
            if (WordText.IsOf(cells[c], "number") || WordText.IsOf(cells[c], "missing"))
                paragraph.ParagraphProperties!.Append(new Justification { Val = JustificationValues.Right });
            written.Append(new TableCell(new TableCellProperties(new TableCellWidth { Width = widths[c].ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa }), paragraph));
        }

        return written;
    }

    // As a browser does it: each column gets its longest word, and what is left goes by what the columns would like.
    private static int[] Widths(Element[] rows, int width)
    {
        var (least, wanted) = Asked(rows);
        if (least.Sum() >= width)
            return [.. least.Select(l => (int)((long)l * width / least.Sum()))];
        var (left, asked) = (width - least.Sum(), wanted.Sum() - least.Sum());
        return asked <= left ? wanted : [.. least.Select((l, c) => l + (int)((long)left * (wanted[c] - l) / asked))];
    }

    private static (int[] Least, int[] Wanted) Asked(Element[] rows)
    {
        var columns = rows.Select(r => Cells(r).Count()).DefaultIfEmpty(0).Max();
        var (least, wanted) = (new int[columns], new int[columns]);
        foreach (var row in rows)
        {
            foreach (var (cell, c) in Cells(row).Select((cell, c) => (cell, c)))
            {
                var (text, letter) = (WordText.Text(cell.Content), cell.Attribute("scope") == "col" ? HeadLetterWidth : LetterWidth);
                // A number and its uncertainty stay in one line.
                var longest = WordText.IsOf(cell, "number") && letter == LetterWidth ? text.Length : text.Split(' ').Max(w => w.Length);
                least[c] = Math.Max(least[c], (longest * letter) + CellMargins);
                wanted[c] = Math.Max(wanted[c], (Math.Min(text.Length, MostLettersWanted) * letter) + CellMargins);
            }
        }

        return (least, wanted);
    }

    private static IEnumerable<Element> Rows(Element table) => WordText.All(table).Where(e => e.Name == "tr");

    private static IEnumerable<Element> Cells(Element row) => row.Content.OfType<Element>().Where(e => e.Name is "td" or "th");
}
