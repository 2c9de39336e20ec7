using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Holdfast.Studies.Import;

/// <summary>Which cell styles of a workbook show a number as a date, and which fill a cell with colour.</summary>
internal sealed class NumberFormats
{
    private readonly HashSet<uint> dates = [];
    private readonly HashSet<uint> coloured = [];

    /// <summary>Reads the styles of a workbook; a workbook without styles has neither.</summary>
    public NumberFormats(WorkbookPart workbook)
    {
        var sheet = workbook.WorkbookStylesPart?.Stylesheet;
        if (sheet?.CellFormats is not { } formats)
            return;
        var custom = sheet.NumberingFormats?.Elements<NumberingFormat>()
            .Where(f => f.NumberFormatId?.Value is not null)
            .GroupBy(f => f.NumberFormatId!.Value).ToDictionary(g => g.Key, g => g.First().FormatCode?.Value ?? "") ?? [];
        var index = 0u;
        foreach (var format in formats.Elements<CellFormat>())
        {
            var id = format.NumberFormatId?.Value ?? 0;
            if (id is (>= 14 and <= 22) or (>= 27 and <= 36) or (>= 45 and <= 47) or (>= 50 and <= 58) || (custom.TryGetValue(id, out var code) && IsDate(code)))
                dates.Add(index);
            // Fills 0 and 1 are the empty ones that every workbook has.
            if ((format.FillId?.Value ?? 0) > 1)
                coloured.Add(index);
            index++;
        }
    }

    /// <summary>True when a cell of this style shows a date.</summary>
    public bool IsDate(uint? style) => style is { } s && dates.Contains(s);

    /// <summary>True when a cell of this style is filled with a colour.</summary>
    public bool IsColoured(uint? style) => style is { } s && coloured.Contains(s);

    // Letters outside quotation marks, brackets and escapes decide.
    private static bool IsDate(string code)
    {
        var (quoted, bracketed) = (false, false);
        for (var i = 0; i < code.Length; i++)
        {
            var c = code[i];
            if (c == '"')
                quoted = !quoted;
            else if (c is '[' or ']')
                bracketed = c == '[';
            else if (c is '\\' or '_' or '*')
                i++;
            else if (!quoted && !bracketed && char.ToLowerInvariant(c) is 'y' or 'd' or 'm' or 'h')
                return true;
            else if (!quoted && !bracketed && c is '0' or '#' or 'E' or '@')
                return false;
        }
        return false;
    }
}
