using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using Holdfast.Reports.Office;

namespace Holdfast.Reports.Workbooks;

/// <summary>A workbook as XLSX (ECMA-376): headings and units stay in sight, formulas are live, the same workbook gives the same bytes.</summary>
internal static class BookFile
{
    private const uint HeadingStyle = 1;
    private const uint UnitStyle = 2;
    private const uint WordsStyle = 3;
    private const uint FirstDecimalStyle = 4;
    private const int MostDecimals = 8;

    // Numbers of a maker's own formats begin here (ECMA-376 part 1, 18.8.30).
    private const uint FirstOwnFormat = 164;
    private const int WidestColumn = 60;

    /// <summary>The bytes of the file.</summary>
    /// <param name="title">Title of the workbook.</param>
    /// <param name="author">Who made it; empty for nobody.</param>
    /// <param name="notice">What is said of it; empty for nothing.</param>
    /// <param name="sheets">Its sheets, with names that differ.</param>
    /// <param name="names">Its names.</param>
    public static byte[] Of(string title, string author, string notice, IReadOnlyList<BookSheet> sheets, IReadOnlyList<BookName> names)
    {
        using var stream = new MemoryStream();
        using (var package = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var book = package.AddNewPart<WorkbookPart>("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml", "rId1");
            book.AddNewPart<WorkbookStylesPart>("rStyles").Stylesheet = Styles();
            var list = new Sheets();
            for (var i = 0; i < sheets.Count; i++)
            {
                var id = string.Create(CultureInfo.InvariantCulture, $"rSheet{i + 1}");
                book.AddNewPart<WorksheetPart>(id).Worksheet = Written(sheets[i]);
                list.Append(new Sheet { Name = OfficeZip.Sound(sheets[i].Name), SheetId = (uint)(i + 1), Id = id });
            }

            book.Workbook = new Workbook(new BookViews(new WorkbookView()), list);
            if (names.Count > 0)
                book.Workbook.Append(new DefinedNames(names.OrderBy(n => n.Name, StringComparer.OrdinalIgnoreCase).Select(n => new DefinedName(Address(n)) { Name = n.Name })));
            // Every number is worked out anew on opening, so that none shown is only remembered.
            book.Workbook.Append(new CalculationProperties { FullCalculationOnLoad = true });
            OfficeZip.Feed(
                package.AddNewPart<CoreFilePropertiesPart>("application/vnd.openxmlformats-package.core-properties+xml", "rId2"), OfficeZip.CoreProperties(title, author, notice, "en-GB"));
        }

        return OfficeZip.Settled(stream.ToArray());
    }

    /// <summary>Address of a cell: "C3".</summary>
    /// <param name="column">Column, from 0.</param>
    /// <param name="row">Row, from 1.</param>
    public static string Cell(int column, int row)
    {
        var letters = "";
        for (var c = column + 1; c > 0; c = (c - 1) / 26)
            letters = (char)('A' + ((c - 1) % 26)) + letters;
        return string.Create(CultureInfo.InvariantCulture, $"{letters}{row}");
    }

    private static string Address(BookName name) => $"'{name.Sheet}'!{Fixed(name.From)}{(name.To is { } to ? ":" + Fixed(to) : "")}";

    private static string Fixed(string cell)
    {
        var letters = cell.TakeWhile(char.IsAsciiLetter).Count();
        return $"${cell[..letters]}${cell[letters..]}";
    }

