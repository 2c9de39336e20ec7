using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>What a file's cells say about its decimal mark. It is settled once for the file, never cell by cell.</summary>
/// <param name="Mark">The mark, or null when the file must be asked about.</param>
/// <param name="Reason">Why, in words.</param>
/// <param name="Example">The cell that the question shows, when there is one.</param>
internal sealed partial record DecimalEvidence(DecimalMark? Mark, string Reason, string? Example)
{
    private const string Both = "both";

    /// <summary>A cell with a point where others have commas, and each can be read in one way only; null elsewhere.</summary>
    public string? Other { get; init; }

    /// <summary>Weighs the cells of a table.</summary>
    /// <param name="layout">The table; a line before the heading may state the mark.</param>
    /// <param name="columns">Columns that hold numbers; codes and words are no evidence.</param>
    public static DecimalEvidence Of(TableLayout layout, IReadOnlyCollection<int> columns)
    {
        var (comma, point, commaDoubt, pointDoubt) = (0, 0, 0, 0);
        string? commaCell = null, pointCell = null;
        foreach (var row in layout.Preamble)
        {
            if (Stated(row) is { } stated)
                return new(stated, "line " + Ordinal.Text(row.Number) + " says so", null);
        }
        foreach (var row in layout.Body)
        {
            foreach (var column in columns)
            {
                var cell = row.At(column);
                if (cell.Kind != CellKind.Text || cell.Text.AsSpan().IndexOfAny('.', ',') < 0)
                    continue;
                if (Grouped().IsMatch(cell.Text))
                {
                    // "1,298,228": two commas part thousands, so the decimal mark is the point.
                    return new(cell.Text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Point : DecimalMark.Comma, $"{cell.Text} parts its thousands with the other mark", null);
                }
                if (MarkOf(cell.Text) is not var (mark, certain))
                    continue;
                if (mark == ',')
                {
                    (comma, commaDoubt) = certain ? (comma + 1, commaDoubt) : (comma, commaDoubt + 1);
                    commaCell ??= cell.Text;
                }
                else
                {
                    (point, pointDoubt) = certain ? (point + 1, pointDoubt) : (point, pointDoubt + 1);
                    pointCell ??= cell.Text;
                }
            }
        }
        if (comma > 0 && point > 0 && commaDoubt + pointDoubt == 0)
            return new(null, "cells are written with both marks, each in one way only", commaCell) { Other = pointCell };
        if (comma > 0 && point > 0)
            return new(null, "cells are written with both marks", commaCell);
        if (comma > 0)
            return new(DecimalMark.Comma, $"{commaCell} can only be written with a comma", null);
        if (point > 0)
            return new(DecimalMark.Point, $"{pointCell} can only be written with a point", null);
        if (commaDoubt > 0 && pointDoubt > 0)
            return new(null, "cells are written with both marks", commaCell);
        // Semicolons go with decimal commas; a whole column of "4,500", "8,000" with grouped thousands as well.
        if (commaDoubt > 0)
        {
            return layout.Grid.Separator == ";" && !columns.Any(c => IsRound(layout, c))
                ? new(DecimalMark.Comma, "cells are separated by semicolons", null)
                : new(null, $"{commaCell} is the only evidence", commaCell);
        }
        // With semicolons a point may group thousands; elsewhere a lone point is the decimal mark.
        return pointDoubt > 0 && layout.Grid.Separator == ";"
            ? new(null, $"{pointCell} is the only evidence", pointCell)
            : new(DecimalMark.Point, pointDoubt > 0 ? "numbers are written with a point" : "no number needs a mark", null);
    }

    // Nobody writes 4.5 as 4,500 all the way down, unless an instrument did.
    private static bool IsRound(TableLayout layout, int column)
    {
        const int fewest = 3;
        var cells = layout.Body.Select(r => r.At(column)).Where(c => c.Kind == CellKind.Text && c.Text.Contains(',', StringComparison.Ordinal)).ToList();
        return cells.Count >= fewest && cells.TrueForAll(c => c.Text.EndsWith("00", StringComparison.Ordinal));
    }

