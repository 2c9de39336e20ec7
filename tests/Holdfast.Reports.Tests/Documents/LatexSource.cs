using System.Globalization;
using System.Text;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>
/// LaTeX source read back by the rules of the language (D. Knuth, The TeXbook, chapters 3, 7 and 8; from memory), apart from the code that writes it: groups and environments
/// that open close, and the words that a reader would see, counters included.
/// </summary>
internal sealed class LatexSource
{
    // Commands that print a sign.
    private static readonly Dictionary<string, string> Signs = Of<string>(
    [
        ("textbackslash", "\\"), ("textasciicircum", "^"), ("textasciitilde", "~"), ("textquotedbl", "\""), ("textbar", "|"), ("textless", "<"), ("textgreater", ">"), ("textasciigrave", "`"),
        ("textquotesingle", "'"), ("textendash", "–"), ("textemdash", "—"), ("textquoteleft", "‘"), ("textquoteright", "’"), ("textquotedblleft", "“"), ("textquotedblright", "”"),
        ("textdegree", "°"), ("textmu", "µ"), ("textdagger", "†"), ("textellipsis", "…"), ("textbullet", "•"), ("S", "§"), ("alpha", "α"), ("Delta", "Δ"), ("times", "×"), ("cdot", "·"), ("pm", "±"),
        ("leq", "≤"), ("geq", "≥"), ("approx", "≈"), ("rightarrow", "→"), ("lambda", "λ"), ("tau", "τ"), ("chi", "χ"), ("beta", "β"), ("mu", "μ"), ("surd", "√"), (",", " "), ("infty", "∞"), ("newline", " "),
        ("theta", "θ"), ("Phi", "Φ"), ("varphi", "φ"), ("nu", "ν"), ("rho", "ρ"), ("sigma", "σ"), ("varepsilon", "ε"), ("texteuro", "€"), ("AA", "Å"), ("eta", "η"), ("pi", "π"),
    ]);

    // Commands whose arguments a reader does not see, with how many there are.
    private static readonly Dictionary<string, int> Silent = Of<int>(
    [
        ("hypertarget", 2), ("label", 1), ("includegraphics", 1), ("hspace", 1), ("hphantom", 1), ("setlength", 2), ("bibliographystyle", 1), ("bibliography", 1), ("cite", 1),
    ]);

    private readonly string text;
    private readonly StringBuilder words = new();
    private readonly Stack<string> open = new();
    private readonly Dictionary<string, int> counters = new(StringComparer.Ordinal);
    private int at;

    /// <summary>Reads a source.</summary>
    /// <param name="source">The whole file.</param>
    public LatexSource(string source)
    {
        text = string.Join('\n', source.Split('\n').Where(l => !l.StartsWith('%')));
        var start = text.IndexOf(@"\begin{document}", StringComparison.Ordinal);
        CheckGroups(text);
        at = start;
        while (at < text.Length)
            Step();
        if (open.Count > 0)
            throw new FormatException($"Never closed: {string.Join(", ", open)}.");
    }

    /// <summary>What a reader sees, cells and blocks apart by line ends.</summary>
    public string Words => words.ToString();

    /// <summary>Arguments of commands that name things: "ref", "label", "cite", "includegraphics", "hyperlink", "hypertarget".</summary>
    public ILookup<string, string> Names => named.ToLookup(n => n.Command, n => n.Name);

    private readonly List<(string Command, string Name)> named = [];

    private static Dictionary<string, TValue> Of<TValue>((string Name, TValue Value)[] all) => all.ToDictionary(a => a.Name, a => a.Value, StringComparer.Ordinal);

    // Braces pair up, a backslash takes the next sign away, and dollars pair up within a group of the text.
    private static void CheckGroups(string text)
    {
        var (depth, dollars) = (0, 0);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\\')
            {
                i++;
                continue;
            }

            depth += text[i] == '{' ? 1 : text[i] == '}' ? -1 : 0;
            dollars += text[i] == '$' ? 1 : 0;
            if (depth < 0)
                throw new FormatException($"A brace closes nothing: …{text[Math.Max(0, i - 60)..i]}");
            if (text[i] is '\n' && dollars % 2 != 0)
                throw new FormatException($"A dollar is alone in its line: …{text[Math.Max(0, i - 200)..i]}");
            if (text[i] is '#' && !text[..i].Contains(@"\begin{document}", StringComparison.Ordinal))
                continue;
            if (text[i] is '#' or '%')
                throw new FormatException($"A sign of the language stands bare: …{text[Math.Max(0, i - 60)..(i + 1)]}");
        }

