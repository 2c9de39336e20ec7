using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Reports.Figures;

/// <summary>
/// Numbers at ticks, written from whole numbers so that nothing is rounded: minus sign U+2212, a zero before the decimal sign, thin spaces in
/// groups of three from five digits on (SI Brochure 9th ed., 5.4.4).
/// </summary>
public static class TickText
{
    /// <summary>The number digits × 10^exponent in plain notation with all its decimals.</summary>
    /// <param name="digits">The digits as a whole number.</param>
    /// <param name="exponent">Power of ten.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="groupFrom">Digits before the decimal sign from which thin spaces group them.</param>
    public static string Plain(long digits, int exponent, DecimalMark mark, int groupFrom = 5)
    {
        var text = Math.Abs(digits).ToString(CultureInfo.InvariantCulture);
        if (exponent >= 0)
            text += digits == 0 ? "" : new string('0', exponent);
        else
            text = text.PadLeft(1 - exponent, '0');
        var whole = exponent >= 0 ? text : text[..^-exponent];
        var part = exponent >= 0 ? "" : (mark == DecimalMark.Comma ? "," : ".") + text[^-exponent..];
        if (whole.Length >= groupFrom)
        {
            for (var i = whole.Length - 3; i > 0; i -= 3)
                whole = whole.Insert(i, "\u202F");
        }

        return (digits < 0 ? "−" : "") + whole + part;
    }

    /// <summary>The number digits × 10^exponent as a mantissa and a power of ten.</summary>
    /// <param name="digits">The digits as a whole number.</param>
    /// <param name="exponent">Power of ten of the digits.</param>
    /// <param name="power">Power of ten to write.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="bare">True to leave out a mantissa of 1, as on a logarithmic axis.</param>
    public static RichText Scientific(long digits, int exponent, int power, DecimalMark mark, bool bare = false)
    {
        if (digits == 0)
            return "0";
        var mantissa = Plain(digits, exponent - power, mark);
        var raised = new RichRun(power.ToString(CultureInfo.InvariantCulture).Replace('-', '−'), Shift: Shift.Super);
        return new(bare && mantissa == "1" ? [new("10"), raised] : [new(mantissa + "\u202F×\u202F10"), raised]);
    }

    /// <summary>Labels of a row of multiples of one step, in one notation.</summary>
    /// <param name="step">The step.</param>
    /// <param name="numbers">Which multiples.</param>
    /// <param name="mark">Decimal mark.</param>
    public static IReadOnlyList<RichText> Of(TickStep step, IReadOnlyList<long> numbers, DecimalMark mark)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        var largest = numbers.Select(n => Math.Abs(n * step.Digit)).DefaultIfEmpty(0).Max();
        var power = largest == 0 ? 0 : largest.ToString(CultureInfo.InvariantCulture).Length - 1 + step.Exponent;
        var plain = step.Exponent >= -4 && power < 5;

        // One format for a whole axis: beside numbers of five digits those of four are grouped too.
        var groupFrom = power == 4 ? 4 : 5;
        return numbers.Select(n => n * step.Digit)
            .Select(d => plain ? (RichText)Plain(d, step.Exponent, mark, groupFrom) : Scientific(d, step.Exponent, power, mark))
            .ToArray();
    }
}
