using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Techniques;

/// <summary>A list of words and stems that texts are searched for. Every technique looks at every cell of every file, so that lists and texts are taken apart once.</summary>
internal sealed class WordList
{
    private static readonly ConcurrentDictionary<string, WordList> Lists = new(StringComparer.Ordinal);
    private static readonly ByShape<ImmutableArray<string>> Texts = new(Apart);

    private readonly FrozenSet<string> whole;
    private readonly string[] stems;

    private WordList(string words)
    {
        var all = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        (whole, stems) = (all.Where(w => w[^1] != '*').ToFrozenSet(StringComparer.Ordinal), [.. all.Where(w => w[^1] == '*').Select(w => w[..^1])]);
    }

    /// <summary>The list that a text writes: "length longueur lang*", a stem with "*" at its end.</summary>
    /// <param name="words">The text; one that stands in the code, since it is kept.</param>
    public static WordList Known(string words) => Lists.GetOrAdd(words, static w => new(w));

    /// <summary>Words of a text: runs of letters of any script, plainly spelled.</summary>
    /// <param name="text">Any text.</param>
    public static ImmutableArray<string> Of(string text) => Texts.Of(text);

    /// <summary>True when a text has one of these words.</summary>
    /// <param name="text">Any text.</param>
    public bool IsIn(string text)
    {
        foreach (var word in Of(text))
        {
            if (whole.Contains(word) || Array.Exists(stems, s => word.StartsWith(s, StringComparison.Ordinal)))
                return true;
        }

        return false;
    }

    private static ImmutableArray<string> Apart(string text)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        var word = new StringBuilder();
        foreach (var c in FileWords.Plain(text).Append(' '))
        {
            if (char.IsLetter(c))
                word.Append(c);
            else if (word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
        }

        return words.ToImmutable();
    }
}
