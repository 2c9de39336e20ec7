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
                if (cell.Kind != CellKind.Text || cell.IsBlank || Numeric().Match(NumberIn(cell.Text)) is not { Success: true } m)
                    continue;
                var mark = m.Groups["mark"].Value[^1];
                var certain = m.Groups["mark"].Value.Length > 1 || m.Groups["tail"].Length != 3 || m.Groups["head"].Value.TrimStart('0').Length is 0 or > 3;
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
        if (comma > 0 && point > 0)
            return new(null, "cells are written with both marks", commaCell);
        if (comma > 0)
            return new(DecimalMark.Comma, $"{commaCell} can only be written with a comma", null);
        if (point > 0)
            return new(DecimalMark.Point, $"{pointCell} can only be written with a point", null);
        if (commaDoubt > 0 && pointDoubt > 0)
            return new(null, "cells are written with both marks", commaCell);
        if (commaDoubt > 0)
        {
            return layout.Grid.Separator == ";"
                ? new(DecimalMark.Comma, "cells are separated by semicolons", null)
                : new(null, $"{commaCell} is the only evidence", commaCell);
        }
        // With semicolons a point may group thousands; elsewhere a lone point is the decimal mark.
        return pointDoubt > 0 && layout.Grid.Separator == ";"
            ? new(null, $"{pointCell} is the only evidence", pointCell)
            : new(DecimalMark.Point, pointDoubt > 0 ? "numbers are written with a point" : "no number needs a mark", null);
    }

    /// <summary>The mark that holds, asked about where the cells leave it open; null while it is.</summary>
    /// <param name="talk">Where the question goes.</param>
    public DecimalMark? Settle(Dialogue talk)
    {
        var answer = talk.Answers.To("decimal");
        if (Mark is null)
        {
            talk.Ask("decimal", Codes.Ambiguous, Example is { } cell && cell.Count(c => c is ',' or '.') == 1 && Reason.EndsWith("only evidence", StringComparison.Ordinal)
                ? $"{cell} could be {cell.Replace(',', '.')} or {cell.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal)}. Which decimal mark does this instrument write?"
                : $"This file holds numbers with points and with commas ({Example}). Which is the decimal mark? Cells with the other are then kept as text.", ["point", "comma"]);
        }

        return answer?.ToLowerInvariant() switch
        {
            null => Mark,
            "point" or "." => DecimalMark.Point,
            "comma" or "," => DecimalMark.Comma,
            _ => throw new StudyException(Codes.Ambiguous, $"The decimal mark is point or comma, not {answer}. Nothing is kept."),
        };
    }

    // "14,99 ± 0,11" and "14,9 mg" are evidence as well.
    private static string NumberIn(string text) => CellParts.Scatter(text)?.Number ?? CellParts.Split(text)?.Number ?? text;

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

    [GeneratedRegex(@"^decimal( mark| separator| sign| symbol)?\s*[:=]?\s*(?<mark>[.,]|comma|point|period|dot)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex StatedMark();
}
