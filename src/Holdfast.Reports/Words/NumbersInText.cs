using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Holdfast.Reports.Words;

/// <summary>Numbers that stand as words of their own in a text: "13.53", "−0.4", "2.4"; not the digits of a name, such as KIN-05 or Ni(OH)2.</summary>
internal static class NumbersInText
{
    private const string Before = "([“\"'<>±=~≈", Behind = ").,;:%”\"'†*?!";

    /// <summary>The numbers in order, as written.</summary>
    /// <param name="text">Any text.</param>
    public static ImmutableArray<string> Of(string text) => [.. Places(text).Select(p => text.Substring(p.At, p.Length))];

    /// <summary>The text with "#" for each number: what stays the same when the study's numbers become others.</summary>
    /// <param name="text">Any text.</param>
    public static string Masked(string text) => Replaced(text, (_, _) => "#");

    /// <summary>The text with each number replaced.</summary>
    /// <param name="text">Any text.</param>
    /// <param name="by">What stands for a number; it gets its place, from 0, and the number.</param>
    public static string Replaced(string text, Func<int, string, string> by)
    {
        var to = new StringBuilder();
        var from = 0;
        foreach (var (i, (at, length)) in Places(text).Index())
        {
            to.Append(text, from, at - from).Append(by(i, text.Substring(at, length)));
            from = at + length;
        }

        return to.Append(text, from, text.Length - from).ToString();
    }

    private static IEnumerable<(int At, int Length)> Places(string text)
    {
        for (var at = 0; at < text.Length;)
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }

            var end = at;
            while (end < text.Length && !char.IsWhiteSpace(text[end]))
                end++;
            var (from, to) = (at, end);
            while (from < to && Before.Contains(text[from], StringComparison.Ordinal))
                from++;
            while (to > from && Behind.Contains(text[to - 1], StringComparison.Ordinal))
                to--;
            var word = text[from..to];
            if (word.Length > 0 && word.Any(char.IsAsciiDigit) && double.TryParse(word.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out _))
                yield return (from, to - from);
            at = end;
        }
    }
}
