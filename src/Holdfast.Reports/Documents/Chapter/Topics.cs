using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>The results in the order of the questions: a claim belongs where the figure stands that it rests on.</summary>
internal static class Topics
{
    /// <summary>The topics, in the order of their first claims.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static IReadOnlyList<Topic> Of(Dossier dossier)
    {
        var figures = StudyFigure.All(dossier);
        var areas = Areas(dossier);
        return
        [
            .. dossier.Verdicts.Where(v => v.Claim.Stated)
                .Select(v => (Verdict: v, Figure: ClaimFigure.Of(v, dossier.Evidence.Study, figures)))
                .Select(p => (p.Verdict, Figure: p.Figure is null ? null : figures.First(f => f.Id == p.Figure.Id), Area: Area(p.Figure?.Id, p.Verdict.Claim.Words("series"))))
                .GroupBy(p => p.Area.Title ?? "Further questions", StringComparer.Ordinal)
                .OrderBy(g => g.First().Area.Title is null)
                .Select(g => new Topic(g.First().Area.Kind, g.Key, [.. g.Select(p => p.Verdict)],
                    [.. g.Select(p => p.Figure).OfType<Figure>().Where(f => areas.GetValueOrDefault(f.Id).Kind == g.First().Area.Kind).DistinctBy(f => f.Id, StringComparer.Ordinal)],
                    g.Where(p => p.Figure is not null).DistinctBy(p => p.Verdict.Claim.Id, StringComparer.Ordinal).ToDictionary(p => p.Verdict.Claim.Id, p => p.Figure!, StringComparer.Ordinal))),
        ];

        // The area that has the table of its series, else the one whose figure shows it.
        (IResultSection? Kind, string? Title) Area(string? figure, string? series)
            => series is not null && areas.TryGetValue("levels-" + LevelTable.Id(series), out var known) || figure is not null && areas.TryGetValue(figure, out known) ? known : default;
    }

    // Which area sets which figure and table is known by letting each set its own.
    private static Dictionary<string, (IResultSection Kind, string Title)> Areas(Dossier dossier)
    {
        var areas = new Dictionary<string, (IResultSection, string)>(StringComparer.Ordinal);
        foreach (var kind in ResultSections.Kinds)
        {
            var numbering = new Numbering(dossier);
            if (ResultSections.InRoom(kind, dossier, numbering) is not { } section)
                continue;
            foreach (var id in numbering.Figures.Values.Select(f => f.Id).Concat(numbering.Tables))
                areas.TryAdd(id, (kind, section.Title));
        }

        return areas;
    }
}
