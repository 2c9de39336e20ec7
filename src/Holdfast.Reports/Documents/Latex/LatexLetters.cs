using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace Holdfast.Reports.Documents.Latex;

/// <summary>
/// Characters as LaTeX source. Signs of the language itself are escaped, others that its plain typefaces lack become commands of standard packages, and a character for
/// which there is none is written by its number, "[U+4E2D]": nothing is lost and nothing stops the run.
/// </summary>
internal static class LatexLetters
{
    /// <summary>A word of more letters may break anywhere.</summary>
    public const int LongWord = 26;

    private const int BetweenBreaks = 12;

    // Signs of the language (L. Lamport, LaTeX, 2nd ed., 1994, 2.1; from memory), and brackets that would begin an option behind an item or the end of a row.
    private static readonly FrozenDictionary<char, string> Own = Read(
    [
        ('\\', @"\textbackslash{}"), ('{', @"\{"), ('}', @"\}"), ('$', @"\$"), ('&', @"\&"), ('#', @"\#"), ('_', @"\_"), ('%', @"\%"),
        ('^', @"\textasciicircum{}"), ('~', @"\textasciitilde{}"), ('[', "{[}"), (']', "{]}"), ('*', "{*}"), ('"', @"\textquotedbl{}"), ('|', @"\textbar{}"),
        ('<', @"\textless{}"), ('>', @"\textgreater{}"), ('`', @"\textasciigrave{}"), ('\'', @"\textquotesingle{}"),
    ]);

    // Inside an equation, in braces behind "$"; in text the same between dollars.
    private static readonly FrozenDictionary<char, string> Mathematical = Read(
    [
        ('−', "-"), ('×', @"\times"), ('·', @"\cdot"), ('±', @"\pm"), ('≤', @"\leq"), ('≥', @"\geq"), ('≈', @"\approx"), ('≠', @"\neq"), ('∞', @"\infty"),
        ('→', @"\rightarrow"), ('←', @"\leftarrow"), ('↔', @"\leftrightarrow"), ('⇌', @"\leftrightarrow"), ('√', @"\surd"), ('Σ', @"\Sigma"), ('∑', @"\sum"), ('∝', @"\propto"), ('∂', @"\partial"),
        ('α', @"\alpha"), ('β', @"\beta"), ('γ', @"\gamma"), ('δ', @"\delta"), ('ε', @"\varepsilon"), ('ζ', @"\zeta"), ('η', @"\eta"), ('θ', @"\theta"), ('ι', @"\iota"), ('κ', @"\kappa"),
        ('λ', @"\lambda"), ('μ', @"\mu"), ('ν', @"\nu"), ('ξ', @"\xi"), ('π', @"\pi"), ('ρ', @"\rho"), ('σ', @"\sigma"), ('τ', @"\tau"), ('υ', @"\upsilon"), ('φ', @"\varphi"), ('χ', @"\chi"),
        ('ψ', @"\psi"), ('ω', @"\omega"), ('Γ', @"\Gamma"), ('Δ', @"\Delta"), ('Θ', @"\Theta"), ('Λ', @"\Lambda"), ('Π', @"\Pi"), ('Φ', @"\Phi"), ('Ψ', @"\Psi"), ('Ω', @"\Omega"),
        ('Ξ', @"\Xi"), ('Υ', @"\Upsilon"), ('ς', @"\varsigma"), ('ο', "o"),
        ('Α', @"\mathrm{A}"), ('Β', @"\mathrm{B}"), ('Ε', @"\mathrm{E}"), ('Ζ', @"\mathrm{Z}"), ('Η', @"\mathrm{H}"), ('Ι', @"\mathrm{I}"), ('Κ', @"\mathrm{K}"), ('Μ', @"\mathrm{M}"), ('Ν', @"\mathrm{N}"), ('Ο', @"\mathrm{O}"), ('Ρ', @"\mathrm{P}"), ('Τ', @"\mathrm{T}"), ('Χ', @"\mathrm{X}"),
        ('ħ', @"\hbar"), ('∆', @"\Delta"), ('∗', @"\ast"), ('′', "'"), ('″', "''"),
    ]);

