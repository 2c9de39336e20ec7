using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Office;

namespace Holdfast.Reports.Documents.Word;

/// <summary>Runs of text, with the places that are referred to.</summary>
internal sealed class WordText
{
    private readonly Dictionary<string, (string Bookmark, bool IsExhibit)> places = new(StringComparer.Ordinal);
    private int marks;

    /// <summary>Finds every place that something in the document refers to.</summary>
    /// <param name="pieces">The whole document.</param>
    public WordText(IReadOnlyCollection<Node> pieces)
    {
        var wanted = Tree.Wanted(pieces);
        foreach (var element in pieces.SelectMany(Tree.All))
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
        var text = Tree.Text(caption);
        if (Tree.Label(text) is not var (kind, number, length))
            return Runs(caption);
        var field = new SimpleField(Run(number, new(Bold: true))) { Instruction = $" SEQ {kind} \\* ARABIC " };
        OpenXmlElement[] label = [Run(kind + "\u00A0", new(Bold: true)), field];
        return [.. id is not null && places.TryGetValue(id, out var place) ? Between(place.Bookmark, label) : label, .. Runs(Tree.Behind(caption, length - 1))];
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

    private IEnumerable<OpenXmlElement> Runs(Node node, Look look)
    {
        if (node is TextNode text)
            return Plain(text.Value, look);
        if (node is not Element element || Tree.IsForTheEye(element))
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
        => place.IsExhibit && Tree.Label(element.Words + ".") is not null
            ? new SimpleField(Run(element.Words, look)) { Instruction = $" REF {place.Bookmark} \\h " }
            : new Hyperlink(Runs(element.Content, look)) { Anchor = place.Bookmark, History = true };

    private static IEnumerable<OpenXmlElement> Plain(string text, Look look) => text.Length == 0 ? [] : [Run(text, look)];

    private IEnumerable<OpenXmlElement> Between(string name, IEnumerable<OpenXmlElement> content)
    {
        var id = (++marks).ToString(CultureInfo.InvariantCulture);
        return [new BookmarkStart { Id = id, Name = name }, .. content, new BookmarkEnd { Id = id }];
    }

    // What a figure or table is called in its caption.
    private static string? Label(Element element) => Tree.Caption(element) is { } caption && Tree.Label(caption.Words) is var (kind, number, _) ? $"{kind} {number}" : null;

    private static string Name(string label) => label.Replace(' ', '_');
}
