using System.Globalization;
using System.Text.RegularExpressions;

namespace Holdfast.Studies.Import;

/// <summary>Dates as people write them. ISO 8601 wins; day and month that could be swapped are asked about once for the file.</summary>
internal static partial class DateText
{
    /// <summary>The date as ISO 8601, or null when it is none; <paramref name="swappable"/> tells that the order mattered and is not known.</summary>
    /// <param name="text">The cell.</param>
    /// <param name="order">"day-first" or "month-first", or null while it is not settled.</param>
    /// <param name="swappable">True when both orders are dates.</param>
    public static string? Read(string text, string? order, out bool swappable)
    {
        swappable = false;
        if (Iso().Match(text) is { Success: true } iso)
            return Make(iso.Groups["y"].Value, iso.Groups["m"].Value, iso.Groups["d"].Value);
        if (Worded().Match(text) is { Success: true } w
            && DateTime.TryParseExact($"{w.Groups["d"].Value} {w.Groups["m"].Value[..3]} {w.Groups["y"].Value}", "d MMM yyyy", CultureInfo.InvariantCulture, DateTimeStyles.None, out var worded))
        {
            return worded.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }
        if (Slashed().Match(text) is not { Success: true } s)
            return null;
        var (a, b, year) = (s.Groups["a"].Value, s.Groups["b"].Value, s.Groups["y"].Value);
        var (dayFirst, monthFirst) = (Make(year, b, a), Make(year, a, b));
        // Points between the numbers are written where the day comes first.
        if (dayFirst is null || monthFirst is null || string.Equals(dayFirst, monthFirst, StringComparison.Ordinal) || s.Groups["mark"].Value == ".")
            return dayFirst ?? monthFirst;
        swappable = order is null;
        return order switch { "day-first" => dayFirst, "month-first" => monthFirst, _ => null };
    }

    /// <summary>True for the English name of a month, whole or by three letters.</summary>
    /// <param name="word">The word.</param>
    public static bool IsMonth(string word) => word.Length >= 3 && char.IsLetter(word[0]) && Array.Exists(CultureInfo.InvariantCulture.DateTimeFormat.MonthNames, m => m.Length > 0 && (m.Equals(word, StringComparison.OrdinalIgnoreCase) || (word.Length == 3 && m.StartsWith(word, StringComparison.OrdinalIgnoreCase))));

    private static string? Make(string year, string month, string day)
        => DateTime.TryParseExact($"{year}-{month.PadLeft(2, '0')}-{day.PadLeft(2, '0')}", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : null;

    [GeneratedRegex(@"^(?<y>\d{4})-(?<m>\d{2})-(?<d>\d{2})([T ].*)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Iso();

    [GeneratedRegex(@"^(?<d>\d{1,2})[. -]+(?<m>[A-Za-z]{3,9})\.?[ -]+(?<y>\d{4})$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Worded();

    [GeneratedRegex(@"^(?<a>\d{1,2})(?<mark>[./-])(?<b>\d{1,2})[./-](?<y>\d{4})$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Slashed();
}