    private static readonly FrozenDictionary<char, string> Textual = Read(
    [
        ('\u00A0', "~"), ('\u2009', @"\,"), ('\u202F', @"\,"), ('\u2007', @"\hphantom{0}"), ('\u2008', @"\hphantom{.}"), ('\u200B', @"\hspace{0pt}"), ('\u2011', "-"), ('\u2010', "-"),
        ('–', @"\textendash{}"), ('—', @"\textemdash{}"), ('‘', @"\textquoteleft{}"), ('’', @"\textquoteright{}"), ('“', @"\textquotedblleft{}"), ('”', @"\textquotedblright{}"),
        ('„', @"\quotedblbase{}"), ('‚', @"\quotesinglbase{}"), ('«', @"\guillemotleft{}"), ('»', @"\guillemotright{}"), ('…', @"\textellipsis{}"), ('•', @"\textbullet{}"),
        ('†', @"\textdagger{}"), ('‡', @"\textdaggerdbl{}"), ('§', @"\S{}"), ('¶', @"\P{}"), ('°', @"\textdegree{}"), ('µ', @"\textmu{}"), ('‰', @"\textperthousand{}"), ('€', @"\texteuro{}"),
        ('£', @"\pounds{}"), ('©', @"\textcopyright{}"), ('®', @"\textregistered{}"), ('™', @"\texttrademark{}"), ('¢', @"\textcent{}"), ('¥', @"\textyen{}"), ('¡', @"\textexclamdown{}"), ('¿', @"\textquestiondown{}"),
        ('½', @"\textonehalf{}"), ('¼', @"\textonequarter{}"), ('¾', @"\textthreequarters{}"), ('¬', @"\textlnot{}"), ('÷', @"\textdiv{}"), ('ª', @"\textordfeminine{}"), ('º', @"\textordmasculine{}"),
        ('Å', @"\AA{}"), ('\u212B', @"\AA{}"),
    ]);

    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻";
    private const string Lowered = "₀₁₂₃₄₅₆₇₈₉₊₋";
    private const string Plain = "0123456789+-";

    /// <summary>A text between other text.</summary>
    /// <param name="text">The characters.</param>
    public static string Text(string text)
    {
        var to = new StringBuilder(text.Length + 16);
        var (word, last) = (0, '\0');
        var length = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsWhiteSpace(c))
            {
                word = length = 0;
            }
            else if (length == 0)
            {
                while (i + length < text.Length && !char.IsWhiteSpace(text[i + length]))
                    length++;
                word = 0;
            }

            // A hash or an address: nobody would divide it right.
            if (length > LongWord && word > 0 && word % BetweenBreaks == 0 && !char.IsLowSurrogate(c))
                to.Append(@"\allowbreak{}");
            word++;
            // Two of these in a row would be drawn as one other sign.
            if (c == last && c is '-' or ',')
                to.Append("{}");
            last = c;
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                to.Append(CultureInfo.InvariantCulture, $"{{[}}U+{char.ConvertToUtf32(c, text[++i]):X4}{{]}}");
            else
                to.Append(One(c));
        }

        return to.ToString();
    }

    /// <summary>Characters in an equation.</summary>
    /// <param name="text">The characters.</param>
    public static string Math(string text) => string.Concat(text.Select(c => Mathematical.TryGetValue(c, out var sign) ? sign + (sign.Length > 1 ? " " : "")
        : char.IsAsciiLetterOrDigit(c) || c is '+' or '=' or '(' or ')' or '.' or ',' ? c.ToString() : @"\text{" + One(c) + "}"));

    /// <summary>Words for a comment or a field of a file's properties: one line, nothing that the language reads.</summary>
    /// <param name="text">The words.</param>
    public static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029' ? ' ' : c));

    private static FrozenDictionary<char, string> Read((char Sign, string Source)[] signs) => signs.ToFrozenDictionary(s => s.Sign, s => s.Source);

    private static string One(char c)
    {
        if (Own.TryGetValue(c, out var own))
            return own;
        if (Textual.TryGetValue(c, out var textual))
            return textual;
        if (Mathematical.TryGetValue(c, out var sign))
            return "$" + sign + "$";
        if (Raised.IndexOf(c, StringComparison.Ordinal) is >= 0 and var up)
            return $"$^{{{Plain[up]}}}$";
        if (Lowered.IndexOf(c, StringComparison.Ordinal) is >= 0 and var down)
            return $"$_{{{Plain[down]}}}$";
        if (c is '\n' or '\r' or '\t')
            return " ";
        // What the T1 typefaces of a standard distribution hold of Latin letters.
        return c is >= ' ' and < '\u007F' or >= 'À' and <= 'ÿ' or >= 'Ā' and <= 'ž' and not ('ĸ' or 'ŉ' or 'ſ' or 'Ħ' or 'ħ' or 'Ŧ' or 'ŧ') ? c.ToString() : string.Create(CultureInfo.InvariantCulture, $"{{[}}U+{(int)c:X4}{{]}}");
    }
}
