using System.Collections.Immutable;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>What became of the vessels of designed plans: each planned row beside its sample and its place among the readings.</summary>
/// <param name="Series">The planned series of which something was read, in the order they were planned.</param>
public sealed record CarriedOut(ImmutableArray<PlannedSeries> Series)
{
    private static readonly Analysis<CarriedOut> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static CarriedOut Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The planned series of this name, or null.</summary>
    /// <param name="name">Name of a series; null gives the only one.</param>
    public PlannedSeries? Named(string? name)
        => name is null ? Series.Length == 1 ? Series[0] : null : Series.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));

    private static CarriedOut Work(Evidence evidence)
    {
        var study = evidence.Study;
        var first = study.Readings.Where(r => !study.IsStruck(r)).GroupBy(r => r.Sample, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return new([.. study.Designs.SelectMany(d => d.Vessels).Where(v => v.Role == SampleRole.Vessel).GroupBy(v => v.Series, StringComparer.Ordinal)
            .Select(g => One(study, g.Key, [.. g], first)).Where(s => s.Vessels.Any(v => v.Reading is not null))]);
    }

    // One setting is varied in a series, so that the settings put in order are its levels put in order.
    private static PlannedSeries One(Study study, string name, PlannedVessel[] planned, Dictionary<string, Reading> first)
    {
        var settings = planned.Select(Setting).Distinct().Order().ToList();
        return new(name, [.. planned.Select(v => new PlannedAndDone(
            v, settings.IndexOf(Setting(v)) + 1, study.Sample(v.Code) is { } sample && study.IsStruck(sample), first.GetValueOrDefault(v.Code)))]);
    }

    private static (double, double, double, double, double, string) Setting(PlannedVessel v)
        => (v.InitialConcentration, Math.Round(v.Mass / v.Volume, 4), v.Ph ?? 0, v.Temperature ?? 0, v.ContactTime, v.Batch ?? "");
}

/// <summary>A planned series with what became of it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Vessels">Its vessels with sorbent and metal, in the order of work.</param>
public sealed record PlannedSeries(string Name, ImmutableArray<PlannedAndDone> Vessels)
{
    /// <summary>Vessels that count: read, and not struck.</summary>
    public IEnumerable<PlannedAndDone> Counted => Vessels.Where(v => v is { Reading: not null, IsStruck: false });
}

/// <summary>A planned vessel and what became of it.</summary>
/// <param name="Planned">Its row.</param>
/// <param name="Level">Which level of its series, from 1 in rising order.</param>
/// <param name="IsStruck">Whether its sample was struck.</param>
/// <param name="Reading">The first reading of it that counts, or null.</param>
public sealed record PlannedAndDone(PlannedVessel Planned, int Level, bool IsStruck, Reading? Reading)
{
    /// <summary>Whether it can still be read.</summary>
    public bool IsToDo => Reading is null && !IsStruck;
}
