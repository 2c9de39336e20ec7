using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Web.Doors;
using Microsoft.AspNetCore.Components;

namespace Holdfast.Web.Live;

/// <summary>Figures, tables and sections of one working of the study, made when they are first asked for and once for all pages and downloads.</summary>
/// <param name="dossier">The study worked out.</param>
public sealed class Drawn(Dossier dossier)
{
    private readonly Lazy<ImmutableArray<Figure>> figures = new(() => StudyFigure.All(dossier));
    private readonly Lazy<ImmutableArray<Table>> tables = new(() => ReportTables.All(dossier));
    private readonly Lazy<ImmutableArray<(string Id, string Title, MarkupString Markup)>> results = new(() =>
        [.. ResultSections.OnPage(dossier, new PageLinks(TrailAddress.Of, id => MarkAddress.Of(dossier.Evidence, id), FigureLinks.Of)).Select(s => (s.Id, s.Title, new MarkupString(string.Concat(s.Content.Select(n => MethodsGap.Linked(n).ToHtml())))))]);

    /// <summary>The study worked out.</summary>
    public Dossier Dossier => dossier;

    /// <summary>Every figure, in the order of the report.</summary>
    public ImmutableArray<Figure> Figures => figures.Value;

    /// <summary>Every table, under its name for files.</summary>
    public ImmutableArray<Table> Tables => tables.Value;

    /// <summary>The sections of results, each with its address, its heading and its markup, written once: they are long, and every window shows the same.</summary>
    public ImmutableArray<(string Id, string Title, MarkupString Markup)> Results => results.Value;
}
