using System.Globalization;

namespace Holdfast.Amounts;

/// <summary>
/// The shortest decimal digits that mean a double, so that rounding for display sees what a reader sees: 2.675 is rounded as 2.675
/// and not as the binary fraction just below it.
/// </summary>
/// <param name="Negative">True below zero.</param>
/// <param name="Digits">Digits d1 d2 ... without leading or trailing zeros; empty for zero.</param>
/// <param name="Exponent">The value is 0.d1d2... × 10^Exponent.</param>
internal readonly record struct DecimalDigits(bool Negative, string Digits, int Exponent)
{
    /// <summary>The digits of a finite number.</summary>
    /// <param name="value">Any finite number.</param>
    public static DecimalDigits Of(double value)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "Only a finite number can be shown.");
        if (value == 0)
            return new(false, "", 0);
        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        var power = shortest.Length == 2 ? int.Parse(shortest[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0;
        var point = shortest[0].IndexOf('.', StringComparison.Ordinal);
        var digits = shortest[0].Replace(".", "", StringComparison.Ordinal);
        var significant = digits.TrimStart('0');
        var exponent = (point < 0 ? digits.Length : point) - (digits.Length - significant.Length) + power;
        return new(value < 0, significant.TrimEnd('0'), exponent);
    }

    /// <summary>Rounded to a number of decimal places, half away from zero.</summary>
    /// <param name="decimals">Places after the mark; negative for tens, hundreds.</param>
    public DecimalDigits Round(int decimals)
    {
        var keep = Exponent + decimals;
        if (keep >= Digits.Length)
            return this;
        if (keep < 0)
            return new(false, "", 0);
        var up = Digits[keep] >= '5';
        var kept = Digits[..keep].ToCharArray();
        var at = keep - 1;
        while (up && at >= 0)
        {
            up = kept[at] == '9';
            kept[at] = up ? '0' : (char)(kept[at] + 1);
            at--;
        }

        var digits = (up ? "1" : "") + new string(kept);
        var trimmed = digits.TrimEnd('0');
        return trimmed.Length == 0 ? new(false, "", 0) : new(Negative, trimmed, Exponent + (up ? 1 : 0));
    }

    /// <summary>Written out with a fixed number of decimal places; the digits must have been rounded to them.</summary>
    /// <param name="decimals">Places after the mark, at least 0.</param>
    /// <param name="mark">Decimal mark.</param>
    public string Write(int decimals, DecimalMark mark)
    {
        var padded = Exponent <= 0 ? new string('0', 1 - Exponent) + Digits : Digits;
        var whole = Math.Max(Exponent, 1);
        padded = padded.PadRight(whole + decimals, '0');
        var before = padded[..whole];
        var after = padded.Substring(whole, decimals);
        return (Negative ? "\u2212" : "") + Group(before) + (decimals == 0 ? "" : (mark == DecimalMark.Point ? "." : ",") + after);
    }

    // Five digits or more are grouped in threes by a narrow space (SI Brochure 5.4.4; CGPM 2003, resolution 10).
    private static string Group(string whole)
    {
        if (whole.Length < 5)
            return whole;
        for (var at = whole.Length - 3; at > 0; at -= 3)
            whole = whole.Insert(at, "\u202F");
        return whole;
    }
}
