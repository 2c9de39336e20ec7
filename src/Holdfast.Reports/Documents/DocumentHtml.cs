using Holdfast.Reports.Fonts;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>A document as one self-contained page: no script, nothing loaded from elsewhere, the same bytes for the same document.</summary>
internal static class DocumentHtml
{
    /// <summary>The text of the page.</summary>
    /// <param name="document">The document.</param>
    public static string Of(WrittenDocument document)
    {
        var body = Html.Element(
            "body",
            [("class", document.Name)],
            [
                Html.Element("a", [("class", "skip"), ("href", "#report")], "Skip to the text"),
                document.Opening,
                Contents(document),
                Html.Element("main", [("id", "report")], document.Sections.Select((s, i) => Written(s, document.Heading(i)))),
                document.Foot,
            ]);
        // Bold and slanted words occur everywhere, so each face brings all letters of the page.
        var letters = string.Concat(body.Words.EnumerateRunes().Distinct().Order());
        var faces = EmbeddedFaces.Css(from bold in new[] { false, true } from italic in new[] { false, true } select (bold, italic, letters));
        return Html.Page(Html.Element(
            "html",
            [("lang", "en")],
            Html.Element(
                "head",
                Html.Element("meta", [("charset", "utf-8")]),
                Html.Element("meta", [("name", "viewport"), ("content", "width=device-width, initial-scale=1")]),
                Html.Element("meta", [("name", "color-scheme"), ("content", "light dark")]),
                Html.Element("title", (document.Notice.Length > 0 ? "Invented demo data: " : "") + document.Title),
                new Stylesheet(faces + ReportStyle.Css(document.Notice.Length > 0))),
            body));
    }

    private static Element Contents(WrittenDocument document)
        => Html.Element(
            "nav",
            [("aria-label", "Contents")],
            Html.Element("h2", "Contents"),
            Html.Element("ol", document.Sections.Select(s => (Node)Html.Element("li", Html.Element("a", [("href", "#section-" + s.Id)], s.Title)))));

    private static Element Written(Section section, string heading)
        => Html.Element(
            "section",
            [("id", "section-" + section.Id), ("aria-labelledby", section.Id + "-heading")],
            [Html.Element("h2", [("id", section.Id + "-heading")], heading), .. section.Content]);
}