    private static Worksheet Written(BookSheet sheet)
    {
        var data = new SheetData(Heading(sheet.Headings, 1, HeadingStyle), Heading(sheet.Units, 2, UnitStyle));
        for (var r = 0; r < sheet.Rows.Count; r++)
        {
            var number = BookSheet.FirstRow + r;
            data.Append(new Row(sheet.Rows[r].Select((cell, c) => One(cell, Cell(c, number))).OfType<Cell>()) { RowIndex = (uint)number });
        }

        var first = Cell(0, BookSheet.FirstRow);
        var view = new SheetView(
            new Pane { VerticalSplit = BookSheet.FirstRow - 1, TopLeftCell = first, ActivePane = PaneValues.BottomLeft, State = PaneStateValues.Frozen },
            new Selection { Pane = PaneValues.BottomLeft, ActiveCell = first, SequenceOfReferences = new ListValue<StringValue> { InnerText = first } })
        { WorkbookViewId = 0 };
        var widths = sheet.Headings.Select((h, c) => Math.Clamp(sheet.Rows.Take(200).Select(r => c < r.Count ? Letters(r[c]) : 0).Append(Math.Min(h.Length, 24)).Append(sheet.Units[c].Length).Max() + 2, 9, WidestColumn));
        return new Worksheet(
            new SheetViews(view),
            new Columns(widths.Select((w, c) => new DocumentFormat.OpenXml.Spreadsheet.Column { Min = (uint)(c + 1), Max = (uint)(c + 1), Width = w, CustomWidth = true })),
            data);
    }

    private static Row Heading(IReadOnlyList<string> words, int row, uint style)
        => new(words.Select((w, c) => Words(w, Cell(c, row), style))) { RowIndex = (uint)row };

    private static Cell? One(BookCell cell, string address) => cell switch
    {
        WordsCell { Text.Length: 0 } => null,
        WordsCell words => Words(words.Text, address, WordsStyle),
        FigureCell figure => new Cell(new CellValue(figure.Value.ToString("R", CultureInfo.InvariantCulture))) { CellReference = address, StyleIndex = Style(figure.Decimals) },
        FormulaCell formula => new Cell(new CellFormula(formula.Formula), new CellValue(formula.Value.ToString("R", CultureInfo.InvariantCulture))) { CellReference = address, StyleIndex = Style(formula.Decimals) },
        _ => throw new ArgumentOutOfRangeException(nameof(cell), cell, "No such cell."),
    };

    private static Cell Words(string text, string address, uint style)
        => new(new InlineString(new Text(OfficeZip.Sound(text)) { Space = SpaceProcessingModeValues.Preserve })) { CellReference = address, DataType = CellValues.InlineString, StyleIndex = style };

    private static int Letters(BookCell cell) => cell is WordsCell words ? words.Text.Length : 10;

    private static uint Style(int? decimals) => decimals is { } places ? FirstDecimalStyle + (uint)Math.Clamp(places, 0, MostDecimals) : 0;

    private static Stylesheet Styles()
    {
        var decimals = Enumerable.Range(0, MostDecimals + 1).ToArray();
        return new(
            new NumberingFormats(decimals.Select(d => new NumberingFormat { NumberFormatId = FirstOwnFormat + (uint)d, FormatCode = d == 0 ? "0" : "0." + new string('0', d) })),
            new DocumentFormat.OpenXml.Spreadsheet.Fonts(new Font(new FontSize { Val = 10 }, new FontName { Val = "Arial" }), new Font(new Bold(), new FontSize { Val = 10 }, new FontName { Val = "Arial" }), new Font(new Italic(), new FontSize { Val = 10 }, new FontName { Val = "Arial" })),
            new Fills(new Fill(new PatternFill { PatternType = PatternValues.None }), new Fill(new PatternFill { PatternType = PatternValues.Gray125 })),
            new Borders(new Border(), new Border(new LeftBorder(), new RightBorder(), new TopBorder(), new BottomBorder { Style = BorderStyleValues.Thin }, new DiagonalBorder())),
            new CellStyleFormats(new CellFormat()),
            new CellFormats(
            [
                new CellFormat { FontId = 0 },
                new CellFormat(new Alignment { WrapText = true, Vertical = VerticalAlignmentValues.Bottom }) { FontId = 1, ApplyFont = true, ApplyAlignment = true },
                new CellFormat { FontId = 2, BorderId = 1, ApplyFont = true, ApplyBorder = true },
                // Format 49 is text; the prefix keeps it so when a cell is edited.
                new CellFormat { NumberFormatId = 49, ApplyNumberFormat = true, QuotePrefix = true },
                .. decimals.Select(d => new CellFormat { NumberFormatId = FirstOwnFormat + (uint)d, ApplyNumberFormat = true }),
            ]));
    }
}
