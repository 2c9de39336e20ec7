using System.IO.Compression;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Workbooks made for tests.</summary>
internal static class Workbooks
{
    /// <summary>An archive of these parts.</summary>
    public static byte[] Zip(params (string Name, byte[] Bytes)[] parts)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in parts)
            {
                using var part = zip.CreateEntry(name).Open();
                part.Write(bytes);
            }
        }
        return stream.ToArray();
    }

    /// <summary>A workbook of sheets whose cells are words, numbers, cells of their own making, or nothing.</summary>
    public static byte[] Of(params (string Name, bool Hidden, object?[][] Rows)[] sheets) => Of(sheets, merge: null);

    public static byte[] Of((string Name, bool Hidden, object?[][] Rows)[] sheets, string? merge)
    {
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            workbook.Workbook = new Workbook(new Sheets());
            var styles = workbook.AddNewPart<WorkbookStylesPart>();
            styles.Stylesheet = new Stylesheet(new Fonts(new Font()), new Fills(new Fill(), new Fill()), new Borders(new Border()), new CellStyleFormats(new CellFormat()),
                new CellFormats(new CellFormat(), new CellFormat { NumberFormatId = 14, ApplyNumberFormat = true }));
            for (var i = 0; i < sheets.Length; i++)
            {
                var part = workbook.AddNewPart<WorksheetPart>();
                var data = new SheetData();
                foreach (var row in sheets[i].Rows)
                    data.Append(new Row(row.Select(Cell)));
                part.Worksheet = new Worksheet(data);
                if (merge is not null && i == 0)
                    part.Worksheet.Append(new MergeCells(new MergeCell { Reference = merge }));
                workbook.Workbook.Sheets!.Append(new Sheet
                {
                    Name = sheets[i].Name,
                    SheetId = (uint)i + 1,
                    Id = workbook.GetIdOfPart(part),
                    State = sheets[i].Hidden ? SheetStateValues.Hidden : SheetStateValues.Visible,
                });
            }
        }
        return stream.ToArray();
    }

    private static Cell Cell(object? value) => value switch
    {
        Cell made => made,
        string text => new Cell { DataType = CellValues.InlineString, InlineString = new InlineString(new Text(text)) },
        int count => new Cell { CellValue = new CellValue(count) },
        DateTime moment => new Cell { StyleIndex = 1, CellValue = new CellValue(moment.ToOADate()) },
        double number => new Cell { CellValue = new CellValue(number) },
        _ => new Cell(),
    };
}
