using System.Collections.Immutable;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import.Cif;

/// <summary>Reads a CIF 1.1 text: structures, powder patterns, isotherms in this syntax.</summary>
public static class CifText
{
    /// <summary>True when a text begins as a CIF does: comments and blanks, then "data_".</summary>
    /// <param name="text">The text, or its beginning.</param>
    public static bool Recognises(ReadOnlySpan<char> text)
    {
        foreach (var raw in text.EnumerateLines())
        {
            var line = raw.Trim().TrimStart('\uFEFF');
            if (!line.IsEmpty && line[0] != '#')
                return line.StartsWith("data_", StringComparison.OrdinalIgnoreCase);
        }

        return false;
    }

    /// <summary>The data blocks of a text; every item is kept, known or not.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">Damaged, with the line (HF-406), or past a limit (HF-407).</exception>
    public static ImmutableArray<CifBlock> Read(string text, string fileName, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var blocks = ImmutableArray.CreateBuilder<CifBlock>();
        Open? open = null;
        var read = 0;
        foreach (var token in CifTokens.Of(text, fileName))
        {
            if (++read > Limits.Cells)
                throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Limits.Cells)} words");
            if (read % 4096 == 0)
                cancel.ThrowIfCancellationRequested();
            if (token.Kind is CifTokenKind.Data)
            {
                if (open is not null)
                    blocks.Add(open.Closed());
                open = new(token, fileName);
            }
            else if (open is null)
            {
                throw CifTokens.Unreadable(fileName, token.Line, $"\"{Shown(token.Text)}\" stands before the first \"data_\" heading");
            }
            else
            {
                open.Add(token);
            }
        }

        if (open is null)
            throw CifTokens.Unreadable(fileName, 1, "there is no \"data_\" heading");
        blocks.Add(open.Closed());
        return blocks.ToImmutable();
    }

    private static string Shown(string text) => text.Length <= 40 ? text : text[..40] + "…";

    // A block while its words come in.
    private sealed class Open(CifToken heading, string fileName)
    {
        private readonly ImmutableDictionary<string, CifValue>.Builder items = ImmutableDictionary.CreateBuilder<string, CifValue>(StringComparer.OrdinalIgnoreCase);
        private readonly ImmutableArray<CifLoop>.Builder loops = ImmutableArray.CreateBuilder<CifLoop>();
        private readonly HashSet<string> inLoops = new(StringComparer.Ordinal);
        private CifToken? tag;
        private OpenLoop? loop;

        public void Add(CifToken token)
        {
            switch (token.Kind)
            {
                case CifTokenKind.Value when tag is { } named:
                    Item(named, new(token.Text, token.Line, token.IsPlain));
                    tag = null;
                    break;
                case CifTokenKind.Value when loop is { Tags.Count: > 0 }:
                    loop.Values.Add(new(token.Text, token.Line, token.IsPlain));
                    break;
                case CifTokenKind.Value:
                    throw CifTokens.Unreadable(fileName, token.Line, $"the value \"{Shown(token.Text)}\" belongs to no tag");
                case CifTokenKind.Tag when loop is { Values.Count: 0 }:
                    if (loop.Tags.Count == Limits.Columns)
                        throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Limits.Columns)} columns in the table of line {Ordinal.Text(loop.Line)}");
                    if (!inLoops.Add(token.Text) || items.ContainsKey(token.Text))
                        throw CifTokens.Unreadable(fileName, token.Line, $"{Shown(token.Text)} is there a second time in the same block");
                    loop.Tags.Add(token.Text);
                    break;
                case CifTokenKind.Tag:
                    Finish();
                    tag = token;
                    break;
                case CifTokenKind.Loop:
                    Finish();
                    loop = new(token.Line);
                    break;
                default:
                    throw CifTokens.Unreadable(fileName, token.Line, $"\"{Shown(token.Text)}\" belongs in a dictionary, not in a file of data");
            }
        }

        public CifBlock Closed()
        {
            Finish();
            return new(heading.Text, heading.Line, items.ToImmutable(), loops.ToImmutable());
        }

        private void Item(CifToken named, CifValue value)
        {
            if (inLoops.Contains(named.Text) || items.TryGetValue(named.Text, out var before) && before.Text != value.Text)
                throw CifTokens.Unreadable(fileName, named.Line, $"{Shown(named.Text)} is there a second time in the same block with another value");
            items[named.Text] = value;
        }

        private void Finish()
        {
            if (tag is { } alone)
                throw CifTokens.Unreadable(fileName, alone.Line, $"{Shown(alone.Text)} has no value");
            if (loop is null)
                return;
            if (loop.Tags.Count == 0)
                throw CifTokens.Unreadable(fileName, loop.Line, "a table (loop_) names no columns");
            if (loop.Values.Count % loop.Tags.Count != 0)
            {
                throw CifTokens.Unreadable(fileName, loop.Line, $"the table (loop_) has {Ordinal.Text(loop.Tags.Count)} columns and {Ordinal.Text(loop.Values.Count)} values, "
                    + "which do not make whole rows");
            }

            loops.Add(new([.. loop.Tags], [.. loop.Values], loop.Line));
            loop = null;
        }
    }

    private sealed class OpenLoop(int line)
    {
        public int Line { get; } = line;

        public List<string> Tags { get; } = [];

        public List<CifValue> Values { get; } = [];
    }
}
