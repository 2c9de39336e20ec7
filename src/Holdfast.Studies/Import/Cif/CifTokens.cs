using Holdfast.Studies.History;

namespace Holdfast.Studies.Import.Cif;

/// <summary>The words of a CIF 1.1 text, in one pass.</summary>
/// <remarks>CIF 1.1 syntax: International Tables for Crystallography G (2005), chapter 2.2. A quote ends only before a blank; a semicolon
/// at the start of a line opens and closes a text; a number sign outside both begins a comment. Brackets at the start of a plain value,
/// which the standard keeps for later, are read as they stand: real files hold them.</remarks>
internal static class CifTokens
{
    /// <summary>The words, one after the other.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="fileName">The file, for messages.</param>
    /// <exception cref="StudyException">A quote or a text that is not closed (HF-406).</exception>
    public static IEnumerable<CifToken> Of(string text, string fileName)
    {
        var at = 0;
        var line = 1;
        while (at < text.Length)
        {
            var c = text[at];
            if (c is '\n' or '\r')
            {
                at += c == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;
                line++;
            }
            else if (char.IsWhiteSpace(c) || c is '\uFEFF' or '\u001A')
            {
                at++;
            }
            else if (c == '#')
            {
                at = LineEnd(text, at);
            }
            else if (c == ';' && StartsLine(text, at))
            {
                var close = Close(text, at);
                if (close < 0)
                    throw Unreadable(fileName, line, "a text begins with a semicolon and is never closed by a semicolon at the start of a line");
                var words = text[(at + 1)..close].Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
                yield return new(CifTokenKind.Value, Unfolded(words), line, false);
                line += words.Count(x => x == '\n') + 1;
                at = close + 2;
                if (text[close] == '\r' && close + 1 < text.Length && text[close + 1] == '\n')
                    at++;
            }
            else if (c is '\'' or '"')
            {
                var close = QuoteEnd(text, at);
                if (close < 0)
                    throw Unreadable(fileName, line, $"a quote ({c}) is not closed in its line");
                yield return new(CifTokenKind.Value, text[(at + 1)..close], line, false);
                at = close + 1;
            }
            else
            {
                var end = at;
                while (end < text.Length && !char.IsWhiteSpace(text[end]))
                    end++;
                yield return Plain(text[at..end], line);
                at = end;
            }
        }
    }

    /// <summary>The refusal of a damaged CIF.</summary>
    /// <param name="fileName">The file.</param>
    /// <param name="line">Line, from 1.</param>
    /// <param name="what">What is wrong there.</param>
    public static StudyException Unreadable(string fileName, int line, string what)
        => new(Codes.Unreadable, $"{fileName}, line {Ordinal.Text(line)}: {what}, so nothing is taken in. Mend that line, or export the file again.");

    private static CifToken Plain(string word, int line)
    {
        if (word[0] == '_')
            return new(CifTokenKind.Tag, word.ToLowerInvariant(), line, true);
        if (word.StartsWith("data_", StringComparison.OrdinalIgnoreCase))
            return new(CifTokenKind.Data, word["data_".Length..], line, true);
        if (word.Equals("loop_", StringComparison.OrdinalIgnoreCase))
            return new(CifTokenKind.Loop, word, line, true);
        var reserved = word.StartsWith("save_", StringComparison.OrdinalIgnoreCase)
            || word.Equals("stop_", StringComparison.OrdinalIgnoreCase) || word.Equals("global_", StringComparison.OrdinalIgnoreCase);
        return new(reserved ? CifTokenKind.Reserved : CifTokenKind.Value, word, line, true);
    }

    private static bool StartsLine(string text, int at) => at == 0 || text[at - 1] is '\n' or '\r';

    private static int LineEnd(string text, int at)
    {
        var end = text.AsSpan(at).IndexOfAny('\n', '\r');
        return end < 0 ? text.Length : at + end;
    }

    // The line end before the closing semicolon, or -1.
    private static int Close(string text, int from)
    {
        for (var at = LineEnd(text, from); at < text.Length; at = LineEnd(text, at))
        {
            var ended = at;
            at += text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;
            if (at < text.Length && text[at] == ';')
                return ended;
        }

        return -1;
    }

    private static int QuoteEnd(string text, int open)
    {
        for (var at = open + 1; at < text.Length && text[at] is not ('\n' or '\r'); at++)
        {
            if (text[at] == text[open] && (at + 1 == text.Length || char.IsWhiteSpace(text[at + 1])))
                return at;
        }

        return -1;
    }

    // A text whose first line is a backslash was folded: a backslash at the end of a line joins it to the next.
    private static string Unfolded(string words)
    {
        var first = words.Split('\n', 2);
        return first[0].TrimEnd() != "\\" ? words.Trim('\n')
            : string.Concat(first.ElementAtOrDefault(1)?.Split('\n').Select(l => l.TrimEnd() is [.. var kept, '\\'] ? kept : l + "\n") ?? []).TrimEnd('\n');
    }
}
