using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Every table of a study under a short stable name, for files: full precision, uncertainties in columns of their own.</summary>
public static class ReportTables
{
    /// <summary>The tables, those of the figures last; none twice.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static ImmutableArray<Table> All(Dossier dossier)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var evidence = dossier.Evidence;
        var tables = new List<Table>
        {
            ClaimTable.Of(dossier.Verdicts),
            StudyFactTables.Deciding(dossier.Verdicts),
            CalibrationTable.Of(evidence.Runs, forFiles: true),
            CalibrationTable.Limits(evidence.Runs),
            VesselTable.Of("vessels", "Vessels, controls and other samples", evidence.Vessels, evidence),
        };
        if (PrecipitationGuard.Of(evidence) is { Vials.IsEmpty: false } guard)
            tables.Add(PrecipitationTable.Vials(guard.Vials, together: false));
        if (CalibrationTable.Checks(evidence.Runs) is { } checks)
            tables.Add(checks);
        tables.AddRange(evidence.Series.Where(s => !s.Levels.IsEmpty).Select(s => LevelTable.Of(s, forFiles: true)));
        foreach (var (fitted, kind) in evidence.Kinetics.Select(k => (k, "kinetics")).Concat(evidence.Isotherms.Select(i => (i, "isotherms"))).Where(f => !f.Item1.Fits.IsEmpty))
        {
            var name = $"{kind}-{LevelTable.Id(fitted.Series.Name)}";
            tables.Add(RankingTable.Of(name + "-curves", $"Curves fitted to {fitted.Series.Name}", fitted.Fits, "mg/g", forFiles: true));
            tables.Add(EstimateTable.Of(name + "-parameters", $"Parameters of the curves fitted to {fitted.Series.Name}", fitted.Fits));
            if (!fitted.Weighed.IsEmpty)
                tables.Add(RankingTable.Of(name + "-weighed", $"The same curves weighed by the uncertainty of each vessel of {fitted.Series.Name}", fitted.Weighed, null, forFiles: true));
            if (LinearFormTable.Of(name + "-linear", $"Linear forms of {fitted.Series.Name}, for display only", fitted) is { } linear)
                tables.Add(linear);
        }

        tables.AddRange(AnalysisTables.All(evidence));
        tables.AddRange(SensorTables.All(Sensing.Of(evidence)));
        tables.AddRange(
        [
            SampleTable.Of(evidence.Study),
            SampleTable.Readings(evidence.Study),
            StudyFactTables.Apparatus(evidence.Study),
            StudyFactTables.Originals(evidence.Study),
            StudyFactTables.Strikes(evidence.Study),
            StudyFactTables.Findings(evidence.Findings.Concat(evidence.Vessels.SelectMany(v => v.Findings))),
        ]);
        tables.AddRange(StudyFigure.All(dossier).SelectMany(f => FigureTables.Of(f, withScans: true)));
        return [.. tables.DistinctBy(t => t.Id, StringComparer.OrdinalIgnoreCase)];
    }
}
