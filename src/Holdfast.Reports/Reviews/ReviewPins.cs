using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Reviews;

/// <summary>
/// Places of a document that a remark can be pinned to: each sentence's paragraph, each cell of a table, each figure, each claim. The address of a place is made of names, not of
/// its position on the page, so that it is the same place in a later copy.
/// </summary>
internal sealed partial class ReviewPins
{
    /// <summary>Attribute that holds kind and address: "number:main-numbers/capacity, ISO-298/Value (interval)".</summary>
    public const string Attribute = "data-pin";

    private readonly Dictionary<string, string> texts = new(StringComparer.Ordinal);
    private readonly List<string> order = [];

    /// <summary>What stands at each place, by kind and address.</summary>
    public IReadOnlyDictionary<string, string> Texts => texts;

    /// <summary>Kind and address of each place in the order of the document.</summary>
    public IReadOnlyList<string> Order => order;

    /// <summary>The pieces of a section with a pin at every place.</summary>
    /// <param name="section">The section.</param>
    public Section Pinned(Section section)
    {
        var paragraphs = 0;
        return section with { Content = [.. section.Content.Select(n => Pinned(n, section.Id, ref paragraphs))] };
    }

    /// <summary>An element with a pin of its own.</summary>
    /// <param name="element">The element.</param>
    /// <param name="kind">"number", "figure", "claim" or "sentence".</param>
    /// <param name="address">Its address.</param>
    public Element Pin(Element element, string kind, string address)
    {
        var pin = $"{kind}:{address}";
        for (var n = 2; texts.ContainsKey(pin); n++)
            pin = string.Create(CultureInfo.InvariantCulture, $"{kind}:{address}#{n}");
        order.Add(pin);
        texts[pin] = kind == "figure" ? Tree.Caption(element)?.Words ?? "" : element.Words.Trim();
        return new(element.Name, [.. element.Attributes.Select(a => (a.Name, (string?)a.Value)), (Attribute, pin), ("tabindex", "0")], element.Content);
    }

    private Node Pinned(Node node, string section, ref int paragraphs)
    {
        if (node is not Element element)
            return node;
        switch (element.Name)
        {
            case "figure" when element.Attribute("id") is { } id:
                return Pin(element, "figure", id);
            case "table" when element.Attribute("id") is { } table:
                return Cells(element, table);
            case "p" or "li" when !element.Content.OfType<Element>().Any(e => e.Name is "ul" or "ol"):
                return Pin(element, "sentence", string.Create(CultureInfo.InvariantCulture, $"{section}/{++paragraphs}"));
            case "svg" or "math":
                return element;
            default:
                var content = new List<Node>();
                foreach (var child in element.Content)
                    content.Add(Pinned(child, section, ref paragraphs));
                return new Element(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), content);
        }
    }

    private Element Cells(Element table, string id)
    {
        // A row without a name goes on with the one above.
        var above = "";
        string[] headings = [.. table.Content.OfType<Element>().Where(e => e.Name == "thead").SelectMany(h => h.Content.OfType<Element>()).SelectMany(r => r.Content.OfType<Element>()).Select(h => h.Words.Trim())];
        return new(table.Name, table.Attributes.Select(a => (a.Name, (string?)a.Value)), table.Content.Select(part => part is Element { Name: "tbody" } body
            ? new Element(body.Name, [], body.Content.OfType<Element>().Select(Row)) : part));

        Node Row(Element row)
        {
            Element[] cells = [.. row.Content.OfType<Element>()];
            var name = cells.FirstOrDefault(c => c.Name == "th") ?? cells[0];
            above = name.Words.Trim() is { Length: > 0 } own ? own : above;
            return new Element(row.Name, row.Attributes.Select(a => (a.Name, (string?)a.Value)),
                cells.Select((cell, i) => ReferenceEquals(cell, name) || cell.Words.Trim().Length == 0 ? (Node)cell
                    : Pin(cell, Number().IsMatch(cell.Words.Trim()) ? "number" : "sentence", $"{id}/{above}/{(i < headings.Length ? headings[i] : (i + 1).ToString(CultureInfo.InvariantCulture))}")));
        }
    }

    /// <summary>A place in words: "main-numbers: Freundlich 1/n, ISO-298, Value (interval)".</summary>
    /// <param name="pin">Kind and address of a cell.</param>
    public static string InWords(string pin)
    {
        var address = pin[(pin.IndexOf(':', StringComparison.Ordinal) + 1)..];
        var (first, last) = (address.IndexOf('/', StringComparison.Ordinal), address.LastIndexOf('/'));
        return first < 0 ? address : first == last ? $"{address[..first]}: {address[(first + 1)..]}" : $"{address[..first]}: {address[(first + 1)..last]}, {address[(last + 1)..]}";
    }

    /// <summary>Numbers that stand at a place of both documents and are not the same, and those of one alone, in the order of the later one.</summary>
    /// <param name="earlier">Places of the earlier document.</param>
    /// <param name="now">Places of the later one.</param>
    public static ImmutableArray<(string Place, string Was, string Is)> Changed(ReviewPins earlier, ReviewPins now)
    {
        static bool IsNumber(string pin) => pin.StartsWith("number:", StringComparison.Ordinal);
        return
        [
            .. now.Order.Where(IsNumber).Select(p => (Place: p, Was: earlier.Texts.GetValueOrDefault(p, ""), Is: now.Texts[p])).Where(c => !string.Equals(c.Was, c.Is, StringComparison.Ordinal)),
            .. earlier.Order.Where(p => IsNumber(p) && !now.Texts.ContainsKey(p)).Select(p => (p, earlier.Texts[p], "")),
        ];
    }

    // "13.53 (13.01 to 14.07)", "< 0.05", "no lower limit to 0.078"; a sentence with numbers in it is none.
    [GeneratedRegex(@"^(no (lower|upper) limit to |[<>±] ?)?[−+-]?\d[^a-z]*( (to|×)[^a-z]*)*$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
