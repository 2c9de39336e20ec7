using System.Text;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Finds a sample by its code: exactly, or else ignoring case, spaces, hyphens and leading zeros when that leaves one candidate.</summary>
internal sealed class CodeIndex
{
    private readonly HashSet<string> exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> loose = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> initials = new(StringComparer.Ordinal);

    /// <summary>An index of these codes.</summary>
    public CodeIndex(IEnumerable<string> codes)
    {
        foreach (var code in codes)
        {
            if (!exact.Add(code))
                continue;
            Add(loose, Loosen(code), code);
            if (Initial(code) is { } initial)
                Add(initials, Loosen(initial), code);
        }
    }

    private static void Add(Dictionary<string, List<string>> index, string key, string code)
    {
        if (!index.TryGetValue(key, out var same))
            index[key] = same = [];
        same.Add(code);
    }

    // "Vial 4" is "V4" on another sheet: the first letter of a word for a vessel, and its number.
    private static string? Initial(string code)
    {
        var word = code.AsSpan().TrimEnd("0123456789");
        var number = code.AsSpan(word.Length);
        word = word.TrimEnd(" -_.#");
        return word.Length > 2 && number.Length is > 0 and <= 4 && word.IndexOfAnyExceptInRange('A', 'z') < 0 && Lexicon.OfToken(word.ToString().ToLowerInvariant()).Contains(HeadingWord.Sample) ? $"{word[0]}{number}" : null;
    }

    /// <summary>Codes that it could be: one for a match, several when they must be told apart, none when it is unknown.</summary>
    /// <param name="code">Code as written.</param>
    public IReadOnlyList<string> Find(string code) => exact.Count == 0 ? []
        : exact.Contains(code) ? [code]
        : loose.GetValueOrDefault(Loosen(code)) ?? initials.GetValueOrDefault(Loosen(code)) ?? (Initial(code) is { } initial ? loose.GetValueOrDefault(Loosen(initial)) : null) ?? [];

    /// <summary>
    /// "V-01", "v1" and "V 01" are alike; "PH3-1" and "PH-31" are not, since a hyphen between digits tells numbers apart.
    /// </summary>
    public static string Loosen(string code)
    {
        var key = new StringBuilder();
        for (var i = 0; i < code.Length;)
        {
            if (char.IsAsciiDigit(code[i]))
            {
                var start = i;
                while (i < code.Length && char.IsAsciiDigit(code[i]))
                    i++;
                var digits = code[start..i].TrimStart('0');
                key.Append('#').Append(digits.Length == 0 ? "0" : digits);
            }
            else if (char.IsLetter(code[i]))
            {
                if (i > 0 && !char.IsLetter(code[i - 1]) && key.Length > 0)
                    key.Append('/');
                while (i < code.Length && char.IsLetter(code[i]))
                    key.Append(char.ToUpperInvariant(code[i++]));
            }
            else
            {
                if (!char.IsWhiteSpace(code[i]) && code[i] is not ('-' or '_' or '.' or '\u2010' or '\u2011' or '\u2212' or '\u2013'))
                    key.Append(code[i]);
                i++;
            }
        }
        return key.ToString();
    }
}
