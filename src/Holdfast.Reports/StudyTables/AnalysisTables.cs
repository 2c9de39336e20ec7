using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Tables of temperature, rivals, reuse and treatment, where a study holds them.</summary>
internal static class AnalysisTables
{
    /// <summary>Each area by its name, with what makes its tables; in the order of the report.</summary>
    public static ImmutableArray<(string Name, Func<Evidence, IEnumerable<Table>> Of)> Areas { get; } =
    [
        ("temperature", e => TemperatureStudy.Of(e).Families.SelectMany(f => new[] { TemperatureTable.Of(f), TemperatureTable.Heats(f) }.OfType<Table>())),
        ("rates", e => RateStudy.Of(e).Families.Select(RateTable.Of)),
        ("mixtures", e => MixtureStudy.Of(e) is { Rivals.IsEmpty: false } mixtures ? [MixtureTable.Of(mixtures, e.Study.Analyte ?? "the metal")] : []),
        ("cycles", e => ReuseStudy.Of(e).Series.Select(CycleTable.Of)),
        ("stages", e => StagePlans.Of(e) is { Plans.IsEmpty: false } plans ? [TreatmentTables.Stages(plans)] : []),
        ("beds", e => ColumnStudy.Of(e) is { Runs.IsEmpty: false } beds ? [TreatmentTables.Beds(beds)] : []),
    ];
}
