using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.Words;

/// <summary>
/// The author's own words in the chapter: her text before what the program writes in a section, and sentences of the program in her words. Numbers in both are the study's, set in
/// anew each time, so that a changed study changes them without losing a word.
/// </summary>
internal static class OwnWords
{
    /// <summary>A section with her words.</summary>
    /// <param name="section">As the program writes it.</param>
    /// <param name="evidence">The study worked out.</param>
    public static Section In(Section section, Evidence evidence)
    {
        var study = evidence.Study;
        IReadOnlyList<Node> content = study.Rewordings.IsEmpty ? section.Content : [.. section.Content.Select(n => Reworded(n, study.Rewordings))];
        return study.Texts.TryGetValue(section.Id, out var own) ? section with { Content = [.. Blocks(own.Text, evidence), .. content] } : section with { Content = content };
    }

    /// <summary>Her text as blocks.</summary>
    /// <param name="text">Markdown: paragraphs, lists with "- ", *slanted*, **bold**, {address of a number}.</param>
    /// <param name="evidence">The study worked out.</param>
    public static IEnumerable<Element> Blocks(string text, Evidence evidence)
    {
        foreach (var block in Paragraphs(text))
        {
            string[] lines = block.Split('\n');
            if (lines.All(l => l.StartsWith("- ", StringComparison.Ordinal)))
                yield return Html.Element("ul", lines.Select(l => (Node)Html.Element("li", Line(l[2..], evidence))));
            else
                yield return Html.Element("p", Line(string.Join(' ', lines), evidence));
        }
    }

    /// <summary>Paragraphs of a text: what stands between blank lines.</summary>
    /// <param name="text">Markdown.</param>
    public static IEnumerable<string> Paragraphs(string text)
        => text.ReplaceLineEndings("\n").Split("\n\n", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>A number of the study as it stands in her text, with its expanded uncertainty and unit; null for an address that names none.</summary>
    /// <param name="address">"q:V-12".</param>
    /// <param name="evidence">The study worked out.</param>
    public static string? Number(string address, Evidence evidence)
    {
        if (NumberTrail.Of(evidence, address) is not { } trail)
            return null;
        var expanded = ExpandedUncertainty.Of(trail.Value);
        return $"{InWords.Raised(RoundedNumber.Shown(trail.Value.Value, expanded.U).PlusMinus)} {trail.Unit}".TrimEnd();
    }

    /// <summary>Addresses of numbers in a text, in order.</summary>
    /// <param name="text">Markdown.</param>
    public static IEnumerable<string> Addresses(string text)
    {
        for (var at = text.IndexOf('{', StringComparison.Ordinal); at >= 0; at = text.IndexOf('{', at + 1))
        {
            if (text.IndexOf('}', at) is var end && end > at)
                yield return text[(at + 1)..end];
        }
    }

    private static IEnumerable<Node> Line(string line, Evidence evidence)
    {
        var plain = new StringBuilder();
        for (var at = 0; at < line.Length; at++)
        {
            var mark = line.AsSpan(at).StartsWith("**") ? "**" : line[at] == '*' ? "*" : line[at] == '{' ? "}" : "";
            if (mark.Length == 0 || line.IndexOf(mark, at + Math.Max(mark.Length, 1), StringComparison.Ordinal) is var end && end < 0)
            {
                plain.Append(line[at]);
                continue;
            }

            if (plain.Length > 0)
                yield return plain.ToString();
            plain.Clear();
            var inner = line[(at + (mark == "**" ? 2 : 1))..end];
            yield return mark switch
            {
                "**" => Html.Element("b", Line(inner, evidence)),
                "*" => Html.Element("i", Line(inner, evidence)),
                _ => Number(inner, evidence) is { } number ? Html.Element("span", [("data-number", inner)], number) : Html.Element("mark", [("class", "blank")], $"[no such number: {inner}]"),
            };
            at = end + mark.Length - 1;
        }

        if (plain.Length > 0)
            yield return plain.ToString();
    }

    private static Node Reworded(Node node, ImmutableSortedDictionary<string, string> rewordings)
    {
        if (node is not Element element)
            return node;
        if (element.Name is "p" or "li" && !element.Content.OfType<Element>().Any(e => e.Name is "ul" or "ol" or "math") && OneLine(element.Words) is var words && rewordings.TryGetValue(NumbersInText.Masked(words), out var hers))
            return new Element(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), [Filled(hers, NumbersInText.Of(words))]);
        return element.Name is "table" or "figure" or "svg" or "math" ? element
            : new Element(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), element.Content.Select(c => Reworded(c, rewordings)));
    }

    /// <summary>Her words with the numbers of the program's sentence.</summary>
    /// <param name="text">Her words, with "{#2}" for the second number.</param>
    /// <param name="numbers">The numbers, in order.</param>
    internal static string Filled(string text, ImmutableArray<string> numbers)
    {
        for (var i = 0; i < numbers.Length; i++)
            text = text.Replace(string.Create(CultureInfo.InvariantCulture, $"{{#{i + 1}}}"), numbers[i], StringComparison.Ordinal);
        return text;
    }

    /// <summary>Words on one line, as a word processor gives them back.</summary>
    /// <param name="words">The words.</param>
    internal static string OneLine(string words) => string.Join(' ', words.Normalize().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
