using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Web.Doors;

namespace Holdfast.Web.Live;

/// <summary>Figures, tables and sections of one working of the study, made when they are first asked for and once for all pages and downloads.</summary>
/// <param name="dossier">The study worked out.</param>
public sealed class Drawn(Dossier dossier)
{
    private readonly Lazy<ImmutableArray<Figure>> figures = new(() => StudyFigure.All(dossier));
    private readonly Lazy<ImmutableArray<Table>> tables = new(() => ReportTables.All(dossier));
    private readonly Lazy<ImmutableArray<FoundSection>> results = new(() =>
        [.. ResultSections.OnPage(dossier, new PageLinks(TrailAddress.Of, id => MarkAddress.Of(dossier.Evidence, id), FigureLinks.Of)).Select(s => FoundSection.Of(s.Id, s.Title, [.. s.Content.Select(MethodsGap.Linked)]))]);

    private readonly Lazy<ILookup<string, Verdict>> resting = new(() =>
    {
        var all = StudyFigure.All(dossier);
        return dossier.Verdicts.Select(v => (Figure: ClaimFigure.Of(v, dossier.Evidence.Study, all)?.Id, Verdict: v)).Where(v => v.Figure is not null).ToLookup(v => v.Figure!, v => v.Verdict, StringComparer.Ordinal);
    });

    /// <summary>The study worked out.</summary>
    public Dossier Dossier => dossier;

    /// <summary>Every figure, in the order of the report.</summary>
    public ImmutableArray<Figure> Figures => figures.Value;

    /// <summary>Every table, under its name for files.</summary>
    public ImmutableArray<Table> Tables => tables.Value;

    /// <summary>The sections of results, written once: they are long, and every window shows the same.</summary>
    public ImmutableArray<FoundSection> Results => results.Value;

    /// <summary>The claims that a figure shows best, by the name of the figure.</summary>
    public ILookup<string, Verdict> Resting => resting.Value;
}
