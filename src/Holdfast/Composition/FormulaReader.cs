using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Composition;

/// <summary>Reads formulas. A point is the decimal mark of a count or the dot of a hydrate; before "H2O" it is the dot.</summary>
internal sealed partial class FormulaReader
{
    private const int LongestText = 200;
    private const int LongestCharge = 2;

    private readonly string text;
    private readonly List<KeyValuePair<Element, double>> found = [];
    private int at;
    private string? fault;

    private FormulaReader(string text) => this.text = text;

    /// <summary>The formula, or why there is none.</summary>
    public static Outcome<Formula> Read(string? written)
    {
        var plain = Simplify(written);
        if (plain.Length is 0 or > LongestText)
            return Refuse(written, "there is no formula");
        if (char.IsLower(plain[0]))
            return Refuse(written, "a formula begins with a capital: is it an element or a group?");
        if (TakeCharge(ref plain) is not { } charge)
            return Refuse(written, "no ion has that charge");
        var reader = new FormulaReader(plain);
        reader.ReadAll();
        if (reader.fault is { } fault)
            return Refuse(written, fault);
        if (reader.found.FirstOrDefault(p => p.Key.AtomicWeight is null).Key is { } weightless)
            return Refuse(written, $"{weightless.Name} has no standard atomic weight; a mass number is needed");
        return new(new Formula(written!.Trim(), reader.found, charge), []);
    }

    private static Outcome<Formula> Refuse(string? written, string why)
        => Outcome<Formula>.None(Finding.Of("HF-494", Weight.Stop, $"'{written}' cannot be weighed: {why}."));

    private static string Simplify(string? written)
    {
        var plain = new StringBuilder();
        foreach (var c in (written ?? "").Trim())
        {
            plain.Append(c switch
            {
                >= '₀' and <= '₉' => (char)('0' + (c - '₀')),
                '⁰' => '0',
                '¹' => '1',
                '²' => '2',
                '³' => '3',
                >= '⁴' and <= '⁹' => (char)('4' + (c - '⁴')),
                '⁺' => '+',
                '⁻' or '\u2212' or '\u2013' => '-',
                '·' or '•' or '⋅' or '∙' or '*' or '×' => '·',
                '[' or '{' => '(',
                ']' or '}' => ')',
                _ => c,
            });
        }

        return Space().Replace(plain.ToString(), m => m.Groups["charge"].Success ? "^" : m.Groups["water"].Success ? "·" : m.Groups["digits"].Success ? "?" : "");
    }

    /// <summary>Takes the charge off the end: "^2-", "2+" on a single element, the last of two digits on a group ("SO42-"), or a bare sign.</summary>
    private static int? TakeCharge(ref string plain)
    {
        if (RomanState().Match(plain) is { Success: true } roman)
        {
            plain = plain[..roman.Index];
            return roman.Groups["state"].Value switch { "I" => 1, "II" => 2, "III" => 3, "IV" => 4, "V" => 5, "VI" => 6, _ => 7 };
        }

        if (ChargeAtEnd().Match(plain) is not { Success: true } m)
            return 0;
        var sign = m.Groups["sign"].Value == "-" ? -1 : 1;
        var digits = m.Groups["digits"].Value;
        var body = plain[..m.Index];
        if (m.Groups["caret"].Success || m.Groups["after"].Success)
        {
            plain = body + (m.Groups["caret"].Success ? "" : digits);
            var size = m.Groups["caret"].Success ? digits : m.Groups["after"].Value;
            return size.Length > LongestCharge ? null : sign * (size.Length == 0 ? 1 : int.Parse(size, CultureInfo.InvariantCulture));
        }

        var single = Element.Find(body) is not null;
        var taken = digits.Length == 0 ? 0 : single && digits.Length == 1 ? 1 : digits.Length >= 2 ? 1 : 0;
        plain = body + digits[..^taken];
        return sign * (taken == 0 ? 1 : digits[^1] - '0');
    }

    private void ReadAll()
    {
        do
        {
            var start = at;
            var times = Number(leads: true) ?? 1;
            var parts = Group(nested: false);
            if (fault is null && parts.Count == 0)
                fault = start == 0 && text.Length > 0 ? $"'{text[0]}' does not begin a formula" : "a part after the dot is empty";
            foreach (var (element, count) in parts)
                Add(found, element, count * times);
        }
        while (fault is null && TakeDot());

        if (fault is null && at < text.Length)
            fault = text[at] == ')' ? "a bracket is closed that was not opened" : $"'{text[at]}' is not understood";
    }

    private List<KeyValuePair<Element, double>> Group(bool nested)
    {
        var parts = new List<KeyValuePair<Element, double>>();
        while (fault is null && at < text.Length)
        {
            if (text[at] == '(')
            {
                at++;
                var inner = Group(nested: true);
                if (fault is not null)
                    break;
                if (inner.Count == 0)
                    fault = "a bracket is empty";
                var times = Number() ?? 1;
                foreach (var (element, count) in inner)
                    Add(parts, element, count * times);
            }
            else if (text[at] == ')')
            {
                if (!nested)
                    return parts;
                at++;
                return parts;
            }
            else if (char.IsAsciiLetterUpper(text[at]))
            {
                if (Symbol() is { } element)
                    Add(parts, element, Number() ?? 1);
            }
            else
            {
                break;
            }
        }

        if (nested && fault is null)
            fault = "a bracket is not closed";
        return parts;
    }

    private Element? Symbol()
    {
        var length = at + 1 < text.Length && char.IsAsciiLetterLower(text[at + 1]) ? 2 : 1;
        var symbol = text.Substring(at, length);
        if (Element.Find(symbol) is { } element)
        {
            at += length;
            return element;
        }

        fault = $"there is no element {symbol}";
        return null;
    }

    private double? Number(bool leads = false)
    {
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        if (at < text.Length - 1 && text[at] == '.' && char.IsAsciiDigit(text[at + 1]) && at > start && (leads || !WaterAfterDot().IsMatch(text.AsSpan(at))))
        {
            at++;
            while (at < text.Length && char.IsAsciiDigit(text[at]))
                at++;
        }

        return at == start ? null : double.Parse(text.AsSpan(start, at - start), CultureInfo.InvariantCulture);
    }

    private bool TakeDot()
    {
        if (at >= text.Length || text[at] is not ('·' or '.'))
            return false;
        at++;
        return true;
    }

    private static void Add(List<KeyValuePair<Element, double>> parts, Element element, double count)
    {
        var known = parts.FindIndex(p => p.Key.Number == element.Number);
        if (known < 0)
            parts.Add(new(element, count));
        else
            parts[known] = new(element, parts[known].Value + count);
    }

    // It never goes back: what stands around the spaces is looked at once. So it needs no limit of time, which would depend on how busy the computer is.
    // A space means nothing, but for the one before a charge ("SO4 2-") or before water ("CuSO4 5H2O"); between two digits it is refused.
    [GeneratedRegex(@"\s+((?<charge>(?=[0-9]?[+-]$))|(?<water>(?<=[A-Za-z0-9)]\s+)(?=[0-9.]+H2O))|(?<digits>(?<=[0-9]\s+)(?=[0-9])))?", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Space();

    [GeneratedRegex(@"\((?<state>I|II|III|IV|V|VI|VII)\)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex RomanState();

    [GeneratedRegex(@"(?<caret>\^)?(?<digits>[0-9]*)(?<sign>[+-])(?<after>[0-9])?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex ChargeAtEnd();

    [GeneratedRegex(@"^\.([0-9]+(\.[0-9]+)?)?H2O", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex WaterAfterDot();
}
