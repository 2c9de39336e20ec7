using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>One factor of a unit as written: "g^-1" is symbol g, power −1. For setting and for reading aloud only; arithmetic has its own units.</summary>
/// <param name="Symbol">The symbol with its prefix.</param>
/// <param name="Power">Its power; not 0.</param>
/// <param name="State">A condition in brackets behind it: "(STP)"; else empty.</param>
internal readonly record struct UnitFactor(string Symbol, int Power, string State = "")
{
    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /// <summary>The factors of a unit text; what stands behind a solidus has its power turned round.</summary>
    public static IReadOnlyList<UnitFactor> Read(string unit)
    {
        var factors = new List<UnitFactor>();
        var turned = false;
        foreach (var (token, afterSolidus) in Tokens(unit))
        {
            turned |= afterSolidus;
            var bracket = token.IndexOf('(', StringComparison.Ordinal);
            var state = bracket > 0 ? token[bracket..] : "";
            var (symbol, power) = Split(bracket > 0 ? token[..bracket] : token);
            if (symbol is not "1")
                factors.Add(new(symbol, turned ? -power : power, state));
        }

        return factors;
    }

    private static IEnumerable<(string Token, bool AfterSolidus)> Tokens(string unit)
    {
        var solidus = false;
        var start = -1;
        for (var i = 0; i <= unit.Length; i++)
        {
            // "arb. unit" is one unit of two words.
            var breaks = i == unit.Length || unit[i] is '/' or '·' or '⋅' or '*'
                || (char.IsWhiteSpace(unit[i]) && !unit[..i].EndsWith("arb.", StringComparison.Ordinal));
            if (!breaks)
            {
                if (start < 0 && unit[i] is not ('(' or ')'))
                    start = i;
                continue;
            }

            if (start >= 0)
            {
                yield return (Trim(unit[start..i]), solidus);
                solidus = false;
            }

            start = -1;
            if (i < unit.Length && unit[i] == '/')
                solidus = true;
        }
    }

    // A closing bracket belongs to the token only when it opens inside it: "cm3(STP)".
    private static string Trim(string token) => token.Contains('(', StringComparison.Ordinal) ? token : token.TrimEnd(')');

    private static (string Symbol, int Power) Split(string token)
    {
        var text = string.Concat(token.Select(c => c switch
        {
            '⁻' or '−' => "-",
            _ when Raised.Contains(c, StringComparison.Ordinal) => Raised.IndexOf(c, StringComparison.Ordinal).ToString(CultureInfo.InvariantCulture),
            _ => c.ToString(),
        }));
        var end = text.Length;
        while (end > 0 && char.IsAsciiDigit(text[end - 1]))
            end--;
        if (end > 0 && end < text.Length && text[end - 1] is '-' or '+')
            end--;
        if (end == 0 || end == text.Length)
            return (token, 1);
        var symbol = text[..end].TrimEnd('^');
        return int.TryParse(text[end..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var power) && power != 0
            ? (symbol, power)
            : (token, 1);
    }
}
