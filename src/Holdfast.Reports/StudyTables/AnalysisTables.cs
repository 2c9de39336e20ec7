using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Tables of temperature, rivals, reuse and treatment, where a study holds them.</summary>
internal static class AnalysisTables
{
    /// <summary>The tables, in the order of the report.</summary>
    public static IEnumerable<Table> All(Evidence evidence)
    {
        foreach (var family in TemperatureStudy.Of(evidence).Families)
        {
            yield return TemperatureTable.Of(family);
            if (TemperatureTable.Heats(family) is { } heats)
                yield return heats;
        }

        foreach (var rate in RateStudy.Of(evidence).Families)
            yield return RateTable.Of(rate);
        if (MixtureStudy.Of(evidence) is { Rivals.IsEmpty: false } mixtures)
            yield return MixtureTable.Of(mixtures, evidence.Study.Analyte ?? "the metal");
        foreach (var series in ReuseStudy.Of(evidence).Series)
            yield return CycleTable.Of(series);
        if (StagePlans.Of(evidence) is { Plans.IsEmpty: false } plans)
            yield return TreatmentTables.Stages(plans);
        if (ColumnStudy.Of(evidence) is { Runs.IsEmpty: false } beds)
            yield return TreatmentTables.Beds(beds);
    }
}
