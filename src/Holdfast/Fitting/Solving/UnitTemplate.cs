using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// The unit of a parameter from its card, where {x} and {y} stand for the units of the data: "1/({x})" becomes "L/mg". A unit whose power is
/// itself a parameter, or one that nobody knows, is only put in as text.
/// </summary>
internal static class UnitTemplate
{
    /// <summary>The unit as text.</summary>
    /// <param name="template">From the card; factors joined by · and /, powers as ^(…).</param>
    /// <param name="x">Unit of x.</param>
    /// <param name="y">Unit of y.</param>
    public static string Fill(string template, string x, string y)
    {
        if (Of(x) is not { } unitX || Of(y) is not { } unitY)
            return Literal(template, x, y);
        var at = 0;
        return Product(template, ref at, unitX, unitY) is { } unit && at == template.Length ? unit.Pretty : Literal(template, x, y);
    }

    // A signal in arbitrary units has none.
    private static Unit? Of(string unit)
        => unit.Length == 0 ? Unit.One : Unit.Read(unit) is UnitText.Known { Unit: var known } ? known : null;

    private static string Literal(string template, string x, string y)
        => template.Replace("{x}", x, StringComparison.Ordinal).Replace("{y}", y, StringComparison.Ordinal);

    private static Unit? Product(string text, ref int at, Unit x, Unit y)
    {
        var product = Unit.One;
        var divide = false;
        while (at < text.Length && text[at] != ')')
        {
            if (Factor(text, ref at, x, y) is not { } factor)
                return null;
            product = divide ? product / factor : product * factor;
            if (at < text.Length && text[at] is '·' or '/')
                divide = text[at++] == '/';
        }

        return product;
    }

    private static Unit? Factor(string text, ref int at, Unit x, Unit y)
    {
        Unit? factor;
        if (text[at] == '(')
        {
            at++;
            factor = Product(text, ref at, x, y);
            if (at == text.Length)
                return null;
            at++;
        }
        else if (text[at] == '1')
        {
            at++;
            factor = Unit.One;
        }
        else if (at + 3 <= text.Length && text.AsSpan(at, 3) is "{x}" or "{y}")
        {
            factor = text[at + 1] == 'x' ? x : y;
            at += 3;
        }
        else
        {
            return null;
        }

        if (at == text.Length || text[at] != '^')
            return factor;
        var end = text.IndexOf(')', at);
        if (end < 0 || Power(text[(at + 2)..end]) is not { } power)
            return null;
        at = end + 1;
        return factor?.Pow(power);
    }

    private static double? Power(string text)
    {
        var parts = text.Replace('−', '-').Split('/');
        if (parts.Length > 2 || !double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var power))
            return null;
        if (parts.Length == 1)
            return power;
        return double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var below) ? power / below : null;
    }
}
