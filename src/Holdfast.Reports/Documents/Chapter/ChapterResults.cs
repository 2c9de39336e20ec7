using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>Results in the order of the questions: for each area its figures, its numbers, and each claim whole: how it stands, why, what weakens it and what would settle it.</summary>
internal static class ChapterResults
{
    // More of one area stand in the record.
    private const int MostFigures = 2;

    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="topics">The claims by area.</param>
    /// <param name="claims">The claims with their numbers.</param>
    /// <param name="numbering">Sets figures and tables.</param>
    public static Section Of(Dossier dossier, IReadOnlyList<Topic> topics, ClaimList claims, Numbering numbering)
    {
        var content = new List<Node>();
        if (MissingText.Of(dossier.Evidence, numbering) is { } missing)
            content.Add(missing);
        foreach (var topic in topics)
        {
            content.Add(Prose.Heading(topic.Title));
            content.AddRange(Figures(topic, numbering));
            if (topic.Kind is { } kind)
                content.AddRange(kind.InChapter(dossier, numbering));
            content.AddRange(topic.Claims.Select(v => One(v, topic.RestsOn.GetValueOrDefault(v.Claim.Id), claims, numbering)));
            if (Scopes(topic, claims) is { Length: > 0 } scopes)
                content.Add(Prose.Paragraph(scopes));
        }

        if (content.Count == 0)
            content.Add(Prose.Paragraph(dossier.Evidence.Vessels.IsEmpty ? "No vessel was recorded." : "No claim was stated, so there is no question to put the results in the order of; the record has them all."));
        return new("results", "Results", content);
    }

    // Narrow ones two and two.
    private static IEnumerable<Node> Figures(Topic topic, Numbering numbering)
    {
        var (wide, narrow) = (topic.Figures.Take(MostFigures).Where(StudyChapter.IsWide), topic.Figures.Take(MostFigures).Where(f => !StudyChapter.IsWide(f)));
        return [.. wide.Select(numbering.Figure), .. narrow.Select(numbering.Figure).Chunk(2).Select(pair => Html.Element("div", [("class", "pair")], pair))];
    }

    private static Element One(Verdict verdict, Figure? figure, ClaimList claims, Numbering numbering)
    {
        var said = $" {string.Join(" ", claims.CaveatsOf(verdict).Prepend(verdict.Reason).Prepend(Ended(verdict.Sentence)))}";
        return Prose.Paragraph(
        [
            Html.Element("b", string.Create(CultureInfo.InvariantCulture, $"Claim {claims.Of(verdict)} {Standing(verdict.Ruling)}")),
            .. figure is not null && numbering.Figures.ContainsKey(Numbering.FigureId(figure)) ? [" (", numbering.Reference(figure), ")."] : new Node[] { "." },
            said,
            .. verdict is { Ruling: Ruling.NotShownYet, Next: { } next } ? [Html.Element("i", " Next: "), next.Sentence] : Array.Empty<Node>(),
        ]);
    }

    // Once for all claims that hold under the same conditions.
    private static string Scopes(Topic topic, ClaimList claims)
        => string.Join(" ", topic.Claims.Where(v => v.Scope is { Length: > 0 }).GroupBy(v => v.Scope!, StringComparer.Ordinal)
            .Select(g => $"Scope of {claims.Named(g)}: {g.Key}."));

    private static string Standing(Ruling ruling) => ruling == Ruling.NotShownYet ? "is not shown yet" : ruling == Ruling.Contradicted ? "is contradicted" : InWords.Of(ruling);

    private static string Ended(string sentence) => sentence.EndsWith('.') ? sentence : sentence + ".";
}
