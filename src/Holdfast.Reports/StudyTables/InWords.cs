using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>How a study's numbers and things are said in sentences and cells: rounded by their uncertainty, the unit behind, no sign without a word.</summary>
public static class InWords
{
    /// <summary>A number with its 95 % uncertainty: "8.05 ± 0.31 mg/g (95 %, k = 2)"; without one the reason is said.</summary>
    /// <param name="value">The number, in the unit given.</param>
    /// <param name="unit">Its unit, "" for none.</param>
    public static string Of(Measured value, string unit)
    {
        if (!(value.U > 0))
            return Plain(value.Value, unit) + " (no uncertainty: none of its inputs came with one)";
        var expanded = ExpandedUncertainty.Of(value);
        var half = double.IsFinite(expanded.U) ? expanded.U : value.U;
        return string.Create(CultureInfo.InvariantCulture, $"{With(Raised(RoundedNumber.Of(value.Value, half).PlusMinus), unit)} (95 %, k = {expanded.K:0.##})");
    }

    /// <summary>A number with its standard uncertainty, without unit: "8.05 ± 0.15"; alone where it has none.</summary>
    /// <param name="value">The number.</param>
    public static string PlusMinus(Measured value)
        => Raised(RoundedNumber.Shown(value.Value, value.U).PlusMinus);

