using System.Globalization;

namespace Holdfast.Studies.Import.Cif;

/// <summary>A number of a CIF: "5.12(1)" is 5.12 with standard uncertainty 0.01. The unit is the item's.</summary>
/// <param name="Value">The number, in the unit of its item.</param>
/// <param name="Uncertainty">Standard uncertainty in the same unit; null when the file gives none.</param>
/// <remarks>S. R. Hall, F. H. Allen, I. D. Brown, Acta Cryst. A47 (1991) 655: the digits in brackets count units of the last digit written.</remarks>
public readonly record struct CifNumber(double Value, double? Uncertainty)
{
    /// <summary>The number a text is, or null.</summary>
    /// <param name="text">Text without quotes.</param>
    public static CifNumber? Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var open = text.IndexOf('(', StringComparison.Ordinal);
        var number = open < 0 ? text : text[..open];
        // Infinity and NaN are words to a file of facts; so is a hexadecimal number.
        if (number.Length == 0 || !number.Any(char.IsAsciiDigit) || number.Any(c => !char.IsAsciiDigit(c) && c is not ('+' or '-' or '.' or 'e' or 'E')))
            return null;
        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (!double.TryParse(number, Style, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
            return null;
        if (open < 0)
            return new(value, null);
        var digits = text[^1] == ')' ? text[(open + 1)..^1] : "";
        if (digits.Length is 0 or > 9 || !digits.All(char.IsAsciiDigit))
            return null;
        return LastDigit(number) * int.Parse(digits, CultureInfo.InvariantCulture) is { } uncertainty && double.IsFinite(uncertainty) ? new(value, uncertainty) : null;
    }

    // Worth of one unit of the last digit: 0.01 for "5.12", 10 for "5.1e2".
    private static double? LastDigit(string number)
    {
        var exponentAt = number.IndexOfAny(['e', 'E']);
        var mantissa = exponentAt < 0 ? number : number[..exponentAt];
        var exponent = 0;
        if (exponentAt >= 0 && (!int.TryParse(number[(exponentAt + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out exponent) || Math.Abs(exponent) > 400))
            return null;
        var point = mantissa.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : mantissa.Length - point - 1;
        // Through text, so that 5.12(1) is 0.01 to the last bit.
        return double.Parse(string.Create(CultureInfo.InvariantCulture, $"1e{exponent - decimals}"), CultureInfo.InvariantCulture);
    }
}
