using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Import.Shapes;

namespace Holdfast.Studies.Import;

/// <summary>Cells that hold more than a number: a unit behind it ("10 min"), a scatter ("14.99 ± 0.11"), a factor ("10x", "1:10").</summary>
internal static partial class CellParts
{
    private static readonly HashSet<string> Undiluted = new("undiluted unverdunnt unverd pur pure neat straight direct direkt onverdund".Split(' '), StringComparer.Ordinal);

    private static readonly Unit Hour = Unit.Parse("h"), Minute = Unit.Parse("min");

    /// <summary>A number and the unit behind it, of "1 h 30" in minutes; null where nothing stands behind a number.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, UnitText Unit)? Split(string text)
        => HoursAndMinutes().Match(text) is { Success: true } time && HeadingReading.UnitOf(time.Groups["unit"].Value) is UnitText.Known hours && hours.Unit.HasSameScale(Hour)
            ? (((int.Parse(time.Groups["hours"].Value, CultureInfo.InvariantCulture) * 60) + int.Parse(time.Groups["minutes"].Value, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture), new UnitText.Known(Minute))
            : NumberAndUnit().Match(SignInFront().Replace(text, "${number} %")) is { Success: true } m && HeadingReading.UnitOf(m.Groups["unit"].Value) is (UnitText.Known or UnitText.Ambiguous) and var unit
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

    /// <summary>True for a time of the day: "08:25", "8:25:00", "8h25", "14:05 Uhr".</summary>
    /// <param name="text">The cell.</param>
    public static bool IsClock(string text) => Clock().IsMatch(text);

    /// <summary>The time of "7:39 next day", "10:45 +1"; null for a time without such a word.</summary>
    /// <param name="text">The cell.</param>
    public static string? NextDay(string text) => Clock().IsMatch(text) && text.AsSpan().IndexOfAnyExcept(OfAClock) is > 2 and var at && text[at..].Trim(' ', '(', ',') is [var first, ..] && !Halves.Contains(text[at..].Trim(), StringComparer.OrdinalIgnoreCase) && (first == '+' || char.IsLetter(first)) ? text[..at] : null;

    private static readonly System.Buffers.SearchValues<char> OfAClock = System.Buffers.SearchValues.Create("0123456789:h");
    private static readonly string[] Halves = ["uhr", "am", "pm", "h"];

    /// <summary>A number and its scatter; null where the cell holds no scatter.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, string Scatter)? Scatter(string text)
        => PlusMinus().Match(text) is { Success: true } m ? (m.Groups["number"].Value.Trim(), m.Groups["scatter"].Value.Trim()) : null;

    /// <summary>The number of "16.81 (repeat)": words beside it that are neither a unit nor about a dilution; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static string? Remarked(string text)
        => NumberAndWords().Match(text) is { Success: true } m && m.Groups["words"].Value is var words && HeadingReading.UnitOf(words) is not (UnitText.Known or UnitText.Ambiguous)
            && !Lexicon.Of(words).Overlaps([HeadingWord.Dilution, HeadingWord.Limit, HeadingWord.Spread]) ? m.Groups["number"].Value.Trim() : null;

    /// <summary>The number in "10x", "x10", "1:10", "10-fold", "10 fach"; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static string? Factor(string text)
        => Times().Match(text) is { Success: true } m ? m.Groups["factor"].Value.Trim() : null;

    /// <summary>The factor of "5->50" or "2 mL to 10 mL", so much made up to so much; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static double? MadeUp(string text)
        => VolumeToVolume().Match(text) is { Success: true } m && Plain(m.Groups["from"].Value) is > 0 and var from && Plain(m.Groups["to"].Value) is { } to && to >= from ? to / from : null;

    /// <summary>The factor that a text states: "5->50", "1 mL auf 50 mL aufgefüllt", "not diluted"; null where it states none in words.</summary>
    /// <param name="text">The cell.</param>
    public static double? DilutionIn(string text) => MadeUp(text) ?? (IsUndiluted(text) ? 1 : NotedDilution.FactorIn(text));

    // A volume has no thousands: its only mark is the decimal one.
    private static double? Plain(string number) => double.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;

    /// <summary>True for a cell that says that nothing was diluted: "none", "undiluted".</summary>
    /// <param name="text">The cell.</param>
    public static bool IsUndiluted(string text) => Lexicon.Tokens(text) switch
    {
        [var only] => Undiluted.Contains(only) || Lexicon.Denials.Contains(only),
        [var denial, var what] => Lexicon.Denials.Contains(denial) && Lexicon.OfToken(what).Contains(HeadingWord.Dilution),
        _ => false,
    };

    /// <summary>True for a dilution as a ratio of parts: "1:4".</summary>
    /// <param name="text">The cell.</param>
    public static bool IsRatio(string text) => text.Contains(':', StringComparison.Ordinal) && Factor(text) is not null;

    /// <summary>A number and a factor beside it: "0.30 (x4)"; null for another text.</summary>
    /// <param name="text">The cell.</param>
    public static (string Number, string Factor)? Multiplied(string text)
        => NumberTimes().Match(text) is { Success: true } m ? (m.Groups["number"].Value.Trim(), m.Groups["factor"].Value.Trim()) : null;

    // "1 h 30", "1 u 30 min"
    [GeneratedRegex(@"^(?<hours>\d{1,3})\s*(?<unit>[\p{L}.]{1,7})\s*(?<minutes>[0-5]?\d)\s*(m|min|minuten|minutes|minutos)?\.?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex HoursAndMinutes();

    [GeneratedRegex(@"^(?<number>[\d.,]*\d)\s*[(\[]?\s*([x×*X]\s*(?<factor>\d+)|(?<factor>\d+)\s*[x×X]|1\s*:\s*(?<factor>\d+))\s*[)\]]?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NumberTimes();

    [GeneratedRegex(@"^(?<number>[<>]?\s*[+\-\u2212]?[\d.,]*\d(\s*[eE][+\-]?\d+)?)\s*(?<unit>[^\d\s.,:/\-][^:]*)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NumberAndUnit();

    // "%79,8" is 79,8 %.
    [GeneratedRegex(@"^%\s*(?<number>[+\-\u2212]?[\d.,]*\d)\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex SignInFront();

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?[\d.,]*\d)\s*[(\[](?<words>[\p{L} .]{2,})[)\]]$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex NumberAndWords();

    [GeneratedRegex(@"^(?<number>[+\-\u2212]?[\d.,]*\d)\s*(±|\+/-|\+-|\+/−)\s*(?<scatter>[\d.,]*\d)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PlusMinus();

    [GeneratedRegex(@"^\d{1,2}[:h]\d{2}(:\d{2})?( ?(uhr|am|pm|h))?( *[(,]? *(next day|\+ ?1 ?(d|day|tag)?|following day|am n(ä|ae)chsten tag|n(ä|ae)chster tag|folgetag|le lendemain|lendemain|d(í|i)a siguiente|dia seguinte|giorno dopo|volgende dag) *\)?)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Clock();

    [GeneratedRegex(@"^(?<from>\d+([.,]\d+)?)\s*(m[lL]|µL|uL)?\s*(-+>|=+>|→|⟶|>|\bto\b|\bauf\b|\ben\b|\bà\b|\ba\b|\bin\b|\bna\b|\bdo\b|\bnaar\b)\s*(?<to>\d+([.,]\d+)?)\s*(m[lL]|µL|uL)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex VolumeToVolume();

    [GeneratedRegex(@"^((x|X|×)\s*(?<factor>[\d.,]+)|(?<factor>[\d.,]+)\s*(x|X|×|-?\s?fold|-?\s?fach|fois|veces|vezes|volte)|1\s*:\s*(?<factor>[\d.,]+))$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Times();
}