    // The last mark of a number, and whether it can only be the decimal mark.
    private static (char Mark, bool IsCertain)? MarkOf(string text)
    {
        if (CellText.IsPlainNumber(text))
        {
            var at = text.AsSpan().IndexOfAny('.', ',');
            return (text[at], IsCertain(text.AsSpan(text[0] == '-' ? 1 : 0, text[0] == '-' ? at - 1 : at), text.Length - at - 1));
        }

        return Numeric().Match(NumberIn(text)) is { Success: true } m
            ? (m.Groups["mark"].Value[^1], m.Groups["mark"].Length > 1 || IsCertain(m.Groups["head"].ValueSpan, m.Groups["tail"].Length)) : null;
    }

    // "1,234" may be grouped, "0,234" and "1234,567" are not.
    private static bool IsCertain(ReadOnlySpan<char> head, int tail) => tail != 3 || head.TrimStart('0').Length is 0 or > 3;

    /// <summary>The mark that holds, asked about where the cells leave it open; null while it is.</summary>
    /// <param name="talk">Where the question goes.</param>
    /// <param name="mayBeBoth">True where people type the numbers; an instrument that writes a scan has one mark.</param>
    public DecimalMark? Settle(Dialogue talk, bool mayBeBoth = false)
    {
        var answer = talk.Answers.To("decimal");
        if (Other is not null && mayBeBoth)
            answer = talk.Assume("decimal", Codes.Ambiguous, $"Numbers are written with commas ({Example}) and with points ({Other}). None of them can group thousands, so both are read as decimal marks.", [Both, "comma", "point"]);
        else if (Mark is null)
        {
            talk.Ask("decimal", Codes.Ambiguous, Example is { } cell && cell.Count(c => c is ',' or '.') == 1 && Reason.EndsWith("only evidence", StringComparison.Ordinal)
                ? $"{cell} could be {cell.Replace(',', '.')} or {cell.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal)}. Which decimal mark does this instrument write?"
                : $"This file holds numbers with points and with commas ({Example}). Which is the decimal mark? Cells with the other are then kept as text.", ["point", "comma"]);
        }

        return answer?.ToLowerInvariant() switch
        {
            null or Both => Mark,
            "point" or "." => DecimalMark.Point,
            "comma" or "," => DecimalMark.Comma,
            _ => throw new StudyException(Codes.Ambiguous, $"The decimal mark is point or comma, not {answer}. Nothing is kept."),
        };
    }

    // "14,99 ± 0,11" and "14,9 mg" are evidence as well.
    private static string NumberIn(string text) => CellParts.Scatter(text)?.Number ?? CellParts.Split(text)?.Number ?? CellParts.Remarked(text) ?? text;

    private static DecimalMark? Stated(GridRow row)
    {
        if (row.Filled is < 1 or > 2)
            return null;
        var line = string.Join(' ', row.Cells.Select(c => c.Text)).ToLowerInvariant();
        return StatedMark().Match(line) is { Success: true } m ? (m.Groups["mark"].Value is "," or "comma" ? DecimalMark.Comma : DecimalMark.Point) : null;
    }

    // A number with one mark, or with grouping by the other mark before it: the last one is the decimal mark.
    [GeneratedRegex(@"^[<>]?=?\s*[+\-\u2212]?(?<head>\d*)(?<mark>[.,]|,(\d{3},)*\d{3}\.|\.(\d{3}\.)*\d{3},)(?<tail>\d*)(\s*([eE]|[x×*]\s*10\^?)\s*[+\-\u2212\u207B]?[\d\u00B2\u00B3\u00B9\u2070-\u2079]+)?$",
        RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Numeric();

    [GeneratedRegex(@"^\d{1,3}(,\d{3}){2,}$|^\d{1,3}(\.\d{3}){2,}$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Grouped();

    [GeneratedRegex(@"^decimal( mark| separator| sign| symbol)?\s*[:=]?\s*(?<mark>[.,]|comma|point|period|dot)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex StatedMark();
}
