using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Trails;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>Every table of a study under a short stable name, for files: full precision, uncertainties in columns of their own.</summary>
public static class ReportTables
{
    private static readonly Lazy<ImmutableArray<IStudyTables>> Kinds = new(() => [.. Catalogue.Of<IStudyTables>().OrderBy(k => k.Name, StringComparer.Ordinal)]);

    /// <summary>The tables of areas of work in files of their own, by the name of the area; an area that falls gives the finding.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static ImmutableArray<(string Name, ImmutableArray<Table> Tables)> OfAreas(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return [.. Kinds.Value.Select(k => (k.Name, Room.Of("the tables of " + k.Name, () => k.Of(evidence).ToArray()) is var made && made.Value is { } tables ? [.. tables] : ImmutableArray.Create(Fallen(k.Name, made.Findings[0]))))];
    }

    /// <summary>The tables, those of the figures last; none twice.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<Table> All(Dossier dossier)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        return [.. OfStudy(dossier).Concat(StudyFigure.All(dossier).SelectMany(f => InRoom(f.Id, () => FigureTables.Of(f, withScans: true)))).DistinctBy(t => t.Id, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The tables without those behind figures; none twice.</summary>
    /// <param name="dossier">The study worked out.</param>
    internal static ImmutableArray<Table> OfStudy(Dossier dossier)
    {
        var evidence = dossier.Evidence;
        var tables = new List<Table>();
        One("claims", () => ClaimTable.Of(dossier.Verdicts));
        One("deciding-numbers", () => StudyFactTables.Deciding(dossier.Verdicts));
        One("calibration", () => CalibrationTable.Of(evidence.Runs, forFiles: true));
        One("limits", () => CalibrationTable.Limits(evidence.Runs));
        One("vessels", () => VesselTable.Of("vessels", "Vessels, controls and other samples", evidence.Vessels, evidence));
        Some("precipitation", () => PrecipitationGuard.Of(evidence) is { Vials.IsEmpty: false } guard ? [PrecipitationTable.Vials(guard.Vials, together: false)] : []);
        Some("checks", () => CalibrationTable.Checks(evidence.Runs) is { } checks ? [checks] : []);
        foreach (var series in evidence.Series.Where(s => !s.Levels.IsEmpty))
            One("levels-" + LevelTable.Id(series.Name), () => LevelTable.Of(series, forFiles: true));
        foreach (var (fitted, kind) in evidence.Kinetics.Select(k => (k, "kinetics")).Concat(evidence.Isotherms.Select(i => (i, "isotherms"))).Where(f => !f.Item1.Fits.IsEmpty))
        {
            var name = $"{kind}-{LevelTable.Id(fitted.Series.Name)}";
            One(name + "-curves", () => RankingTable.Of(name + "-curves", $"Curves fitted to {fitted.Series.Name}", fitted.Fits, "mg/g", forFiles: true));
            One(name + "-parameters", () => EstimateTable.Of(name + "-parameters", $"Parameters of the curves fitted to {fitted.Series.Name}", fitted.Fits));
            Some(name + "-predictions", () => PredictionTable.Of(name + "-predictions", fitted) is { } predicted ? [predicted] : []);
            Some(name + "-linear", () => LinearFormTable.Of(name + "-linear", $"Linear forms of {fitted.Series.Name}, for display only", fitted) is { } linear ? [linear] : []);
        }

        foreach (var (name, area) in AnalysisTables.Areas)
            Some(name, () => area(evidence));
        foreach (var (_, of) in OfAreas(evidence))
            tables.AddRange(of);
        Some("sensor", () => SensorTables.All(Sensing.Of(evidence)));
        One("samples", () => SampleTable.Of(evidence.Study));
        One("readings", () => SampleTable.Readings(evidence.Study));
        One("apparatus", () => StudyFactTables.Apparatus(evidence.Study));
        if (!evidence.Study.Measurements.IsEmpty)
            One("measurements", () => MeasurementTable.Of(evidence.Study));
        One("files", () => StudyFactTables.Originals(evidence.Study));
        One("strikes", () => StudyFactTables.Strikes(evidence.Study));
        One("findings", () => StudyFactTables.Findings(evidence.Findings.Concat(evidence.Vessels.SelectMany(v => v.Findings)).Concat(StudyFigure.Fallen(dossier)).Concat(DerivedTrails.Of(evidence).Fallen)));
        return [.. tables.DistinctBy(t => t.Id, StringComparer.OrdinalIgnoreCase)];

        void One(string name, Func<Table> make) => Some(name, () => [make()]);

        void Some(string name, Func<IEnumerable<Table>> make) => tables.AddRange(InRoom(name, make));
    }

    private static Table[] InRoom(string name, Func<IEnumerable<Table>> make)
    {
        var outcome = Room.Of("the table " + name, () => make().ToArray());
        return outcome.Value ?? [Fallen(name, outcome.Findings[0])];
    }

    // The finding in the place of the table, so that whoever opens the file knows why it holds nothing.
    private static Table Fallen(string name, Finding finding)
        => new(name, "Not worked out: " + name, [new Column("code", "Code"), new Column("finding", "Finding")], [Row.Of(finding.Code, finding.Sentence)]);
}
