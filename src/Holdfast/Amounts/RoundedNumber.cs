using System.Globalization;

namespace Holdfast.Amounts;

/// <summary>
/// A number rounded for display, and only for display. The uncertainty gets two significant digits and the value ends at the same
/// decimal place, so that no digit is shown which the uncertainty does not support (JCGM 100, 7.2.6).
/// </summary>
/// <remarks>Half is rounded away from zero, on the shortest decimal digits of the number.</remarks>
public sealed record RoundedNumber
{
    private RoundedNumber(string value, string? u, string? digits, int exponent, bool isQuantified)
    {
        Value = value;
        U = u;
        UncertainDigits = digits;
        Exponent = exponent;
        IsQuantified = isQuantified;
    }

    /// <summary>The value's digits, to be multiplied by 10^<see cref="Exponent"/>.</summary>
    public string Value { get; }

    /// <summary>The uncertainty's digits in the same power of ten, or null where none is known.</summary>
    public string? U { get; }

    /// <summary>The uncertainty in units of the value's last digit, as in 19.38(17); null where none is known.</summary>
    public string? UncertainDigits { get; }

    /// <summary>Common power of ten; 0 for numbers that are written out.</summary>
    public int Exponent { get; }

    /// <summary>False when the uncertainty is more than half of the value: then an interval is shown and the words "not quantified".</summary>
    public bool IsQuantified { get; }

    /// <summary>"19.38 ± 0.34", or the value alone.</summary>
    public string PlusMinus => U is null ? Value + Power : Exponent == 0 ? $"{Value} ± {U}" : $"({Value} ± {U}){Power}";

    /// <summary>"19.38(17)", or the value alone.</summary>
    public string Brackets => UncertainDigits is null ? Value + Power : $"{Value}({UncertainDigits}){Power}";

    /// <summary><see cref="PlusMinus"/> with the power of ten as a raised run.</summary>
    public IReadOnlyList<TextRun> Runs
        => Exponent == 0
            ? [new(PlusMinus)]
            : [new(U is null ? $"{Value} × 10" : $"({Value} ± {U}) × 10"), new(Exponent.ToString(CultureInfo.InvariantCulture).Replace('-', '\u2212'), Raised: true)];

