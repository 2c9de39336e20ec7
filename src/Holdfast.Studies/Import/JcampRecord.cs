using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>One labelled record of a JCAMP-DX file: "##XUNITS= 1/CM" with the lines that follow it.</summary>
/// <param name="Label">Label in capitals without blanks, hyphens, strokes and underlines: two ways of writing one label are one.</param>
/// <param name="Written">Label as it was written.</param>
/// <param name="Value">What stands after "=", comments left out.</param>
/// <param name="Line">Line of the label, from 1.</param>
/// <param name="Following">Lines that follow the label's own, comments left out, with their numbers.</param>
internal sealed record JcampRecord(string Label, string Written, string Value, int Line, ImmutableArray<(int Number, string Text)> Following)
{
    private const string End = "END";

    /// <summary>True for a record that holds the spectrum.</summary>
    public bool IsData => Label is "XYDATA" or "XYPOINTS" or "PEAKTABLE";

    /// <summary>True for a comment or a private record, which is kept in the original only.</summary>
    public bool IsAside => Label.Length == 0 || Label[0] is '$' or '.';

    /// <summary>The label of the words before "=".</summary>
    /// <param name="written">As written, without "##".</param>
    public static string Key(string written)
        => string.Concat(written.Where(c => c is not (' ' or '\t' or '-' or '/' or '_')).Select(char.ToUpperInvariant));

    /// <summary>The blocks of a file, each from its title on; a block that links others comes first, and its parts stand beside it.</summary>
    /// <param name="lines">All lines.</param>
    public static IReadOnlyList<IReadOnlyList<JcampRecord>> Blocks(IReadOnlyList<string> lines)
    {
        var blocks = new List<List<JcampRecord>>();
        foreach (var record in All(lines))
        {
            if (record.Label == "TITLE" || blocks.Count == 0)
                blocks.Add([]);
            blocks[^1].Add(record);
        }

        return blocks;
    }

    /// <summary>True when the block was closed.</summary>
    /// <param name="block">Records of a block.</param>
    public static bool IsClosed(IEnumerable<JcampRecord> block) => block.Any(r => r.Label == End);

    private static IEnumerable<JcampRecord> All(IReadOnlyList<string> lines)
    {
        (string Written, string Value, int Line)? open = null;
        var following = ImmutableArray.CreateBuilder<(int, string)>();
        for (var i = 0; i < lines.Count; i++)
        {
            var text = Uncommented(lines[i]);
            if (text.TrimStart().StartsWith("##", StringComparison.Ordinal) && text.IndexOf('=', StringComparison.Ordinal) is var equals and > 0)
            {
                if (open is { } before)
                    yield return new(Key(before.Written), before.Written, before.Value, before.Line, following.ToImmutable());
                following.Clear();
                open = (text[(text.IndexOf("##", StringComparison.Ordinal) + 2)..equals].Trim(), text[(equals + 1)..].Trim(), i + 1);
            }
            else if (open is not null && !string.IsNullOrWhiteSpace(text))
                following.Add((i + 1, text));
        }

        if (open is { } last)
            yield return new(Key(last.Written), last.Written, last.Value, last.Line, following.ToImmutable());
    }

    private static string Uncommented(string line)
        => line.IndexOf("$$", StringComparison.Ordinal) is var at and >= 0 ? line[..at] : line;
}
