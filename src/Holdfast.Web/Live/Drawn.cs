using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Web.Live;

/// <summary>Figures and tables of one working of the study, made when they are first asked for and once for all pages and downloads.</summary>
/// <param name="dossier">The study worked out.</param>
public sealed class Drawn(Dossier dossier)
{
    private readonly Lazy<ImmutableArray<Figure>> figures = new(() => StudyFigure.All(dossier));
    private readonly Lazy<ImmutableArray<Table>> tables = new(() => ReportTables.All(dossier));

    /// <summary>The study worked out.</summary>
    public Dossier Dossier => dossier;

    /// <summary>Every figure, in the order of the report.</summary>
    public ImmutableArray<Figure> Figures => figures.Value;

    /// <summary>Every table, under its name for files.</summary>
    public ImmutableArray<Table> Tables => tables.Value;
}