        if (depth != 0)
            throw new FormatException($"{depth} braces are never closed.");
    }

    private void Step()
    {
        var c = text[at++];
        switch (c)
        {
            case '\\':
                Command();
                break;
            case '{' or '}':
                break;
            case '$':
                Equation();
                break;
            case '~':
                words.Append('\u00A0');
                break;
            case '&':
                words.Append('\n');
                break;
            default:
                words.Append(c);
                break;
        }
    }

    private void Command()
    {
        if (!char.IsAsciiLetter(text[at]))
        {
            var sign = text[at++];
            words.Append(sign == '\\' ? "\n" : Signs.GetValueOrDefault(sign.ToString(), sign.ToString()));
            return;
        }

        var from = at;
        while (char.IsAsciiLetter(text[at]))
            at++;
        var name = text[from..at];
        var star = text[at] == '*';
        if (star)
            at++;
        // A space behind a command ends its name and is not seen.
        if (text[at] == ' ')
            at++;
        if (Signs.TryGetValue(name, out var seen))
        {
            words.Append(seen);
            return;
        }

        switch (name)
        {
            case "begin":
                open.Push(Argument());
                if (text[at] == '[')
                    at = text.IndexOf(']', at) + 1;
                if (open.Peek() is "longtable" or "minipage")
                    Argument();
                break;
            case "end":
                var closes = Argument();
                if (open.Count == 0 || open.Pop() != closes)
                    throw new FormatException($"{closes} ends and is not open.");
                break;
            case "section" when !star:
                words.Append(Count("section")).Append(". ");
                break;
            case "caption" when !star:
                var kind = open.Contains("longtable") ? "Table" : "Figure";
                words.Append(CultureInfo.InvariantCulture, $"{kind} {Count(kind)}. ");
                break;
            case "ref":
                var to = Argument();
                named.Add((name, to));
                words.Append(to[(to.IndexOf('-', StringComparison.Ordinal) + 1)..]);
                break;
            case "hyperlink":
                named.Add((name, Argument()));
                break;
            case "endfirsthead":
                // The head stands again on the pages that follow.
                at = text.IndexOf(@"\endhead", at, StringComparison.Ordinal);
                break;
            default:
                for (var i = 0; i < Silent.GetValueOrDefault(name); i++)
                {
                    if (text[at] == '[')
                        at = text.IndexOf(']', at) + 1;
                    var argument = Argument();
                    if (i == 0)
                        named.Add((name, argument));
                }

                if (name.StartsWith("input", StringComparison.Ordinal) || name is "write" or "openout" or "catcode" or "def")
                    throw new FormatException($"The command {name} has no place here.");
                break;
        }
    }

    private int Count(string what) => counters[what] = counters.GetValueOrDefault(what) + 1;

    private string Argument()
    {
        if (text[at] != '{')
            throw new FormatException($"An argument is missing: {text[Math.Max(0, at - 40)..at]}");
        var (from, depth) = (at + 1, 0);
        do
        {
            depth += text[at] == '{' ? 1 : text[at] == '}' ? -1 : 0;
            at++;
        }
        while (depth > 0);
        return text[from..(at - 1)];
    }

    // A single sign or raised figure is part of the words; an equation is none, as in the other formats.
    private void Equation()
    {
        var end = text.IndexOf('$', at);
        var inside = text[at..end];
        at = end + 1;
        if (inside == "-")
            words.Append('−');
        else if (inside.StartsWith("^{", StringComparison.Ordinal) && inside.Length == 4)
            words.Append("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻"["0123456789+-".IndexOf(inside[2], StringComparison.Ordinal)]);
        else if (inside.StartsWith("_{", StringComparison.Ordinal) && inside.Length == 4)
            words.Append("₀₁₂₃₄₅₆₇₈₉₊₋"["0123456789+-".IndexOf(inside[2], StringComparison.Ordinal)]);
        else if (inside.StartsWith('\\') && Signs.TryGetValue(inside[1..], out var sign))
            words.Append(sign);
    }
}
