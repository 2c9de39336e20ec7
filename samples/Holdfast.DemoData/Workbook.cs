using System.IO.Compression;
using System.Security;
using System.Text;

namespace Holdfast.DemoData;

/// <summary>
/// A workbook of one sheet. Its parts are stored without compression and without a date, so that the same rows give the same
/// bytes everywhere.
/// </summary>
public static class Workbook
{
    private const string Head = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n";
    private const string Sheets = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Parts = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Packages = "http://schemas.openxmlformats.org/package/2006";
    private const string SheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml";
    private static readonly DateTimeOffset Undated = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The workbook's bytes.</summary>
    /// <param name="sheet">Name of the sheet.</param>
    /// <param name="rows">Words, numbers or nothing, row by row.</param>
    public static byte[] Of(string sheet, IEnumerable<object?[]> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var words = new List<string>();
        var cells = SheetXml(rows, words);
        var strings = string.Concat(words.Select(w => $"<si><t>{SecurityElement.Escape(w)}</t></si>"));
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, "[Content_Types].xml", $"""
                <Types xmlns="{Packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="{SheetType}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="{SheetType}.worksheet+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="{SheetType}.sharedStrings+xml"/></Types>
                """);
            Add(zip, "_rels/.rels", Relations(("officeDocument", "xl/workbook.xml")));
            Add(zip, "xl/workbook.xml", $"""
                <workbook xmlns="{Sheets}" xmlns:r="{Parts}"><sheets><sheet name="{SecurityElement.Escape(sheet)}" sheetId="1" r:id="rId1"/></sheets></workbook>
                """);
            Add(zip, "xl/_rels/workbook.xml.rels", Relations(("worksheet", "worksheets/sheet1.xml"), ("sharedStrings", "sharedStrings.xml")));
            Add(zip, "xl/worksheets/sheet1.xml", $"<worksheet xmlns=\"{Sheets}\"><sheetData>{cells}</sheetData></worksheet>");
            Add(zip, "xl/sharedStrings.xml", $"<sst xmlns=\"{Sheets}\">{strings}</sst>");
        }

        return stream.ToArray();
    }

    private static string SheetXml(IEnumerable<object?[]> rows, List<string> words)
    {
        var xml = new StringBuilder();
        var place = new Dictionary<string, int>(StringComparer.Ordinal);
        var number = 0;
        foreach (var row in rows)
        {
            number++;
            xml.Append(FormattableString.Invariant($"<row r=\"{number}\">"));
            for (var column = 0; column < row.Length; column++)
            {
                var at = FormattableString.Invariant($"{(char)('A' + column)}{number}");
                switch (row[column])
                {
                    case null:
                        break;
                    case string text:
                        if (!place.TryGetValue(text, out var index))
                        {
                            place[text] = index = words.Count;
                            words.Add(text);
                        }

                        xml.Append(FormattableString.Invariant($"<c r=\"{at}\" t=\"s\"><v>{index}</v></c>"));
                        break;
                    case double value:
                        xml.Append(FormattableString.Invariant($"<c r=\"{at}\"><v>{Dialect.Number(value)}</v></c>"));
                        break;
                    case int count:
                        xml.Append(FormattableString.Invariant($"<c r=\"{at}\"><v>{count}</v></c>"));
                        break;
                    default:
                        throw new ArgumentException($"Cell {at} holds neither words nor a number.", nameof(rows));
                }
            }

            xml.Append("</row>");
        }

        return xml.ToString();
    }

    private static string Relations(params (string Type, string Target)[] relations)
        => $"<Relationships xmlns=\"{Packages}/relationships\">" + string.Concat(relations.Select((r, i) =>
            FormattableString.Invariant($"<Relationship Id=\"rId{i + 1}\" Type=\"{Parts}/{r.Type}\" Target=\"{r.Target}\"/>"))) + "</Relationships>";

    private static void Add(ZipArchive zip, string name, string xml)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.NoCompression);
        entry.LastWriteTime = Undated;
        using var part = entry.Open();
        part.Write(Encoding.UTF8.GetBytes(Head + xml));
    }
}
