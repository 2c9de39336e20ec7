using System.Text.RegularExpressions;

namespace Holdfast.Reports.Markup;

/// <summary>
/// Sentences come as plain characters, "73.5 m2/g of Ni(OH)2 at C0 = 20 mg/L". Here, and nowhere else, what is raised, lowered or slanted in them is found, so that every
/// format sets it alike. No character is added or lost: the words stay what they were.
/// </summary>
/// <remarks>Powers of units, formulas, charges, symbols with an index, and letters before a sign of relation (IUPAC Green Book, 3rd ed., 1.3 and 1.6).</remarks>
internal static partial class Notation
{
    // Set by itself already, or not meant to be read.
    private static readonly HashSet<string> Settled = new(StringComparer.Ordinal) { "sub", "sup", "i", "em", "svg", "math", "code", "cite", "details" };

    /// <summary>A piece with its notation set.</summary>
    /// <param name="node">The piece.</param>
    public static Node Set(Node node) => node is Element element ? Set(element) : node;

    /// <summary>An element with its notation set.</summary>
    /// <param name="element">The element.</param>
    public static Element Set(Element element) => Settled.Contains(element.Name) ? element
        : new(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), element.Content.SelectMany(c => c is TextNode text ? Of(text.Value) : [Set(c)]));

    /// <summary>The pieces of a text.</summary>
    /// <param name="text">Plain characters.</param>
    public static IEnumerable<Node> Of(string text)
    {
        var from = 0;
        foreach (Match match in Notations().Matches(text))
        {
            if (Pieces(match) is not { } pieces)
                continue;
            if (match.Index > from)
                yield return text[from..match.Index];
            foreach (var piece in pieces)
                yield return piece;
            from = match.Index + match.Length;
        }

        if (from == 0)
            yield return text;
        else if (from < text.Length)
            yield return text[from..];
    }

    private static IEnumerable<Node>? Pieces(Match match)
    {
        if (match.Groups["unit"] is { Success: true, Value: var unit })
            return [unit, Html.Element("sup", match.Groups["power"].Value)];
        if (match.Groups["symbol"] is { Success: true, Value: var symbol })
            return [Html.Element("i", symbol), Html.Element("sub", match.Groups["index"].Value)];
        if (match.Groups["letter"] is { Success: true, Value: var letter })
            return [Html.Element("i", letter)];
        if (match.Groups["ion"] is { Success: true, Value: var ion })
            return IsElement(ion) ? [ion, Html.Element("sup", match.Groups["charge"].Value)] : null;
        return IsFormula(match.Value) ? Formula(match.Value) : null;
    }

    // Codes of samples look alike: a formula has elements only, more than one of them, and a group, oxygen or a symbol of two letters.
    private static bool IsFormula(string word)
        => word.Any(char.IsAsciiDigit) && Symbols().Matches(word) is { Count: > 1 } symbols && symbols.All(s => IsElement(s.Value))
            && (word.Contains('(', StringComparison.Ordinal) || symbols.Any(s => s.Value is "O" || s.Length > 1));

    private static bool IsElement(string symbol) => Composition.Element.Find(symbol) is not null;

    private static IEnumerable<Node> Formula(string word)
        => Runs().Matches(word).Select(r => char.IsAsciiDigit(r.Value[0]) ? Html.Element("sub", r.Value) : (Node)r.Value);

    // It looks behind and ahead, so it may step back; what repeats is atomic, so that no text takes more than one pass.
    // In order: a unit behind a number or solidus, or before one; a formula; a charge; a symbol with its index; a letter before = or <, and q.
    [GeneratedRegex(
        @"(?<=(?:[0-9%][ \u00A0\u202F]|/))(?<unit>[cdmnµk]?m)(?<power>[23])(?![\p{L}\p{N}])|(?<![\p{L}\p{N}_-])(?<unit>[cdmnµk]?m)(?<power>[23])(?=/\p{L})"
        + @"|(?<=[0-9][ \u00A0\u202F])(?<unit>cm|nm|min|g|L)(?<power>[-−][12])(?![\p{L}\p{N}])"
        + @"|(?<![\p{L}\p{N}_-])(?<formula>(?>(?:[A-Z][a-z]?[0-9]*|\((?>(?:[A-Z][a-z]?[0-9]*)+)\)[0-9]*){2,}))(?![\p{L}\p{N}_-])"
        + @"|(?<![\p{L}\p{N}_-])(?<ion>[A-Z][a-z]?)(?<charge>[1-4]?[+−])(?![\p{L}\p{N}])"
        + @"|(?<![\p{L}\p{N}_:.-])(?:(?<symbol>C)(?<index>0|e)|(?<symbol>q)(?<index>0|e|m|t)|(?<symbol>K)(?<index>L|F|d|S)|(?<symbol>k)(?<index>q|n|s|f|1|2)|(?<symbol>[Fps])(?<index>0))(?![\p{L}\p{N}_(-])"
        + @"|(?<![\p{L}\p{N}_-])(?<letter>[npztkKFR])(?=[ \u00A0][=<>≤≥])|(?<![\p{L}\p{N}_:/-])(?<letter>q)(?![\p{L}\p{N}_:/-])",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    [System.Diagnostics.CodeAnalysis.SuppressMessage("Security", "MA0009", Justification = "Every repetition is atomic, and what it begins with tells where it ends.")]
    private static partial Regex Notations();

    [GeneratedRegex("[A-Z][a-z]?", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Symbols();

    [GeneratedRegex("[0-9]+|[^0-9]+", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Runs();
}
