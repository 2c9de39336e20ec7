using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Amounts;

/// <summary>Reads one cell. The platform's own parser is used only on digits that were checked and rewritten here, never on the cell itself.</summary>
internal static partial class CellReader
{
    /// <summary>
    /// No number is written longer; what is longer is a note. It also bounds the work of the expressions below, which need no limit of time: that would
    /// depend on how busy the computer is.
    /// </summary>
    private const int LongestText = 80;
    private const string NoPower = "0";

    private static readonly HashSet<string> BelowWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "nd", "not detected", "not detectable", "bdl", "bld", "below detection", "below detection limit", "below limit", "under limit", "below lod", "below loq", "below dl", "udl", "lod", "dl", "mdl",
        "loq", "blq", "bloq", "under", "underrange", "low", "trace", "tr",
    };

    private static readonly HashSet<string> AboveWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "over", "ovr", "ovf", "overflow", "overrange", "over range", "ol", "+ol", "or", "high", "sat", "saturated", "out of range high",
    };

    private static readonly HashSet<string> NotFiniteWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "nan", "-nan", "+nan", "qnan", "inf", "+inf", "-inf", "infinity", "+infinity", "-infinity", "∞", "+∞", "-∞", "1.#inf", "-1.#inf",
        "1.#qnan", "-1.#qnan", "1.#ind", "-1.#ind",
    };

    private static readonly HashSet<string> MissingWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "-", "--", "---", "n/a", "na", "none", "null", ".", "?", "missing", "not measured", "nm", "n.m.", "not analysed",
    };

    /// <summary>What the cell says.</summary>
    public static CellText Read(string? text, DecimalMark? mark)
    {
        var written = (text ?? "").Trim();
        if (written.Length == 0)
            return new CellText.Blank();
        if (written.Length > LongestText)
            return new CellText.NotANumber(written, NotANumberKind.Words);
        if (IsPlain(written))
        {
            // The usual number needs no look at its parts: no mark, or the file's own.
            return written.IndexOfAny(['.', ',']) switch
            {
                < 0 => Make(written, written, NoPower),
                var at when written[at] == '.' && mark is not DecimalMark.Comma => Make(written, written, NoPower),
                var at when written[at] == ',' && mark is DecimalMark.Comma => Make(written, written.Replace(',', '.'), NoPower),
                _ => ReadBody(written, written[0] == '-' ? "-" : "", written[0] == '-' ? written[1..] : written, NoPower, mark),
            };
        }

        var plain = Simplify(written);
        if (Limit().Match(plain) is { Success: true } limit)
            return Censored(written, limit, mark);
        if (plain.Length >= 2 && plain.All(c => c == '*'))
            return new CellText.Censored(CensoredSide.Above, null, null, written);
        if (plain[0] == '#')
            return new CellText.NotANumber(written, NotANumberKind.WorksheetError);
        if (NotFiniteWords.Contains(plain))
            return new CellText.NotANumber(written, NotANumberKind.NotFinite);
        if (MissingWords.Contains(plain))
            return new CellText.NotANumber(written, NotANumberKind.Missing);

        var word = plain.Replace(".", "", StringComparison.Ordinal).Trim();
        if (BelowWords.Contains(word))
            return new CellText.Censored(CensoredSide.Below, null, NameOf(word), written);
        if (AboveWords.Contains(word))
            return new CellText.Censored(CensoredSide.Above, null, null, written);
        return ReadNumber(written, plain, mark);
    }

    /// <summary>One spelling for each sign that has several; grouping by hard or thin spaces is taken out where it is in threes.</summary>
    private static string Simplify(string written)
    {
        var line = new StringBuilder();
        var inPower = false;
        foreach (var c in written)
        {
            var raised = "⁰¹²³⁴⁵⁶⁷⁸⁹".IndexOf(c, StringComparison.Ordinal);
            var isPower = raised >= 0 || c is '⁻' or '⁺';
            if (isPower && !inPower)
                line.Append('^');
            inPower = isPower;
            line.Append(raised >= 0 ? (char)('0' + raised) : c switch
            {
                '\u2212' or '\u2013' or '\u2010' or '\u2011' or '\uFE63' or '\uFF0D' or '⁻' => '-',
                '⁺' => '+',
                '×' or '⋅' or '·' => '*',
                '≤' or '⩽' => '<',
                '≥' or '⩾' => '>',
                '\u00A0' or '\u2007' or '\u2009' or '\u202F' => '\u00A0',
                _ when char.IsWhiteSpace(c) => ' ',
                _ => c,
            });
        }

        var plain = line.ToString().Trim(' ', '\u00A0');
        return GroupedBySpaces().IsMatch(plain) ? plain.Replace(' ', '\u00A0') : plain;
    }

    private static CellText.Censored Censored(string written, Match limit, DecimalMark? mark)
    {
        var side = limit.Groups["sign"].Value[0] == '<' ? CensoredSide.Below : CensoredSide.Above;
        var rest = limit.Groups["rest"].Value.Trim(' ', '\u00A0');
        var value = ReadNumber(rest, rest, mark) is CellText.Number number ? number.Value : (double?)null;
        return new(side, value, value is null ? NameOf(rest.Replace(".", "", StringComparison.Ordinal)) : null, written);
    }

    private static string? NameOf(string word) => word.ToUpperInvariant() switch
    {
        "LOD" or "DL" or "MDL" or "BDL" or "BLD" or "UDL" or "ND" or "NOT DETECTED" or "NOT DETECTABLE" or "BELOW DETECTION"
            or "BELOW DETECTION LIMIT" => "LOD",
        "LOQ" or "QL" or "MQL" or "BLQ" or "BLOQ" or "TRACE" or "TR" => "LOQ",
        _ => null,
    };

    private static CellText ReadNumber(string written, string plain, DecimalMark? mark)
    {
        var m = Digits().Match(plain);
        if (!m.Success)
            return new CellText.NotANumber(written, NotANumberKind.Words);
        var exponent = m.Groups["power"].Success ? m.Groups["power"].Value.Replace(" ", "", StringComparison.Ordinal) : NoPower;
        if (m.Groups["alone"].Success)
            return Make(written, "1", exponent);

        var body = m.Groups["body"].Value;
        if (body.Contains('\u00A0', StringComparison.Ordinal))
        {
            if (!Grouped().IsMatch(body))
                return new CellText.NotANumber(written, NotANumberKind.Words);
            body = body.Replace("\u00A0", "", StringComparison.Ordinal);
        }

        return ReadBody(written, m.Groups["sign"].Value, body, exponent, mark);
    }

    // Digits with at most one mark between them need no expression to be read.
    public static bool IsPlain(string written)
    {
        if (written.Length is 0 or > LongestText)
            return false;
        var (digits, marks) = (0, 0);
        for (var i = written[0] == '-' ? 1 : 0; i < written.Length; i++)
        {
            digits += char.IsAsciiDigit(written[i]) ? 1 : 0;
            marks += written[i] is '.' or ',' ? 1 : 0;
        }

        return digits > 0 && marks <= 1 && digits + marks + (written[0] == '-' ? 1 : 0) == written.Length && char.IsAsciiDigit(written[^1]) && (char.IsAsciiDigit(written[0]) || char.IsAsciiDigit(written[1]));
    }

    private static CellText ReadBody(string written, string sign, string body, string exponent, DecimalMark? mark)
    {
        return (body.Contains('.', StringComparison.Ordinal), body.Contains(',', StringComparison.Ordinal)) switch
        {
            (false, false) => Make(written, sign + body, exponent),
            (true, true) => ReadBoth(written, sign, body, exponent, mark),
            (true, false) => ReadOne(written, sign, body, exponent, '.', mark is null or DecimalMark.Point, certain: true),
            (false, true) => ReadOne(written, sign, body, exponent, ',', mark is null or DecimalMark.Comma, certain: mark is DecimalMark.Comma),
        };
    }

    /// <summary>Point and comma in one cell: only one reading is possible, the last one is the decimal mark and the others group by three.</summary>
    private static CellText ReadBoth(string written, string sign, string body, string exponent, DecimalMark? mark)
    {
        var isPoint = body.LastIndexOf('.') > body.LastIndexOf(',');
        if (mark is { } settled && settled != (isPoint ? DecimalMark.Point : DecimalMark.Comma))
            return new CellText.NotANumber(written, NotANumberKind.Words);
        var (last, group) = isPoint ? ('.', ',') : (',', '.');
        var parts = body.Split(last);
        if (parts.Length != 2 || !InThrees(parts[0].Split(group)) || parts[1].Contains(group, StringComparison.Ordinal))
            return new CellText.NotANumber(written, NotANumberKind.Words);
        return Make(written, $"{sign}{parts[0].Replace(group.ToString(), "", StringComparison.Ordinal)}.{parts[1]}", exponent);
    }

    /// <summary>One kind of mark: the decimal mark, or, where it comes in threes, perhaps grouping.</summary>
    private static CellText ReadOne(string written, string sign, string body, string exponent, char used, bool fits, bool certain)
    {
        var parts = body.Split(used);
        var grouping = InThrees(parts) && parts[0].TrimStart('0').Length > 0;
        if (parts.Length == 2 && fits && (certain || !grouping))
            return Make(written, $"{sign}{parts[0]}.{parts[1]}", exponent);
        if (parts.Length == 2 && !fits && !grouping)
            return new CellText.NotANumber(written, NotANumberKind.Words);
        if (!grouping)
            return new CellText.NotANumber(written, NotANumberKind.Words);

        var whole = Make(written, sign + string.Concat(parts), exponent);
        // In a file whose decimal mark is settled, the other mark in threes can only group.
        if (!fits)
            return whole;
        var split = parts.Length == 2 ? Make(written, $"{sign}{parts[0]}.{parts[1]}", exponent) : whole;
        double[] candidates = [.. new[] { split, whole }.OfType<CellText.Number>().Select(n => n.Value).Distinct()];
        return candidates.Length == 0 ? whole : new CellText.Ambiguous(written, candidates);
    }

    private static bool InThrees(string[] groups)
        => groups.Length >= 2 && groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3);

    private static CellText Make(string written, string digits, string exponent)
    {
        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        var power = 0;
        if ((exponent != NoPower && !int.TryParse(exponent, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out power))
            || !double.TryParse(power == 0 ? digits : string.Create(CultureInfo.InvariantCulture, $"{digits}e{power}"), Style, CultureInfo.InvariantCulture, out var value)
            || !double.IsFinite(value)
            || (value == 0 && digits.Any(c => c is >= '1' and <= '9')))
            return new CellText.NotANumber(written, NotANumberKind.OutOfRange);
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var step = Math.Pow(10, power - (point < 0 ? 0 : digits.Length - point - 1));
        return new CellText.Number(value, step);
    }

    [GeneratedRegex(@"^[+-]?[0-9]{1,3}( [0-9]{3})+([.,][0-9]+)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex GroupedBySpaces();

    [GeneratedRegex(@"^(?<sign>[<>])=?(?<rest>.*)$", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Limit();

    // Digits with at most one sign and one power of ten: "1.2e-3", "1,2E-3", "1.2*10^-3", "10^-3".
    [GeneratedRegex(@"^(?:(?<sign>[+-]?) ?(?<body>[0-9.,\u00A0]*[0-9][0-9.,\u00A0]*?)(?: ?(?:[eEdD] ?|[*xX] ?10 ?\^? ?)(?<power>[+-]? ?[0-9]+))?|(?<alone>10) ?\^ ?(?<power>[+-]?[0-9]+))$", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Digits();

    [GeneratedRegex(@"^(?:[0-9]{1,3}(?:\u00A0[0-9]{3})+(?:[.,][0-9]*)?|[0-9]{1,3}(?:\u00A0[0-9]{3})*[.,][0-9]{3}(?:\u00A0[0-9]{1,3})+)$", RegexOptions.ExplicitCapture, Timeout.Infinite)]
    private static partial Regex Grouped();
}
