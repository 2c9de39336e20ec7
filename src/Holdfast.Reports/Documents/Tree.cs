using System.Text.RegularExpressions;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>What every format asks of the tree of a document: classes, captions, the places that are referred to.</summary>
internal static partial class Tree
{
    /// <summary>All characters of some pieces.</summary>
    /// <param name="pieces">The pieces.</param>
    public static string Text(IEnumerable<Node> pieces) => string.Concat(pieces.Select(p => p.Words));

    /// <summary>True for an element of this class.</summary>
    /// <param name="element">The element.</param>
    /// <param name="name">Name of the class.</param>
    public static bool IsOf(Element element, string name) => element.Attribute("class")?.Split(' ').Contains(name, StringComparer.Ordinal) == true;

    /// <summary>True for what is no part of the words: drawn for the eye alone. Spaces that bring numbers into line are part of them.</summary>
    /// <param name="element">The element.</param>
    public static bool IsForTheEye(Element element) => element.Attribute("aria-hidden") == "true" && !IsOf(element, "pad");

    /// <summary>An element and every one inside it; pictures are not looked into.</summary>
    /// <param name="node">The node.</param>
    public static IEnumerable<Element> All(Node node) => node is not Element element || element.Name == "svg" ? [] : element.Content.SelectMany(All).Prepend(element);

    /// <summary>What is set on paper: without the notice that the head of every page bears already, and a figure's twin in numbers, which is for the screen.</summary>
    /// <param name="pieces">The pieces.</param>
    public static IEnumerable<Node> OnPaper(IEnumerable<Node> pieces) => pieces.Where(p => p is not Element element || !(element.Name is "details" or "nav" || (element.Name == "p" && IsOf(element, "invented"))));

    /// <summary>Names and values of a list of facts.</summary>
    /// <param name="list">The list.</param>
    public static IEnumerable<(Element Name, Element Value)> Facts(Element list) => list.Content.OfType<Element>().Chunk(2).Where(p => p.Length == 2).Select(p => (p[0], p[1]));

    /// <summary>Every piece of a document, in order.</summary>
    /// <param name="document">The document.</param>
    public static Node[] Pieces(WrittenDocument document) => [document.Opening, .. document.Sections.SelectMany(s => s.Content), document.Foot];

    /// <summary>Addresses in the document that something in it leads to.</summary>
    /// <param name="pieces">The whole document.</param>
    public static HashSet<string> Wanted(IEnumerable<Node> pieces)
        => pieces.SelectMany(All).Select(e => e.Attribute("href")).OfType<string>().Where(h => h.StartsWith('#')).Select(h => h[1..]).ToHashSet(StringComparer.Ordinal);

    /// <summary>Caption of a figure or table; null without one.</summary>
    /// <param name="element">The figure or table.</param>
    public static Element? Caption(Element element) => element.Content.OfType<Element>().FirstOrDefault(e => e.Name is "caption" or "figcaption");

    /// <summary>What a caption begins with, "Table" and "3" of "Table 3. Doses"; null where it bears no number.</summary>
    /// <param name="caption">The caption as text.</param>
    public static (string Kind, string Number, int Length)? Label(string caption)
        => LabelAtStart().Match(caption) is { Success: true } match ? (match.Groups["kind"].Value, match.Groups["number"].Value, match.Length) : null;

    /// <summary>The pieces without the first so many characters.</summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="characters">How many are left out.</param>
    public static IEnumerable<Node> Behind(IEnumerable<Node> pieces, int characters)
    {
        foreach (var piece in pieces)
        {
            var length = piece.Words.Length;
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

    [GeneratedRegex(@"^(?<kind>Table|Figure)[ \u00A0](?<number>\d+)\.", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex LabelAtStart();
}
