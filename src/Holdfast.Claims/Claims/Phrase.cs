using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Claims;

/// <summary>How numbers, intervals and lists are said in a verdict: four significant figures, a true minus sign, the unit behind.</summary>
internal static class Phrase
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /// <summary>A number with four significant figures: "9.015", "−0.01", "2.1 × 10⁻⁷" outside 0.001 to 99 999.</summary>
    /// <param name="value">Any finite number; no unit.</param>
    public static string Number(double value) => Number(value, 4);

    /// <summary>A number with its unit; "%" and the empty unit as they are.</summary>
    /// <param name="value">Any finite number, in the unit given.</param>
    /// <param name="unit">The unit, "" for none.</param>
    public static string With(double value, string unit) => unit.Length == 0 ? Number(value) : $"{Number(value)} {unit}";

    /// <summary>A number with its unit as a parameter of a claim, in plain digits that can be read back: "1440 min".</summary>
    /// <param name="value">Any finite number, in the unit given.</param>
    /// <param name="unit">The unit.</param>
    public static string Plain(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:G6} {unit}").TrimEnd();

    /// <summary>A p value: "p = 0.98", "p = 2.1 × 10⁻⁷".</summary>
    /// <param name="p">Between 0 and 1; no unit.</param>
    public static string P(double p) => p < 1e-15 ? "p < 10⁻¹⁵" : "p = " + Number(p, 2);

    /// <summary>An interval with its confidence: "90 % interval −1.47 to 3.273 %".</summary>
    /// <param name="interval">The interval, in the unit given.</param>
    /// <param name="unit">The unit, "" for none.</param>
    public static string Interval(Interval interval, string unit)
        => $"{Number(100 * interval.Confidence)} % interval {Number(interval.Low)} to {With(interval.High, unit)}";

    /// <summary>A range, or one number where both ends read alike: "5 to 20 mg/L".</summary>
    /// <param name="low">Lower end, in the unit given.</param>
    /// <param name="high">Upper end, in the unit given.</param>
    /// <param name="unit">The unit, "" for none.</param>
    public static string Span(double low, double high, string unit)
        => Number(low) == Number(high) ? With(high, unit) : $"{Number(low)} to {With(high, unit)}";

    /// <summary>"1 vessel", "3 vessels".</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The word for one.</param>
    /// <param name="many">The word for several, or null to add an s.</param>
    public static string Count(int count, string one, string? many = null)
        => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");

    /// <summary>"a", "a and b", "a, b and c"; each thing is said once.</summary>
    /// <param name="things">What to list.</param>
    public static string Listed(IEnumerable<string> things)
    {
        var all = things.Distinct(StringComparer.Ordinal).ToArray();
        return all.Length switch
        {
            0 => "none",
            1 => all[0],
            _ => string.Join(", ", all[..^1]) + " and " + all[^1],
        };
    }

    /// <summary>The author's own words, or the rule's wording with its places filled.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="wording">Words with places in braces.</param>
    /// <param name="places">What goes where.</param>
    public static string Sentence(Claim claim, string wording, params ReadOnlySpan<(string Place, string Words)> places)
    {
        if (claim.Wording is { Length: > 0 } own)
            return own;
        foreach (var (place, words) in places)
            wording = wording.Replace("{" + place + "}", words, StringComparison.Ordinal);
        return wording;
    }

    private static string Number(double value, int figures)
    {
        if (!double.IsFinite(value))
            return value > 0 ? "∞" : value < 0 ? "−∞" : "not known";
        if (value == 0)
            return "0";
        var parts = value.ToString("E" + (figures - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Split('E');
        var power = int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var text = power is >= -3 and <= 4
            ? value.ToString("F" + Math.Max(0, figures - 1 - power).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : parts[0];
        if (text.Contains('.', StringComparison.Ordinal))
            text = text.TrimEnd('0').TrimEnd('.');
        text = text.Replace('-', '−');
        return power is >= -3 and <= 4 ? text : text + " × 10" + Raised(power);
    }

    private static string Raised(int power)
        => (power < 0 ? "⁻" : "") + string.Concat(Math.Abs(power).ToString(CultureInfo.InvariantCulture).Select(d => Superscripts[d - '0']));
}
