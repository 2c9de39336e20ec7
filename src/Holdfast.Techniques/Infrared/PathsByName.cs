using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Infrared;

/// <summary>How the light went through each of several powders, where the lines of one file say it of each: "CB: KBr pellet. CB-Cu: on the diamond (ATR)".</summary>
internal static class PathsByName
{
    /// <summary>
    /// The path of each powder by name; null where the lines say one path for all, or none. Where they say two and not of which powder, every path is null.
    /// </summary>
    /// <param name="lines">Lines above and below the table.</param>
    /// <param name="powders">Names of the powders.</param>
    public static ImmutableDictionary<string, MeasuredSetting?>? Of(IEnumerable<GridRow> lines, IReadOnlyCollection<string> powders)
    {
        var said = lines.Select(r => (r.Number, Text: string.Join("; ", r.Cells.Where(c => !c.IsBlank).Select(c => c.Text)))).ToList();
        if (said.SelectMany(l => MeasuredTable.WordsOf(l.Text)).Select(OrdinateWords.PathIn).OfType<string>().Distinct().Count() < 2)
            return null;
        var found = new Dictionary<string, MeasuredSetting?>(StringComparer.Ordinal);
        foreach (var (row, text) in said)
        {
            foreach (var (powder, path) in In(text, powders))
                found[powder] = found.TryGetValue(powder, out var before) && before?.Written != path ? null : new MeasuredSetting(InfraredFiles.Path, path, null, "", row);
        }

        return powders.Distinct(StringComparer.Ordinal).ToImmutableDictionary(p => p, p => found.GetValueOrDefault(p), StringComparer.Ordinal);
    }

    /// <summary>Says that bands of powders that were not measured alike are not to be compared.</summary>
    /// <param name="talk">Where it is said.</param>
    /// <param name="paths">The path of each powder.</param>
    public static void Caution(Dialogue talk, ImmutableDictionary<string, MeasuredSetting?> paths)
        => talk.Note(Codes.Ambiguous, Weight.Caution,
            $"{string.Join(", ", paths.OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => $"{p.Key}: {(p.Value is null ? "not known which" : p.Value.Written == InfraredFiles.Reflected ? "total reflection (ATR)" : "transmission (pellet, KBr)")}"))}. Total reflection moves strong bands by itself, often by more than a metal does (common practice: 10 to 20 cm⁻¹): a shift between spectra that were not measured by the same method shows nothing.",
            [.. paths.Keys]);

    // Names and words of the path in the order of the line: a path belongs to the names before it, or, where the line begins with a path, to those behind.
    private static IEnumerable<(string Powder, string Path)> In(string text, IReadOnlyCollection<string> powders)
    {
        var tokens = Tokens(text, [.. powders.OrderByDescending(p => p.Length)]).Select(t => (t.IsName, Value: t.Text, Path: t.IsName ? null : OrdinateWords.PathIn(t.Text))).Where(t => t.IsName || t.Path is not null).ToList();
        if (tokens.Count == 0)
            yield break;
        var pathFirst = !tokens[0].IsName;
        var (waiting, path) = (new List<string>(), tokens[0].Path);
        foreach (var token in tokens)
        {
            if (!token.IsName)
                path = token.Path;
            else if (pathFirst)
                yield return (token.Value, path!);
            else
                waiting.Add(token.Value);
            if (token.IsName || pathFirst)
                continue;
            foreach (var name in waiting)
                yield return (name, path!);
            waiting.Clear();
        }
    }

    // Names, the longest first ("CB-Cu" before "CB"), and runs of letters between them.
    private static IEnumerable<(bool IsName, string Text)> Tokens(string text, string[] names)
    {
        for (var at = 0; at < text.Length;)
        {
            var name = at == 0 || !char.IsLetterOrDigit(text[at - 1]) ? Array.Find(names, n => n.Length > 0 && text.AsSpan(at).StartsWith(n, StringComparison.Ordinal) && (at + n.Length == text.Length || !(char.IsLetterOrDigit(text[at + n.Length]) || text[at + n.Length] == '-'))) : null;
            var end = at + (name?.Length ?? 0);
            while (name is null && end < text.Length && char.IsLetter(text[end]))
                end++;
            if (end > at)
                yield return (name is not null, text[at..end]);
            at = Math.Max(end, at + 1);
        }
    }
}