    /// <summary>An estimate with its 95 % interval by t: "8.05 mg/g (95 % 7.9 to 8.2 mg/g)".</summary>
    /// <param name="estimate">The estimate, in the unit given.</param>
    /// <param name="unit">Its unit, "" for none.</param>
    public static string Of(Estimate estimate, string unit)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        var interval = estimate.Interval();
        return Of(estimate.Value, interval.Low, interval.High, unit);
    }

    /// <summary>A number with its interval, rounded by half its width; an end that is not known is said to be open.</summary>
    /// <param name="value">The number, in the unit given.</param>
    /// <param name="low">Lower end, or null where there is none.</param>
    /// <param name="high">Upper end, or null where there is none.</param>
    /// <param name="unit">Its unit, "" for none.</param>
    public static string Of(double value, double? low, double? high, string unit)
    {
        var (from, to) = (Finite(low), Finite(high));
        if (!double.IsFinite(value))
            return "not defined";
        if (from is { } a && to is { } b && b > a)
        {
            var decimals = RoundedNumber.DecimalsFor((b - a) / 2);
            return IsLong(decimals)
                ? $"{With(Plain(value), unit)} ({Plain(a)} to {Plain(b)})"
                : $"{With(RoundedNumber.Fixed(value, decimals), unit)} ({RoundedNumber.Fixed(a, decimals)} to {RoundedNumber.Fixed(b, decimals)})";
        }

        var text = With(Plain(value), unit);
        if (low is null && high is null)
            return text;
        return $"{text} ({(from is { } l ? "from " + Plain(l) : "no lower limit")}, {(to is { } h ? "up to " + Plain(h) : "no upper limit")})";
    }

    /// <summary>A deciding number: name, value, interval, unit.</summary>
    /// <param name="number">The number.</param>
    public static string Of(Deciding number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return $"{number.Name}: {ValueOf(number)}";
    }

    /// <summary>A deciding number without its name: value, interval, unit.</summary>
    /// <param name="number">The number.</param>
    public static string ValueOf(Deciding number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return Of(number.Value, number.Low, number.High, number.Unit);
    }

    /// <summary>A ruling in words.</summary>
    /// <param name="ruling">The ruling.</param>
    public static string Of(Ruling ruling) => ruling switch
    {
        Ruling.Holds => "holds",
        Ruling.Contradicted => "contradicted",
        _ => "not shown yet",
    };

    /// <summary>A ruling said of so many claims: "holds" of one, "hold" of several.</summary>
    /// <param name="ruling">The ruling.</param>
    /// <param name="count">How many.</param>
    public static string Of(Ruling ruling, int count) => ruling == Ruling.Holds && count != 1 ? "hold" : Of(ruling);

    /// <summary>How many claims stand how, in a sentence: "3 hold, 1 is not shown yet and 2 are contradicted".</summary>
    /// <param name="rulings">The rulings.</param>
    /// <param name="each">True to name those that no claim has, too.</param>
    public static string Split(IReadOnlyCollection<Ruling> rulings, bool each)
        => Listed(Enum.GetValues<Ruling>().Select(r => (Ruling: r, Count: rulings.Count(x => x == r))).Where(c => each || c.Count > 0)
            .Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Count} {(c.Ruling == Ruling.Holds ? "" : c.Count == 1 ? "is " : "are ")}{Of(c.Ruling, c.Count)}")));

    /// <summary>What a sample is for.</summary>
    /// <param name="role">The role.</param>
    public static string Of(SampleRole role) => role switch
    {
        SampleRole.CheckStandard => "check standard",
        SampleRole.SorbentBlank => "sorbent blank",
        SampleRole.StartSolution => "start solution",
        _ => role.ToString().ToLowerInvariant(),
    };

    /// <summary>A p value: "p = 0.031", "p &lt; 0.001".</summary>
    /// <param name="p">Between 0 and 1; no unit.</param>
    public static string P(double p) => p < 0.001 ? "p\u00A0<\u00A00.001" : "p\u00A0=\u00A0" + RoundedNumber.Fixed(p, 3);

    /// <summary>A number without an uncertainty of its own, up to four figures; one that is not finite is said to be not defined.</summary>
    /// <param name="value">The number.</param>
    public static string Plain(double value) => double.IsFinite(value) ? Raised(RoundedNumber.WithoutUncertainty(value).PlusMinus) : "not defined";

    /// <summary>A number without an uncertainty of its own, with its unit.</summary>
    /// <param name="value">The number; finite, in the unit given.</param>
    /// <param name="unit">Its unit, "" for none.</param>
    public static string Plain(double value, string unit) => With(Plain(value), unit);

    /// <summary>A setting as it was set, up to six figures: "298.15 K".</summary>
    /// <param name="value">The number; finite, in the unit given.</param>
    /// <param name="unit">Its unit, "" for none.</param>
    public static string Setting(double value, string unit) => With(RoundedNumber.WithoutUncertainty(value, significant: 6).PlusMinus, unit);

    /// <summary>"3 to 9 mg/L", or the one setting where both ends read alike.</summary>
    /// <param name="settings">One setting or more.</param>
    /// <param name="unit">Their unit, "" for none.</param>
    public static string Span(IReadOnlyCollection<double> settings, string unit)
    {
        var (low, high) = (Setting(settings.Min(), ""), Setting(settings.Max(), ""));
        return With(low == high ? low : $"{low} to {high}", unit);
    }

    /// <summary>"1 vessel", "3 vessels".</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The word for one.</param>
    /// <param name="many">The word for several; null to add an s.</param>
    public static string Count(int count, string one, string? many = null)
        => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many ?? one + "s")}");

    /// <summary>"a", "a and b", "a, b and c"; each thing is said once.</summary>
    /// <param name="things">What to list.</param>
    public static string Listed(IEnumerable<string> things)
    {
        var all = things.Distinct(StringComparer.Ordinal).ToArray();
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    /// <summary>The first few names and how many more there are: "A-1, A-2, A-3 and 21 more".</summary>
    /// <param name="names">The names.</param>
    /// <param name="most">How many to name.</param>
    public static string Some(IReadOnlyList<string> names, int most)
    {
        ArgumentNullException.ThrowIfNull(names);
        return names.Count <= most + 1
            ? Listed(names)
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", names.Take(most))} and {names.Count - most} more");
    }

    /// <summary>Powers of ten with raised digits: "2.1 × 10^-7" becomes "2.1 × 10⁻⁷".</summary>
    /// <param name="number">A number as text.</param>
    public static string Raised(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        var at = number.IndexOf("10^", StringComparison.Ordinal);
        return at < 0 ? number : number[..(at + 2)] + string.Concat(number[(at + 3)..].Select(c => c is '-' ? '⁻' : char.IsAsciiDigit(c) ? "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0'] : c));
    }

    private static string With(string number, string unit) => unit.Length == 0 ? number : number + "\u00A0" + unit.Replace("m2", "m²", StringComparison.Ordinal).Replace("m3", "m³", StringComparison.Ordinal);

    private static double? Finite(double? value) => value is { } known && double.IsFinite(known) ? known : null;

    // Written out, such a number would be a row of zeros.
    private static bool IsLong(int decimals) => decimals is > 5 or < -4;
}
