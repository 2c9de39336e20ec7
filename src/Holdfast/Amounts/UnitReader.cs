using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Amounts;

/// <summary>
/// Reads units as people and instruments write them: stroke or powers, "L-1" or "L⁻¹", u or µ or μ, dots, spaces or none. It refuses
/// to guess: "ppm", a product after a stroke and a spelling whose capitals do not fit come back as questions.
/// </summary>
internal static partial class UnitReader
{
    /// <summary>No unit is longer; what is longer is a note or a damaged cell.</summary>
    private const int LongestText = 80;

    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    private static readonly Dictionary<string, string[]> Questions = new(StringComparer.OrdinalIgnoreCase)
    {
        ["ppm"] = ["mg/L", "mg/kg"],
        ["ppb"] = ["ug/L", "ug/kg"],
        ["ppt"] = ["ng/L", "ng/kg"],
    };

    /// <summary>What the text says.</summary>
    public static UnitText Read(string? text)
    {
        if (text?.Length > LongestText)
            return new UnitText.Unknown(text.Trim());
        var plain = Simplify(text);
        if (plain.Length == 0)
            return new UnitText.Absent();
        if (plain is "1" or "-" or "--" or "none" or "dimensionless" or "unitless")
            return new UnitText.Known(Unit.One);
        if (Questions.TryGetValue(plain.Replace(".", "", StringComparison.Ordinal), out var meanings))
            return Ask(text!, meanings.Select(Unit.Parse), $"{string.Join(" or ", meanings)}?");
        if (plain == "C")
            return Ask(text!, [Unit.Parse("degC")], "Degrees Celsius?");

        if (plain.Length > 2 && plain[1..].All(char.IsLower) && UnitSymbol.BySpelling.TryGetValue(plain.ToLowerInvariant(), out var word))
            return new UnitText.Known(new Unit([(word, 1)]));

        var basis = TakeBasis(ref plain);
        if (Product(plain) is { } found)
            return found.Loose ? AskAboutStroke(text!, plain) : new UnitText.Known(found.Unit, basis);
        if (plain.Any(char.IsUpper) && Product(Lower(plain)) is { Loose: false } small)
            return Ask(text!, [small.Unit], $"{small.Unit.Plain}?");
        return new UnitText.Unknown(text!.Trim());
    }

    /// <summary>One spelling for each character that has several, and no stray spaces.</summary>
    private static string Simplify(string? text)
    {
        var line = new StringBuilder();
        var raised = false;
        foreach (var c in (text ?? "").Replace("**", "^", StringComparison.Ordinal))
        {
            if (c is '{' or '}' or '$')
                continue;
            var digit = Superscripts.IndexOf(c, StringComparison.Ordinal);
            if (digit >= 0 || c is '⁻' or '⁺')
            {
                if (!raised)
                    line.Append('^');
                raised = true;
                line.Append(digit >= 0 ? (char)('0' + digit) : c == '⁻' ? '-' : '+');
                continue;
            }

            raised = false;
            line.Append(c switch
            {
                '\u00B5' or '\u03BC' => 'u',
                '\u212B' => 'Å',
                '\u2212' or '\u2013' or '\u2010' or '\u2011' => '-',
                '·' or '⋅' or '•' or '×' or '*' or '\u2062' => ' ',
                '∕' or '⁄' or '÷' => '/',
                '\t' => ' ',
                _ when char.IsWhiteSpace(c) => ' ',
                _ => c,
            });
        }

        var plain = Spaces().Replace(line.ToString(), " ").Trim();
        if (Wrapped().Match(plain) is { Success: true } wrapped)
            plain = wrapped.Groups["inside"].Value.Trim();
        plain = ArbitraryUnits().Replace(plain, "a.u.");
        plain = Stp().Replace(plain, "cm3STP");
        plain = StpBehind().Replace(plain, "cm3STP/g");
        plain = Shares().Replace(plain, "${share}%");
        plain = DiffractionAngle().Replace(plain, "deg");
        plain = DegreeC().Replace(plain, "degC");
        return PerWord().Replace(plain, "/").Replace("mcg", "ug", StringComparison.Ordinal);
    }

    private static Basis? TakeBasis(ref string plain)
    {
        string? species = null;
        var state = SorbentState.NotStated;
        if (PerState().Match(plain) is { Success: true } per)
        {
            state = per.Groups["state"].Value.StartsWith('d') ? SorbentState.Dry : SorbentState.Wet;
            plain = plain[..per.Index].Trim();
            if (plain.Contains('(', StringComparison.Ordinal) && !plain.Contains(')', StringComparison.Ordinal))
                plain += ")";
        }

        if (AsSpecies().Match(plain) is { Success: true } trailing)
        {
            species = trailing.Groups["species"].Value;
            plain = plain[..trailing.Index].Trim();
        }
        else if (InlineSpecies().Match(plain) is { Success: true } inline && IsSpecies(inline.Groups["species"].Value))
        {
            species = inline.Groups["species"].Value;
            plain = inline.Groups["unit"].Value + "/" + plain[inline.Length..];
        }

        return species is null && state == SorbentState.NotStated ? null : new(species, state);
    }

    // "mg N/L" is nitrogen, "mg L/g" is a litre: the elements that share their symbol with a unit win, since no one counts newtons in milligrams.
    private static bool IsSpecies(string text) => text is "K" or "N" or "S" or "V" or "W" || !UnitSymbol.BySpelling.ContainsKey(text);