    private string Power => Exponent == 0 ? "" : $" × 10^{Exponent.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>A value with an uncertainty.</summary>
    /// <param name="value">The value.</param>
    /// <param name="u">Standard or expanded uncertainty, in the unit of the value; 0 for a number known exactly.</param>
    /// <param name="digits">Significant digits of the uncertainty, 2 or, where space is short, 1 (kept at 2 when its first digit is 1 or 2).</param>
    /// <param name="mark">Decimal mark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value or the uncertainty is not finite, the uncertainty is negative, or digits is not 1 or 2.</exception>
    public static RoundedNumber Of(double value, double u, int digits = 2, DecimalMark mark = DecimalMark.Point)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(u);
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, 2);
        if (u == 0)
            return WithoutUncertainty(value, significant: 15, mark);

        var decimals = DecimalsFor(u, digits);
        var rounded = DecimalDigits.Of(u).Round(decimals);
        if (ToDouble(rounded) < 0.95 * u)
            rounded = DecimalDigits.Of(ToDouble(rounded) + Math.Pow(10, -decimals)).Round(decimals);
        var number = DecimalDigits.Of(value).Round(decimals);
        var exponent = ExponentFor(number.Digits.Length == 0 ? rounded : number, decimals);
        var places = Math.Max(decimals + exponent, 0);
        var uncertain = Shift(rounded, exponent == 0 ? Math.Max(decimals, 0) : decimals).Write(0, mark);
        return new(
            Shift(number, -exponent).Write(places, mark),
            Shift(rounded, -exponent).Write(places, mark),
            uncertain,
            exponent,
            u <= Math.Abs(value) / 2);
    }

    /// <summary>A value whose uncertainty is not known.</summary>
    /// <param name="value">The value.</param>
    /// <param name="significant">Significant digits at most; fewer are shown when the number has fewer.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or no digit is asked for.</exception>
    public static RoundedNumber WithoutUncertainty(double value, int significant = 4, DecimalMark mark = DecimalMark.Point)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(significant, 1);
        var full = DecimalDigits.Of(value);
        var number = full.Round(significant - full.Exponent);
        var decimals = number.Digits.Length - number.Exponent;
        var exponent = number.Exponent is > 5 or < -2 ? number.Exponent - 1 : 0;
        var places = Math.Max(decimals + exponent, 0);
        return new(Shift(number, -exponent).Write(places, mark), null, null, exponent, isQuantified: true);
    }

    /// <summary>A value as a reader meets it: with its uncertainty where it has one, else up to four figures.</summary>
    /// <param name="value">The value.</param>
    /// <param name="u">Standard or expanded uncertainty, in the unit of the value; 0 or not a number where none came with it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or the uncertainty has no end.</exception>
    public static RoundedNumber Shown(double value, double u) => u > 0 ? Of(value, u) : WithoutUncertainty(value);

    /// <summary>A value with unequal arms: "5.0 (+3.3/−1.5)".</summary>
    /// <param name="value">The value.</param>
    /// <param name="low">Lower end of the interval, at most the value.</param>
    /// <param name="high">Upper end, at least the value.</param>
    /// <param name="mark">Decimal mark.</param>
    public static string Asymmetric(double value, double low, double high, DecimalMark mark = DecimalMark.Point)
    {
        if (!(low <= value && value <= high))
            throw new ArgumentOutOfRangeException(nameof(value), value, "The value lies outside its interval.");
        var (up, down) = (high - value, value - low);
        var decimals = Math.Max(Places(Math.Max(up, down), 2), Math.Min(up, down) > 0 ? Places(Math.Min(up, down), 1) : int.MinValue);
        return $"{Fixed(value, decimals, mark)} (+{Fixed(up, decimals, mark)}/\u2212{Fixed(down, decimals, mark)})";
    }

    /// <summary>An interval: "3.5 to 8.3", rounded by half its width.</summary>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end, above the lower one.</param>
    /// <param name="mark">Decimal mark.</param>
    public static string Interval(double low, double high, DecimalMark mark = DecimalMark.Point)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(high, low);
        if (low.Equals(high))
            return WithoutUncertainty(low, mark: mark).PlusMinus;
        var decimals = DecimalsFor((high - low) / 2, 2);
        return $"{Fixed(low, decimals, mark)} to {Fixed(high, decimals, mark)}";
    }

    /// <summary>A value known only to lie beyond a limit: "&lt; 0.11 (LOQ)". The limit gets two significant digits.</summary>
    /// <param name="side">On which side.</param>
    /// <param name="limit">The limit, in the unit shown beside it.</param>
    /// <param name="limitName">"LOD", "LOQ", "top standard"; null when the limit has no name.</param>
    /// <param name="mark">Decimal mark.</param>
    public static string Censored(CensoredSide side, double limit, string? limitName = null, DecimalMark mark = DecimalMark.Point)
        => $"{(side == CensoredSide.Below ? '<' : '>')} {WithoutUncertainty(limit, significant: 2, mark).PlusMinus}{(limitName is null ? "" : $" ({limitName})")}";

    /// <summary>A number to a fixed number of decimal places, zeros kept: how finely something was set or counted.</summary>
    /// <param name="value">The number; finite.</param>
    /// <param name="decimals">Places after the mark; negative for tens, hundreds.</param>
    /// <param name="mark">Decimal mark.</param>
    public static string Fixed(double value, int decimals, DecimalMark mark = DecimalMark.Point)
        => DecimalDigits.Of(value).Round(decimals).Write(Math.Max(decimals, 0), mark);

    /// <summary>Decimal places that two (or one) significant digits of an uncertainty support; negative for tens, hundreds.</summary>
    /// <param name="u">The uncertainty, above 0.</param>
    /// <param name="digits">1 or 2; 1 becomes 2 when the first digit is 1 or 2.</param>
    public static int DecimalsFor(double u, int digits = 2)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(u);
        return Places(u, digits == 1 && DecimalDigits.Of(u).Digits[0] is '1' or '2' ? 2 : digits);
    }

    /// <summary><see cref="PlusMinus"/>.</summary>
    public override string ToString() => PlusMinus;

    private static int Places(double u, int digits)
    {
        // 0.0996 to two digits is 0.10, not 0.100: the carry takes a place.
        var full = DecimalDigits.Of(u);
        return digits - full.Round(digits - full.Exponent).Exponent;
    }

    private static DecimalDigits Shift(DecimalDigits number, int places)
        => number.Digits.Length == 0 ? number : number with { Exponent = number.Exponent + places };

    // A power of ten where zeros would otherwise pose as digits, and for very large and very small numbers.
    private static int ExponentFor(DecimalDigits leading, int decimals)
        => (decimals < 0 ? leading.Exponent > 4 : leading.Exponent is > 6 or < -2) ? leading.Exponent - 1 : 0;

    private static double ToDouble(DecimalDigits d)
        => d.Digits.Length == 0 ? 0 : double.Parse($"0.{d.Digits}E{d.Exponent.ToString(CultureInfo.InvariantCulture)}", CultureInfo.InvariantCulture);
}
