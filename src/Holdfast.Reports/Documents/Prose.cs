using System.Text.RegularExpressions;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>Paragraphs, lists and headings of a report.</summary>
internal static partial class Prose
{
    /// <summary>Printed where the records have no fact, so that the author sees the gap.</summary>
    public const string NotRecorded = "[not recorded]";

    // Private use (Unicode 23.5): they never reach a reader.
    private const char Opens = '\uE000';
    private const char Closes = '\uE001';

    /// <summary>A paragraph of sentences; gaps in the records are marked.</summary>
    public static Element Paragraph(string text) => Html.Element("p", Marked(text));

    /// <summary>A paragraph of pieces.</summary>
    public static Element Paragraph(params IEnumerable<Node> pieces) => Html.Element("p", pieces);

    /// <summary>A list; gaps in the records are marked.</summary>
    public static Element List(IEnumerable<string> items) => Html.Element("ul", items.Select(i => (Node)Html.Element("li", Marked(i))));

    /// <summary>A heading of the third order with an address.</summary>
    public static Element Heading(string text, string? id = null) => Html.Element("h3", [("id", id)], text);

    /// <summary>A heading of the fourth order.</summary>
    public static Element Subheading(string text) => Html.Element("h4", text);

    /// <summary>A line that leads to the trails of several numbers; nothing where none of them has one.</summary>
    /// <param name="of">What they are: "Trails of the doses".</param>
    /// <param name="numbers">Name and address of each.</param>
    /// <param name="numbering">Sets the references.</param>
    public static IEnumerable<Element> Trails(string of, IEnumerable<(string Name, string Address)> numbers, Numbering numbering)
    {
        Node[][] links = [.. numbers.Select(n => (n.Name, Link: numbering.Trail(n.Address).ToArray())).Where(n => n.Link.Length > 0).Select(n => (Node[])[" " + n.Name, .. n.Link])];
        if (links.Length > 0)
            yield return Paragraph([of + ":", .. links.SelectMany((l, i) => i == 0 ? l : [",", .. l]), "."]);
    }

    /// <summary>A gap that is printed like the others and knows what fills it in.</summary>
    /// <param name="key">Key of a <see cref="MethodsGap"/>.</param>
    public static string Gap(string key) => $"{NotRecorded[..^1]}:{key}]";

    /// <summary>A gap of a run's own details.</summary>
    /// <param name="run">Id of the run.</param>
    /// <param name="key">Which detail.</param>
    public static string Gap(string run, string key) => Gap($"run:{Uri.EscapeDataString(run)}:{key}");

    /// <summary>A part of a sentence that stands by itself: a text without gaps leaves it out where it holds one.</summary>
    /// <param name="text">The part, with the sign that joins it to what stands before or behind.</param>
    public static string Clause(string text) => Opens + text + Closes;

    /// <summary>A text without its gaps: clauses that hold one are left out, then sentences that still do.</summary>
    /// <param name="text">Sentences with clauses.</param>
    public static string WithoutGaps(string text)
    {
        for (var at = text.IndexOf(Closes, StringComparison.Ordinal); at >= 0; at = text.IndexOf(Closes, StringComparison.Ordinal))
        {
            var from = text.LastIndexOf(Opens, at);
            var clause = text[(from + 1)..at];
            text = text[..from] + (Gaps().IsMatch(clause) ? "" : clause) + text[(at + 1)..];
        }

        return string.Join(' ', Sentences(text).Where(s => s.Length > 0 && !Gaps().IsMatch(s)).Select(s => Dangling().Replace(s, ".")));
    }

    /// <summary>Text with its gaps marked.</summary>
    public static IEnumerable<Node> Marked(string text)
    {
        var from = 0;
        text = text.Replace(Opens.ToString(), "", StringComparison.Ordinal).Replace(Closes.ToString(), "", StringComparison.Ordinal);
        foreach (Match match in Gaps().Matches(text))
        {
            if (match.Index > from)
                yield return text[from..match.Index];
            var gap = match.Groups["key"] is { Success: true, Value: var key } ? MethodsGap.Of(key) : null;
            yield return Html.Element("mark", [("class", "blank"), ("data-gap", gap?.Key), ("title", gap is null ? null : $"page {gap.Page}, or {gap.Command}")], NotRecorded);
            from = match.Index + match.Length;
        }

        if (from < text.Length)
            yield return text[from..];
    }

    // A stop ends a sentence where a capital follows.
    private static IEnumerable<string> Sentences(string text)
    {
        var from = 0;
        foreach (Match stop in Stop().Matches(text))
        {
            var next = stop.Index + stop.Length;
            if (next >= text.Length || !char.IsUpper(text[next]))
                continue;
            yield return text[from..(stop.Index + 1)];
            from = next;
        }

        yield return text[from..];
    }

    // What joined a clause that is gone to the end of its sentence.
    [GeneratedRegex(@"[,;:]\s*\.", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Dangling();

    [GeneratedRegex(@"\.\s+", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Stop();

    [GeneratedRegex(@"\[not recorded(?::(?<key>[^\]]*))?\]", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Gaps();
}
