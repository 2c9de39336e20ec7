using System.Globalization;
using System.Text.RegularExpressions;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Office;

namespace Holdfast.Reports.Documents.Word;

/// <summary>Runs of text, with the places that are referred to.</summary>
internal sealed partial class WordText
{
    private readonly Dictionary<string, (string Bookmark, bool IsExhibit)> places = new(StringComparer.Ordinal);
    private int marks;

    /// <summary>Finds every place that something in the document refers to.</summary>
    /// <param name="pieces">The whole document.</param>
    public WordText(IReadOnlyCollection<Node> pieces)
    {
        var wanted = pieces.SelectMany(All).Select(e => e.Attribute("href")).OfType<string>().Where(h => h.StartsWith('#')).Select(h => h[1..]).ToHashSet(StringComparer.Ordinal);
        foreach (var element in pieces.SelectMany(All))
        {
            if (element.Attribute("id") is not { } id)
                continue;
            if (Label(element) is { } label)
                places[id] = (Name(label), true);
            else if (wanted.Contains(id))
                places[id] = (string.Create(CultureInfo.InvariantCulture, $"place_{places.Count + 1}"), false);
        }
    }

    /// <summary>How a run looks.</summary>
    /// <param name="Bold">Bold.</param>
    /// <param name="Italic">Slanted.</param>
    /// <param name="Shift">Raised or lowered; null for neither.</param>
    /// <param name="Struck">With a line through.</param>
    /// <param name="Marked">Marked as a gap.</param>
    public readonly record struct Look(bool Bold = false, bool Italic = false, VerticalPositionValues? Shift = null, bool Struck = false, bool Marked = false);

    /// <summary>The runs of some pieces.</summary>
    /// <param name="pieces">Texts and elements that stand in a line.</param>
    /// <param name="look">How they look.</param>
    public IEnumerable<OpenXmlElement> Runs(IEnumerable<Node> pieces, Look look = default) => pieces.SelectMany(p => Runs(p, look));

    /// <summary>The label of a caption as a field that counts, between the marks of its place: "Table 3"; the rest of the caption follows.</summary>
    /// <param name="id">Address of the figure or table.</param>
    /// <param name="caption">The caption as text.</param>
    public IEnumerable<OpenXmlElement> Captioned(string? id, IReadOnlyList<Node> caption)
    {
        var text = Text(caption);
        if (LabelAtStart().Match(text) is not { Success: true } match)
            return Runs(caption);
        var (kind, number) = (match.Groups["kind"].Value, match.Groups["number"].Value);
        var field = new SimpleField(Run(number, new(Bold: true))) { Instruction = $" SEQ {kind} \\* ARABIC " };
        OpenXmlElement[] label = [Run(kind + "\u00A0", new(Bold: true)), field];
        return [.. id is not null && places.TryGetValue(id, out var place) ? Between(place.Bookmark, label) : label, .. Runs(Behind(caption, match.Length - 1))];
    }

    /// <summary>Pieces between the marks of the place with this address; as they are where nothing refers to it.</summary>
    /// <param name="id">The address, or null.</param>
    /// <param name="content">The pieces.</param>
    public IEnumerable<OpenXmlElement> At(string? id, IEnumerable<OpenXmlElement> content)
        => id is not null && places.TryGetValue(id, out var place) && !place.IsExhibit ? Between(place.Bookmark, content) : content;

    /// <summary>A paragraph of runs in a style.</summary>
    /// <param name="style">Id of the style.</param>
    /// <param name="runs">Its runs.</param>
    public static Paragraph Paragraph(string style, params IEnumerable<OpenXmlElement> runs)
        => new([new ParagraphProperties(new ParagraphStyleId { Val = style }), .. runs]);

    /// <summary>A text as one run; none for no text.</summary>
    /// <param name="text">The characters.</param>
    public static IEnumerable<OpenXmlElement> Plain(string text) => text.Length == 0 ? [] : [Run(text)];

    /// <summary>A run.</summary>
    /// <param name="text">Its characters.</param>
    /// <param name="look">How it looks.</param>
    public static Run Run(string text, Look look = default)
    {
        var run = new Run();
        var properties = new RunProperties();
        if (look.Bold)
            properties.Append(new Bold());
        if (look.Italic)
            properties.Append(new Italic());
        if (look.Struck)
            properties.Append(new Strike());
        if (look.Marked)
            properties.Append(new Highlight { Val = HighlightColorValues.Yellow });
        if (look.Shift is { } shift)
            properties.Append(new VerticalTextAlignment { Val = shift });
        if (properties.HasChildren)
            run.Append(properties);
        run.Append(new Text(OfficeZip.Sound(text)) { Space = SpaceProcessingModeValues.Preserve });
        return run;
    }

