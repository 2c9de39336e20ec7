using System.Globalization;
using System.Text;

namespace Holdfast.Reports.Figures;

/// <summary>Reads label markup into runs.</summary>
internal static class RichTextReader
{
    private const string RaisedCharacters = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻";
    private const string LoweredCharacters = "₀₁₂₃₄₅₆₇₈₉₊₋";
    private const string OnTheLine = "0123456789+−";

    /// <summary>Markup to runs. With <paramref name="symbols"/>, words of one letter and the index t, a quantity, are set in italics.</summary>
    public static IReadOnlyList<RichRun> Read(string markup, bool symbols)
    {
        var runs = new List<RichRun>();
        var italic = false;
        var line = new StringBuilder();
        for (var i = 0; i < markup.Length; i++)
        {
            var c = markup[i];
            if (c == '\\' && i + 1 < markup.Length)
            {
                line.Append(markup[++i]);
            }
            else if (c == '*')
            {
                Flush();
                italic = !italic;
            }
            else if (c is '_' or '^' && Shifted(markup, i + 1, c == '^') is { Length: > 0 } inner)
            {
                Flush();
                var shift = c == '_' ? Shift.Sub : Shift.Super;
                foreach (var run in Read(inner.ToString().Trim('{', '}'), symbols: false))
                    runs.Add(run with { Text = Minus(run.Text, always: c == '^'), Italic = run.Italic || (symbols && run.Text == "t"), Shift = shift });
                i += inner.Length;
            }
            else
            {
                line.Append(c);
            }
        }

        Flush();
        return Join(runs);

        void Flush()
        {
            if (line.Length == 0)
                return;
            foreach (var run in Literal(Minus(line.ToString(), always: false)))
                runs.AddRange(symbols && !italic && run.Shift == Shift.None ? Symbols(run.Text) : [run with { Italic = italic }]);
            line.Clear();
        }
    }

    /// <summary>Superscript and subscript characters become runs; everything else stays as it is.</summary>
    public static IReadOnlyList<RichRun> Literal(string text)
    {
        var runs = new List<RichRun>();
        foreach (var c in text.Replace("\u212B", "Å", StringComparison.Ordinal).Replace("℃", "°C", StringComparison.Ordinal))
        {
            var raised = RaisedCharacters.IndexOf(c, StringComparison.Ordinal);
            var lowered = LoweredCharacters.IndexOf(c, StringComparison.Ordinal);
            runs.Add(raised >= 0 ? new(OnTheLine[raised].ToString(), Shift: Shift.Super)
                : lowered >= 0 ? new(OnTheLine[lowered].ToString(), Shift: Shift.Sub)
                : new(c.ToString()));
        }

        return Join(runs);
    }

    /// <summary>A unit to runs; inside it the spaces do not break.</summary>
    public static IReadOnlyList<RichRun> Unit(string unit, bool bracketed)
    {
        var factors = UnitFactor.Read(unit);
        var runs = new List<RichRun>();
        bracketed &= factors.Count > 1;
        if (bracketed)
            runs.Add(new("("));
        foreach (var (symbol, power, state) in factors)
        {
            if (runs.Count > (bracketed ? 1 : 0))
                runs.Add(new("\u00A0"));
            runs.Add(new(symbol.Replace(' ', '\u00A0')));
            if (power != 1)
                runs.Add(new(power.ToString(CultureInfo.InvariantCulture).Replace('-', '−'), Shift: Shift.Super));
            runs.Add(new(state));
        }

        if (bracketed)
            runs.Add(new(")"));
        return Join(runs);
    }

    /// <summary>Neighbours of one style become one run.</summary>
    public static IReadOnlyList<RichRun> Join(IEnumerable<RichRun> runs)
    {
        var joined = new List<RichRun>();
        foreach (var run in runs)
        {
            if (run.Text.Length == 0)
                continue;
            if (joined.Count > 0 && joined[^1] with { Text = "" } == run with { Text = "" })
                joined[^1] = run with { Text = joined[^1].Text + run.Text };
            else
                joined.Add(run);
        }

        return joined;
    }

    // What a lowering or raising sign takes: a bracketed group with its brackets, or one bare word, signs allowed when raised.
    private static ReadOnlySpan<char> Shifted(string markup, int from, bool raised)
    {
        var rest = markup.AsSpan(from);
        if (rest.StartsWith("{"))
            return rest.IndexOf('}') is > 0 and var close ? rest[..(close + 1)] : default;
        var end = 0;
        if (raised && end < rest.Length && rest[end] is '-' or '+' or '−')
            end++;
        while (end < rest.Length && char.IsLetterOrDigit(rest[end]))
            end++;
        if (raised && end > 0 && end < rest.Length && rest[end] is '-' or '+' or '−')
            end++;
        return rest[..end];
    }

    // A hyphen before a digit, at the start or after a space, is a minus sign.
    private static string Minus(string text, bool always)
    {
        if (!text.Contains('-', StringComparison.Ordinal))
            return text;
        var made = new StringBuilder(text);
        for (var i = 0; i < made.Length; i++)
        {
            var starts = i == 0 || made[i - 1] is ' ' or '(' or '\u00A0';
            if (made[i] == '-' && (always || (starts && i + 1 < made.Length && char.IsAsciiDigit(made[i + 1]))))
                made[i] = '−';
        }

        return made.ToString();
    }

    // Words of one letter are symbols; a capital delta before one letter is an operator and stays upright.
    private static IEnumerable<RichRun> Symbols(string text)
    {
        for (var i = 0; i < text.Length;)
        {
            var end = i;
            while (end < text.Length && char.IsLetter(text[end]) == char.IsLetter(text[i]))
                end++;
            var word = text[i..end];
            i = end;
            if (word.Length == 2 && word[0] == 'Δ')
            {
                yield return new("Δ");
                word = word[1..];
            }

            yield return new(word, Italic: word.Length == 1 && char.IsLetter(word[0]));
        }
    }
}
