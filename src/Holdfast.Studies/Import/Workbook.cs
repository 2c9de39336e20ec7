using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using Holdfast.Studies.History;
using Sheets = DocumentFormat.OpenXml.Spreadsheet;

namespace Holdfast.Studies.Import;

/// <summary>Workbooks (XLSX): values are read and formulas noted; merged cells, colours and hidden sheets are said to carry meaning that is lost.</summary>
public sealed class Workbook : IFileReader
{
    /// <inheritdoc/>
    public string Name => "workbook";

    /// <inheritdoc/>
    public int Order => 10;

    /// <inheritdoc/>
    public bool Recognises(ReadOnlySpan<byte> bytes)
        => bytes.StartsWith("PK\u0003\u0004"u8) && bytes.IndexOf("xl/workbook.xml"u8) >= 0;

    /// <inheritdoc/>
    public ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel)
    {
        ArchiveGuard.Check(bytes, fileName, cancel);
        try
        {
            using var document = SpreadsheetDocument.Open(new MemoryStream(bytes, writable: false), isEditable: false,
                new OpenSettings { AutoSave = false, MaxCharactersInPart = Limits.Unpacked });
            var workbook = document.WorkbookPart ?? throw ArchiveGuard.Damaged(fileName, "it holds no workbook");
            var words = Words(workbook);
            var formats = new NumberFormats(workbook);
            var from1904 = workbook.Workbook?.WorkbookProperties?.Date1904?.Value ?? false;
            var grids = ImmutableArray.CreateBuilder<Grid>();
            var read = new HashSet<WorksheetPart>();
            var cells = new CellBudget(fileName);
            foreach (var sheet in workbook.Workbook?.Sheets?.Elements<Sheet>() ?? [])
            {
                cancel.ThrowIfCancellationRequested();
                if (sheet.Id?.Value is not { } id || workbook.GetPartById(id) is not WorksheetPart part)
                    continue;
                // A few bytes could otherwise stand for any number of sheets. No program that keeps tables writes one part for two.
                if (!read.Add(part))
                    throw ArchiveGuard.Damaged(fileName, "several of its sheets are one and the same part");
                var reader = new SheetReader(sheet.Name?.Value ?? "sheet", fileName, words, formats, from1904, cells, cancel);
                var hidden = sheet.State is not null && sheet.State.Value != SheetStateValues.Visible;
                grids.Add(reader.Read(part) with { IsHidden = hidden });
            }
            return grids.ToImmutable();
        }
        catch (Exception e) when (e is OpenXmlPackageException or XmlException or FileFormatException or InvalidDataException or IOException or ArgumentException
            or FormatException or InvalidOperationException or OverflowException)
        {
            throw ArchiveGuard.Damaged(fileName, "its parts do not make a workbook", e);
        }
    }

    private static List<string> Words(WorkbookPart workbook)
    {
        var words = new List<string>();
        if (workbook.SharedStringTablePart is not { } part)
            return words;
        using var reader = new OpenXmlPartReader(part);
        while (reader.Read())
        {
            if (reader.ElementType == typeof(SharedStringItem) && reader.IsStartElement)
                words.Add(SheetReader.TextOf((SharedStringItem)reader.LoadCurrentElement()!));
        }
        return words;
    }

    private sealed class CellBudget(string fileName)
    {
        private int left = Limits.Cells;

        public void Take(int cells)
        {
            left -= cells;
            if (left < 0)
                throw Limits.Exceeded(fileName, "more than 10 000 000 cells");
        }
    }

    private sealed class SheetReader(string name, string fileName, List<string> words, NumberFormats formats, bool from1904, CellBudget budget, CancellationToken cancel)
    {
        private int formulas, merged, coloured;
        private readonly List<string> unvalued = [];

        public Grid Read(WorksheetPart part)
        {
            var rows = ImmutableArray.CreateBuilder<GridRow>();
            using var reader = new OpenXmlPartReader(part);
            while (reader.Read())
            {
                if (!reader.IsStartElement)
                    continue;
                if (reader.ElementType == typeof(Row))
                {
                    cancel.ThrowIfCancellationRequested();
                    Add(rows, (Row)reader.LoadCurrentElement()!);
                }
                else if (reader.ElementType == typeof(MergeCell))
                {
                    merged += Fill(rows, ((MergeCell)reader.LoadCurrentElement()!).Reference?.Value) ? 0 : 1;
                }
            }
            return new Grid(name, rows.ToImmutable())
            {
                Findings = Findings(),
                RawLines = [.. rows.Take(12).Select(r => string.Join('\t', r.Cells.Select(c => c.Content)))],
            };
        }

        // A cell merged down a column holds for each of its rows, as "10 mg/L" beside three flasks; a heading over its line of units does not.
        private bool Fill(ImmutableArray<GridRow>.Builder rows, string? reference)
        {
            if (reference?.Split(':') is not [var first, var last] || ColumnOf(first) is var column && column != ColumnOf(last) || rows.Count == 0 || RowOf(first) - rows[0].Number is not (>= 0 and var from) || from >= rows.Count)
                return false;
            var (value, height) = (rows[from].At(column), Math.Min(RowOf(last) - rows[0].Number, rows.Count - 1) - from + 1);
            if (height < 2 || value.IsBlank || (value.Kind == CellKind.Text && height < 3 && !char.IsDigit(value.Text[0])))
                return false;
            budget.Take(height * (column + 1));
            for (var i = from + 1; i < from + height; i++)
            {
                var cells = rows[i].Cells.ToBuilder();
                while (cells.Count <= column)
                    cells.Add(default);
                cells[column] = value;
                rows[i] = rows[i] with { Cells = cells.ToImmutable() };
            }

            return true;
        }

        private static int RowOf(string reference) => int.TryParse(reference.AsSpan(reference.AsSpan().IndexOfAnyInRange('0', '9') is >= 0 and var at ? at : reference.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : 0;

        private void Add(ImmutableArray<GridRow>.Builder rows, Row row)
        {
            var number = (int)(row.RowIndex?.Value ?? (uint)((rows.Count == 0 ? 0 : rows[^1].Number) + 1));
            if (number > Limits.Rows)
                throw Limits.Exceeded(fileName, "more than 2 000 000 rows");
            // Rows that the file leaves out are blank ones.
            if (rows.Count > 0 && rows[^1].Number + 1 < number)
                budget.Take(number - rows[^1].Number - 1);
            while (rows.Count > 0 && rows[^1].Number + 1 < number && rows.Count < Limits.Rows)
                rows.Add(new GridRow(rows[^1].Number + 1, []));
            var cells = new List<Cell>();
            foreach (var cell in row.Elements<Sheets.Cell>())
            {
                var column = cell.CellReference?.Value is { } reference ? ColumnOf(reference) : cells.Count;
                if (column >= Limits.Columns)
                    throw Limits.Exceeded(fileName, "more than 4096 columns");
                while (cells.Count < column)
                    cells.Add(default);
                var read = Read(cell, number);
                if (cells.Count == column)
                    cells.Add(read);
                else
                    cells[column] = read;
            }
            budget.Take(cells.Count + 1);
            rows.Add(new GridRow(number, [.. cells]));
        }

        private Cell Read(Sheets.Cell cell, int row)
        {
            coloured += formats.IsColoured(cell.StyleIndex?.Value) && cell.CellValue is not null ? 1 : 0;
            var value = cell.CellValue?.Text;
            if (cell.CellFormula is not null)
            {
                formulas++;
                if (string.IsNullOrEmpty(value))
                {
                    unvalued.Add(cell.CellReference?.Value ?? "row " + Ordinal.Text(row));
                    return new Cell("=" + cell.CellFormula.Text, CellKind.FormulaWithoutValue);
                }
            }
            var type = cell.DataType?.Value;
            if (type == CellValues.InlineString)
                return Words(cell.InlineString is { } inline ? TextOf(inline) : null);
            if (value is null)
                return default;
            if (type == CellValues.SharedString)
                return int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < words.Count ? Words(words[i]) : new Cell(value, CellKind.Error);
            if (type == CellValues.String)
                return Words(value);
            if (type == CellValues.Error)
                return new Cell(value, CellKind.Error);
            if (type == CellValues.Boolean)
                return new Cell(value == "1" ? "TRUE" : "FALSE");
            if (type == CellValues.Date)
                return new Cell(value, CellKind.Date);
            return formats.IsDate(cell.StyleIndex?.Value) && Serial(value) is { } date ? new Cell(date, CellKind.Date) : new Cell(value, CellKind.Number);
        }

        private Cell Words(string? text)
            => text?.Length > Limits.Cell ? throw Limits.Exceeded(fileName, "a cell of more than 32 767 characters") : new Cell(FullWidth.Narrow(text));

        // Days since 1899-12-30, or since 1904-01-01 in workbooks that say so.
        private string? Serial(string value)
        {
            if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var days) || days is not (> 0 and < 2_958_466))
                return null;
            var date = (from1904 ? new DateTime(1904, 1, 1) : new DateTime(1899, 12, 30)).AddDays(days);
            // A share of a day is no whole number of seconds: 09:04 would become 09:03:59.
            date = new DateTime((date.Ticks + (TimeSpan.TicksPerSecond / 2)) / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond);
            return date.ToString(date.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture);
        }

        private ImmutableArray<Finding> Findings()
        {
            var findings = ImmutableArray.CreateBuilder<Finding>();
            if (merged > 0)
                findings.Add(Lost(merged, "merged range", "Only the first cell of each holds its value."));
            if (coloured > 0)
                findings.Add(Lost(coloured, "coloured cell", "What a colour means is not read."));
            if (formulas > 0)
                findings.Add(Finding.Of(Codes.MeaningLost, Weight.Note, $"Sheet {name} has {Ordinal.Text(formulas)} formulas. Their stored results are read; the formulas stay in the original.", name));
            if (unvalued.Count > 0)
            {
                findings.Add(Finding.Of(Codes.OddCell, Weight.Caution, $"Sheet {name} has {Ordinal.Text(unvalued.Count)} formulas without a stored result ({string.Join(", ", unvalued.Take(5))}). "
                    + "They are read as nothing. Open and save it once.", name));
            }
            return findings.ToImmutable();
        }

        private Finding Lost(int count, string what, string meaning)
            => Finding.Of(Codes.MeaningLost, Weight.Caution, $"Sheet {name} has {Ordinal.Text(count)} {what}{(count == 1 ? "" : "s")}, whose meaning is lost. {meaning}", name);

        private static int ColumnOf(string reference)
        {
            var column = 0;
            foreach (var c in reference)
            {
                if (!char.IsAsciiLetterUpper(c))
                    break;
                column = checked((column * 26) + c - 'A' + 1);
                if (column > Limits.Columns)
                    return Limits.Columns;
            }
            return Math.Max(column - 1, 0);
        }

        // Rich text "C" + "e" in runs is "Ce"; a reading aid for East Asian text is no part of it.
        public static string TextOf(OpenXmlElement item)
            => string.Concat(item.Descendants<Text>().Where(t => t.Parent is not PhoneticRun).Select(t => t.Text));
    }
}
