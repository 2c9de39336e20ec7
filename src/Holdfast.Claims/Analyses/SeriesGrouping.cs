using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// Sorts vessels into series and each series into levels. A series is what the vessel sheet calls one (or, without such a column,
/// the sheet itself); what was varied in it is read off the recorded settings, never off its name.
/// </summary>
internal static class SeriesGrouping
{
    private static readonly Property[] Candidates =
    [
        BatchProperties.ContactTime, BatchProperties.InitialConcentration, BatchProperties.Dose, BatchProperties.StartPh, BatchProperties.Temperature,
        BatchProperties.ParticleDiameter, BatchProperties.StirringSpeed,
    ];

    /// <summary>The series, in the order their first vessel came, with findings for what cannot be sorted.</summary>
    /// <param name="vessels">Vessels and controls.</param>
    /// <param name="findings">Receives a finding for a series in which more than one setting was varied.</param>
    public static ImmutableArray<Series> Of(IEnumerable<Vessel> vessels, ICollection<Finding> findings)
        => [.. vessels
            .Where(v => v.Sample.Role is SampleRole.Vessel or SampleRole.Control)
            .GroupBy(v => NameOf(v.Sample), StringComparer.Ordinal)
            .Select(g => One(g.Key, [.. g], findings))];

    private static string NameOf(Sample sample)
        => sample.Series ?? Path.GetFileNameWithoutExtension(sample.Facts.Values.FirstOrDefault()?.Origin.FileName ?? "vessels");

    private static Series One(string name, ImmutableArray<Vessel> members, ICollection<Finding> findings)
    {
        var counted = members.Where(v => v.Sample.Role == SampleRole.Vessel && !v.IsStruck).ToImmutableArray();
        var planned = members.Where(v => v.Sample.Role == SampleRole.Vessel).ToImmutableArray();
        var varied = Candidates.Where(p => Distinct(p, planned) > 1).ToArray();
        if (varied.Length > 1)
        {
            findings.Add(Finding.Of("HF-460", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"In series {name} {Listed(varied)} were varied together. Give each comparison a series of its own, so that one setting explains one change."), name));
        }

        var property = varied.Length == 1 ? varied[0] : null;
        return new Series(
            name,
            property,
            property is null ? Ungrouped(counted) : Levels(property, counted),
            [.. members.Where(v => v.Sample.Role == SampleRole.Control && !v.IsStruck)],
            [.. members.Where(v => v.IsStruck)]);
    }

    private static ImmutableArray<Level> Ungrouped(ImmutableArray<Vessel> vessels) => vessels.IsEmpty ? [] : [new Level(0, vessels)];

    private static int Distinct(Property property, ImmutableArray<Vessel> vessels) => Levels(property, vessels).Length;

    /// <summary>The levels of one setting in rising order; vessels that lack the setting are left out.</summary>
    /// <param name="property">The setting.</param>
    /// <param name="vessels">Vessels.</param>
    private static ImmutableArray<Level> Levels(Property property, ImmutableArray<Vessel> vessels)
    {
        var sorted = vessels
            .Select(v => (Setting: SettingOf(property, v), Vessel: v))
            .Where(p => p.Setting is not null)
            .OrderBy(p => p.Setting!.Value)
            .ToArray();
        var levels = ImmutableArray.CreateBuilder<Level>();
        for (var start = 0; start < sorted.Length;)
        {
            var end = start + 1;
            while (end < sorted.Length && Same(property, sorted[start].Setting!.Value, sorted[end].Setting!.Value))
                end++;
            var members = sorted[start..end];
            levels.Add(new Level(members.Average(m => m.Setting!.Value), [.. members.Select(m => m.Vessel)]));
            start = end;
        }

        return levels.ToImmutable();
    }

    private static double? SettingOf(Property property, Vessel vessel)
        => property == BatchProperties.Dose
            ? vessel.Sample.Number(BatchProperties.Dose) ?? vessel.Dose?.Value
            : vessel.Sample.Number(property);

    private static bool Same(Property property, double a, double b)
    {
        if (property == BatchProperties.Dose)
            return Tolerances.SameDose(a, b);
        if (property == BatchProperties.StartPh)
            return Tolerances.SamePh(a, b);
        return property == BatchProperties.Temperature ? Tolerances.SameTemperature(a, b) : b.Equals(a);
    }

    private static string Listed(IReadOnlyList<Property> properties)
        => string.Join(" and ", properties.Select(p => p.Title));
}
