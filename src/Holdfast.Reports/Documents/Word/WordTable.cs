using System.Globalization;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Word;

/// <summary>A table: head repeated on each page, rows kept whole, columns as wide as their words ask.</summary>
internal static class WordTable
{
    // 8 pt letters are about half as wide as high; a cell has margins of 3 pt on both sides.
    private const int LetterWidth = 87;
    private const int HeadLetterWidth = 100;
    private const int CellMargins = 140;

    /// <summary>The least width at which no word is broken, in twentieths of a point.</summary>
    /// <param name="table">The table's element.</param>
    public static int Least(Element table) => (int)new WrittenTable(table, Asked).Least;

    /// <summary>The table.</summary>
    /// <param name="table">The table's element.</param>
    /// <param name="text">Writes its text.</param>
    /// <param name="width">Width of the text, in twentieths of a point.</param>
    public static Table Of(Element table, WordText text, int width)
    {
        var grid = new WrittenTable(table, Asked);
        int[] widths = [.. grid.Widths(width).Select(w => (int)w)];
        var written = new Table(
            new TableProperties(
                new TableStyle { Val = "StudyTable" }, new TableWidth { Width = widths.Sum().ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa },
                new TableLayout { Type = TableLayoutValues.Fixed }, new TableLook { FirstRow = true, LastRow = false, FirstColumn = false, LastColumn = false, NoHorizontalBand = true, NoVerticalBand = true }),
            new TableGrid(widths.Select(w => new GridColumn { Width = w.ToString(CultureInfo.InvariantCulture) })));
        var rows = grid.Rows;
        for (var i = 0; i < rows.Length; i++)
            written.Append(Row(rows[i], grid.IsHead(rows[i]), i < rows.Length - 1 && (grid.IsWhole || i < 2), widths, text));
        return written;
    }

    private static TableRow Row(Element row, bool isHead, bool keepsNext, int[] widths, WordText text)
    {
        var properties = new TableRowProperties(new CantSplit());
        if (isHead)
            properties.Append(new TableHeader());
        var written = new TableRow(properties);
        var cells = WrittenTable.Cells(row);
        for (var c = 0; c < cells.Length; c++)
        {
            var paragraph = WordText.Paragraph("TableText", text.Runs(cells[c].Content, new(Bold: isHead)));
            if (keepsNext)
                paragraph.ParagraphProperties!.Append(new KeepNext());
            if (WrittenTable.IsToTheRight(cells[c]))
                paragraph.ParagraphProperties!.Append(new Justification { Val = JustificationValues.Right });
            written.Append(new TableCell(new TableCellProperties(new TableCellWidth { Width = widths[c].ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa }), paragraph));
        }

        return written;
    }

    private static (double Least, double Wanted) Asked(Element cell)
    {
        var letter = WrittenTable.IsHeading(cell) ? HeadLetterWidth : LetterWidth;
        return ((WrittenTable.Unbroken(cell).Max(w => w.Length) * letter) + CellMargins, (Math.Min(cell.Words.Length, WrittenTable.MostLettersWanted) * letter) + CellMargins);
    }
}