    /// <summary>Reads a product of powers with at most the strokes of "g/(mg min)" or "mg/g/min"; null when a symbol is not known.</summary>
    private static (Unit Unit, bool Loose)? Product(string plain, bool denominatorGoesOn = false)
    {
        var parts = new List<(UnitSymbol, double)>();
        var below = false;
        var open = false;
        var loose = false;
        var sinceStroke = 0;
        var at = 0;
        while (at < plain.Length)
        {
            var c = plain[at];
            if (c is ' ' or '.')
            {
                at++;
            }
            else if (c == '/')
            {
                if (open)
                    return null;
                below = true;
                sinceStroke = 0;
                at++;
            }
            else if (c == '(')
            {
                if (open)
                    return null;
                open = true;
                at++;
            }
            else if (c == ')')
            {
                if (!open)
                    return null;
                open = false;
                at++;
            }
            else if (c == '1' && parts.Count == 0 && !below)
            {
                at++;
                if (at >= plain.Length || plain[at] is not ('/' or ' '))
                    return null;
            }
            else
            {
                if (Factor().Match(plain[at..]) is not { Success: true } m || Symbol(m.Groups["symbol"].Value) is not { } symbol)
                    return null;
                if (Power(m.Groups["power"].Value) is not { } power)
                    return null;
                at += m.Length;
                // "J/mol K": the trade means J/(mol K), arithmetic reads J K/mol. A negative power says where it belongs.
                var outside = below && !open && sinceStroke > 0;
                loose |= outside && power > 0;
                parts.Add((symbol, below && (!outside || (denominatorGoesOn && power > 0)) ? -power : power));
                sinceStroke++;
            }
        }

        return parts.Count == 0 || open || (below && sinceStroke == 0) ? null : (new Unit(parts), loose);
    }

    private static UnitSymbol? Symbol(string spelling)
        => UnitSymbol.BySpelling.GetValueOrDefault(spelling == "cm3STP" ? "cm3(STP)" : spelling);

    private static double? Power(string text)
    {
        var digits = text.Trim().TrimStart('^').Trim('(', ')', ' ').Replace(" ", "", StringComparison.Ordinal);
        if (digits.Length == 0)
            return 1;
        if (digits.Split('/') is [var a, var b])
            return double.Parse(b, CultureInfo.InvariantCulture) is > 0 and var root ? double.Parse(a, CultureInfo.InvariantCulture) / root : null;
        var power = double.Parse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return power == 0 ? null : power;
    }

    private static UnitText.Ambiguous AskAboutStroke(string text, string plain)
    {
        var together = Product(plain, denominatorGoesOn: true)!.Value.Unit;
        var stepwise = Product(plain)!.Value.Unit;
        return Ask(text, [together, stepwise], $"{together.Plain} or {stepwise.Plain}?");
    }

    private static UnitText.Ambiguous Ask(string text, IEnumerable<Unit> candidates, string question)
        => new(text.Trim(), [.. candidates], $"'{text.Trim()}': {question}");

    private static string Lower(string plain)
        => plain.ToLowerInvariant().Replace("/l", "/L", StringComparison.Ordinal);

    [GeneratedRegex(@"^(\((?<inside>[^()]*(\([^()]*\))?[^()]*)\)|\[(?<inside>[^\[\]]*)\])$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Wrapped();

    [GeneratedRegex(@"\s+", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^\(?(arb(itrary)?\.? ?(u(nits?)?\.?)|a\. ?u\.?|u\. ?a\.?|w\. ?e\.|willk\w*\.? ?einh\w*\.?)\)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex ArbitraryUnits();

    [GeneratedRegex(@"(?<share>wt|at|mol|vol)\.?[ -]?%", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Shares();

    [GeneratedRegex(@"^(°|deg\.?|degrees?) ?2 ?-?(θ|theta)$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex DiffractionAngle();

    [GeneratedRegex(@"(cm\^?3|cc|mL|ml) ?\(? ?STP ?\)?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Stp();

    [GeneratedRegex(@"^(cm\^?3|cc|mL|ml) ?/ ?g ?,? ?\(? ?STP ?\)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex StpBehind();

    [GeneratedRegex(@"\b(deg(ree)?s?\.? ?C(elsius)?)\b|° ?C\b|º ?C\b|℃|\boC\b", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex DegreeC();

    [GeneratedRegex(@" ?(?:\bper\b|/) ?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerWord();

    [GeneratedRegex(@"[ -]?\(?(?<state>dry|d\.?w\.?|wet|w\.?w\.?)( (sorbent|weight|mass|powder|basis))?\)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerState();

    [GeneratedRegex(@",? ?\(?as (?<species>[A-Z][\w()·.+-]*?)\)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex AsSpecies();

    [GeneratedRegex(@"^(?<unit>[numkp]?(?:g|mol)) ?\(?(?<species>[A-Z][A-Za-z0-9()]*?[+-]?)\)?/", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex InlineSpecies();

    [GeneratedRegex(@"^(?<symbol>cm3STP|a\.u\.|[A-Za-zÅ°ℓ]*%|[A-Za-zÅ°ℓ]+)(?<power> ?\^ ?\([+-]?\d+(?:\.\d+|/\d+)?\)| ?\^ ?[+-]?\d+(?:\.\d+)?| ?[+-]\d+(?:\.\d+)?|\d+(?:\.\d+)?|)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Factor();
}
