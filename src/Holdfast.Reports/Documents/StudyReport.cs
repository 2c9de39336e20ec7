using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Fonts;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>
/// The report of a study as one self-contained page: no script, nothing loaded from elsewhere, the same bytes for the same study. It is recomputed from
/// the study each time, so that no number in it can be stale.
/// </summary>
public static class StudyReport
{
    /// <summary>The text of the page.</summary>
    /// <param name="dossier">The study worked out; an empty one gives a report that says so.</param>
    /// <param name="options">What the report says of itself; null for the defaults.</param>
    public static string Html(Dossier dossier, ReportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var use = options ?? new();
        var numbering = new Numbering(dossier);
        Section[] sections = [.. Sections(dossier, numbering, use).OfType<Section>()];
        var study = dossier.Evidence.Study;
        var title = study.Title.Length == 0 ? "Untitled study" : study.Title;
        var body = Markup.Html.Element(
            "body",
            [
                Markup.Html.Element("a", [("class", "skip"), ("href", "#report")], "Skip to the report"),
                Opening.Of(dossier, title, use),
                Contents(sections),
                Markup.Html.Element("main", [("id", "report")], sections.Select(Written)),
                Opening.Foot(study, use),
            ]);
        // Bold and slanted words occur everywhere, so each face brings all letters of the page.
        var letters = string.Concat(Texts(body).SelectMany(t => t.EnumerateRunes()).Distinct().Order());
        var faces = EmbeddedFaces.Css(from bold in new[] { false, true } from italic in new[] { false, true } select (bold, italic, letters));
        return Markup.Html.Page(Markup.Html.Element(
            "html",
            [("lang", "en")],
            Markup.Html.Element(
                "head",
                Markup.Html.Element("meta", [("charset", "utf-8")]),
                Markup.Html.Element("meta", [("name", "viewport"), ("content", "width=device-width, initial-scale=1")]),
                Markup.Html.Element("meta", [("name", "color-scheme"), ("content", "light dark")]),
                Markup.Html.Element("title", (study.Invented ? "Invented demo data: " : "") + title),
                new Stylesheet(faces + ReportStyle.Css(study.Invented))),
            body));
    }

    private static IEnumerable<string> Texts(Node node) => node switch
    {
        TextNode text => [text.Value],
        Element element => element.Content.SelectMany(Texts),
        _ => [],
    };

    private static IEnumerable<Section?> Sections(Dossier dossier, Numbering numbering, ReportOptions options)
    {
        yield return InRoom("Summary", () => SummarySection.Of(dossier, numbering));
        foreach (var kind in ResultSections.Kinds)
            yield return ResultSections.InRoom(kind, dossier, numbering);
        yield return InRoom("Defence", () => DefenceSection.Stated(dossier));
        yield return InRoom("Further claims", () => DefenceSection.Raised(dossier));
        yield return InRoom("Methods", () => MethodsSection.Of(dossier));
        yield return InRoom("Strikes", () => StrikeSection.Of(dossier, numbering));
        yield return InRoom("Findings", () => FindingSection.Of(dossier));
        yield return InRoom("Limits", () => LimitSection.Of(dossier));
        yield return InRoom("Safety", () => SafetySection.Of(dossier.Evidence.Study));
        yield return InRoom("Reproducibility", () => ReproducibilitySection.Of(dossier, numbering, options));
        yield return InRoom("Appendix", () => AppendixSection.Of(dossier, numbering));
        yield return InRoom("Trails", () => TrailSection.Of(numbering));
    }

    /// <summary>A section in a room of its own: should it fall, it stands as its finding.</summary>
    /// <param name="name">What a reader knows it as.</param>
    /// <param name="make">Makes it; null where the study holds nothing for it.</param>
    internal static Section? InRoom(string name, Func<Section?> make)
    {
        var outcome = Room.Of<Made>($"the section {name}", () => new(make()));
        return outcome.Value is { } made ? made.Section : new(LevelTable.Id(name), name, [FindingSection.Grouped(outcome.Findings)]);
    }

    private sealed record Made(Section? Section);

    private static Element Contents(IEnumerable<Section> sections)
        => Markup.Html.Element(
            "nav",
            [("aria-label", "Contents")],
            Markup.Html.Element("h2", "Contents"),
            Markup.Html.Element("ol", sections.Select(s => (Node)Markup.Html.Element("li", Markup.Html.Element("a", [("href", "#section-" + s.Id)], s.Title)))));

    private static Node Written(Section section, int index)
        => Markup.Html.Element(
            "section",
            [("id", "section-" + section.Id), ("aria-labelledby", section.Id + "-heading")],
            [
                Markup.Html.Element("h2", [("id", section.Id + "-heading")], string.Create(CultureInfo.InvariantCulture, $"{index + 1}. {section.Title}")),
                .. section.Content,
            ]);
}
