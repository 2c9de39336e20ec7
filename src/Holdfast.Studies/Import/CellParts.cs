using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Cells that hold more than a number: a unit behind it ("10 min"), a scatter ("14.99 ± 0.11"), a factor ("10x", "1:10").</summary>
internal static partial class CellParts
{
    /// <summary>A number and the unit behind it; null where nothing stands behind a number.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, UnitText Unit)? Split(string text)
        => NumberAndUnit().Match(text) is { Success: true } m && HeadingReading.UnitOf(m.Groups["unit"].Value) is (UnitText.Known or UnitText.Ambiguous) and var unit
            ? (m.Groups["number"].Value.Trim(), unit)
            : null;

    /// <summary>Minutes of "2:30" or "0:10:30", and of a time as workbooks keep it, a share of a day; null for another cell.</summary>
    /// <param name="cell">The cell.</param>
    public static double? Minutes(Cell cell)
    {
        if (cell.Kind == CellKind.Number)
            return double.TryParse(cell.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var days) ? Math.Round(days * 24 * 60, 6) : null;
        var parts = cell.Text.TrimEnd('h', ' ').Split(':', 'h');
        return parts.Length is 2 or 3 && Array.TrueForAll(parts, p => p.Length > 0 && p.All(char.IsAsciiDigit)) && parts[0].Length <= 4
            ? (int.Parse(parts[0], CultureInfo.InvariantCulture) * 60) + int.Parse(parts[1], CultureInfo.InvariantCulture) + (parts.Length == 3 ? int.Parse(parts[2], CultureInfo.InvariantCulture) / 60.0 : 0)
            : null;
    }

    /// <summary>A number and its scatter; null where the cell holds no scatter.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, string Scatter)? Scatter(string text)
        => PlusMinus().Match(text) is { Success: true } m ? (m.Groups["number"].Value.Trim(), m.Groups["scatter"].Value.Trim()) : null;

    /// <summary>The number in "10x", "x10", "1:10", "10-fold", "10 fach"; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static string? Factor(string text)
        => Times().Match(text) is { Success: true } m ? m.Groups["factor"].Value.Trim() : null;

    /// <summary>True for a dilution as a ratio of parts: "1:4".</summary>
    /// <param name="text">The cell.</param>
    public static bool IsRatio(string text) => text.Contains(':', StringComparison.Ordinal) && Factor(text) is not null;

    /// <summary>A number and a factor beside it: "0.30 (x4)"; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, string Factor)? Multiplied(string text)
        => NumberTimes().Match(text) is { Success: true } m ? (m.Groups["number"].Value.Trim(), m.Groups["factor"].Value.Trim()) : null;

    [GeneratedRegex(@"^(?<number>[\d.,]*\d)\s*[(\[]?\s*([x×*X]\s*(?<factor>\d+)|(?<factor>\d+)\s*[x×X]|1\s*:\s*(?<factor>\d+))\s*[)\]]?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NumberTimes();

    [GeneratedRegex(@"^(?<number>[<>]?\s*[+\-\u2212]?[\d.,]*\d(\s*[eE][+\-]?\d+)?)\s*(?<unit>[^\d\s.,:/\-][^:]*)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NumberAndUnit();

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?[\d.,]*\d)\s*(±|\+/-|\+-|\+/−)\s*(?<scatter>[\d.,]*\d)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PlusMinus();

    [GeneratedRegex(@"^((x|X|×)\s*(?<factor>[\d.,]+)|(?<factor>[\d.,]+)\s*(x|X|×|-?\s?fold|-?\s?fach|fois|veces|vezes|volte)|1\s*:\s*(?<factor>[\d.,]+))$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Times();
}
