using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Holdfast.Studies.Import;

/// <summary>Codes that a spreadsheet program turned into dates: "3-Mar", 45719.</summary>
internal static partial class MangledCode
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>What the code may have been, likeliest first; empty when it does not look mangled.</summary>
    /// <param name="cell">The cell of the code column.</param>
    /// <param name="othersHaveLetters">True when most codes of the column hold letters, so that a bare number is out of place.</param>
    public static ImmutableArray<string> Originals(Cell cell, bool othersHaveLetters)
    {
        var text = cell.Text;
        if (cell.Kind == CellKind.Date && DateTime.TryParseExact(text[..Math.Min(10, text.Length)], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            return Of(date.Day, date.Month);
        if (DayMonth().Match(text) is { Success: true } d)
            return Of(int.Parse(d.Groups["day"].Value, CultureInfo.InvariantCulture), Array.IndexOf(Months, d.Groups["month"].Value.ToLowerInvariant()) + 1);
        // Days since 1899-12-30, as spreadsheet programs count them: 1982 to 2064.
        if (othersHaveLetters && text.Length == 5 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var serial) && serial is >= 30000 and < 60000)
            return new DateTime(1899, 12, 30).AddDays(serial) is var day ? Of(day.Day, day.Month) : [];
        return [];
    }

    private static ImmutableArray<string> Of(int day, int month)
    {
        var (d, m, name) = (day.ToString(CultureInfo.InvariantCulture), month.ToString(CultureInfo.InvariantCulture), Months[month - 1].ToUpperInvariant());
        return [.. new[] { $"{d}-{m}", $"{m}-{d}", $"{name}{d}", $"{name}-{d}" }.Distinct(StringComparer.Ordinal)];
    }

    [GeneratedRegex(@"^((?<day>\d{1,2})[-/. ](?<month>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|(?<month>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[-/. ](?<day>\d{1,2}))$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking | RegexOptions.CultureInvariant)]
    private static partial Regex DayMonth();
}