    /// <summary>All characters of some pieces.</summary>
    /// <param name="pieces">The pieces.</param>
    public static string Text(IEnumerable<Node> pieces) => string.Concat(pieces.Select(p => p.Words));

    /// <summary>True for an element of this class.</summary>
    /// <param name="element">The element.</param>
    /// <param name="name">Name of the class.</param>
    public static bool IsOf(Element element, string name) => element.Attribute("class")?.Split(' ').Contains(name, StringComparer.Ordinal) == true;

    /// <summary>An element and every one inside it; pictures are not looked into.</summary>
    /// <param name="node">The node.</param>
    public static IEnumerable<Element> All(Node node) => node is not Element element || element.Name == "svg" ? [] : element.Content.SelectMany(All).Prepend(element);

    private IEnumerable<OpenXmlElement> Runs(Node node, Look look)
    {
        if (node is TextNode text)
            return Plain(text.Value, look);
        if (node is not Element element || element.Attribute("aria-hidden") == "true" && !IsOf(element, "pad"))
            return [];
        var inner = element.Name switch
        {
            "b" or "strong" => Runs(element.Content, look with { Bold = true }),
            "i" or "em" => Runs(element.Content, look with { Italic = true }),
            "sup" => Runs(element.Content, look with { Shift = VerticalPositionValues.Superscript }),
            "sub" => Runs(element.Content, look with { Shift = VerticalPositionValues.Subscript }),
            "s" => Runs(element.Content, look with { Struck = true }),
            "mark" => Runs(element.Content, look with { Marked = true }),
            "math" => [WordMath.Of(element)],
            "br" => [new Run(new Break())],
            "a" when element.Attribute("href") is { } to && to.StartsWith('#') && places.TryGetValue(to[1..], out var place) => [Reference(element, place, look)],
            _ => Runs(element.Content, look),
        };
        return At(element.Attribute("id"), inner);
    }

    private OpenXmlElement Reference(Element element, (string Bookmark, bool IsExhibit) place, Look look)
        => place.IsExhibit && LabelAtStart().IsMatch(Text(element.Content) + ".")
            ? new SimpleField(Run(Text(element.Content), look)) { Instruction = $" REF {place.Bookmark} \\h " }
            : new Hyperlink(Runs(element.Content, look)) { Anchor = place.Bookmark, History = true };

    private static IEnumerable<OpenXmlElement> Plain(string text, Look look) => text.Length == 0 ? [] : [Run(text, look)];

    private IEnumerable<OpenXmlElement> Between(string name, IEnumerable<OpenXmlElement> content)
    {
        var id = (++marks).ToString(CultureInfo.InvariantCulture);
        return [new BookmarkStart { Id = id, Name = name }, .. content, new BookmarkEnd { Id = id }];
    }

    // The pieces without the first so many characters.
    private static IEnumerable<Node> Behind(IEnumerable<Node> pieces, int characters)
    {
        foreach (var piece in pieces)
        {
            var length = Text([piece]).Length;
            if (length <= characters)
            {
                characters -= length;
                continue;
            }

            yield return characters == 0 ? piece : piece switch
            {
                TextNode text => text.Value[characters..],
                Element element => new Element(element.Name, element.Attributes.Select(a => (a.Name, (string?)a.Value)), Behind(element.Content, characters)),
                _ => piece,
            };
            characters = 0;
        }
    }

    // What a figure or table is called in its caption.
    private static string? Label(Element element)
    {
        var caption = element.Content.OfType<Element>().FirstOrDefault(e => e.Name is "caption" or "figcaption");
        return caption is not null && LabelAtStart().Match(Text(caption.Content)) is { Success: true } match ? match.Value.TrimEnd('.', ' ') : null;
    }

    private static string Name(string label) => label.Replace(' ', '_').Replace('\u00A0', '_');

    [GeneratedRegex(@"^(?<kind>Table|Figure)[ \u00A0](?<number>\d+)\.", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex LabelAtStart();
}
