using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyTables;

/// <summary>The conditions of a series in words: what was varied and what was held.</summary>
internal static class Conditions
{
    private static readonly Property[] Settings =
    [
        BatchProperties.InitialConcentration, BatchProperties.Dose, BatchProperties.ContactTime, BatchProperties.StartPh, BatchProperties.Temperature,
    ];

    /// <summary>How many vessels and levels: "27 vessels at 9 levels of contact time (5 to 180 min)".</summary>
    public static string Extent(Series series)
    {
        var count = InWords.Count(series.Vessels.Count(), "vessel");
        return series.Varied is { } varied && !series.Levels.IsEmpty
            ? $"{count} at {InWords.Count(series.Levels.Length, "level")} of {varied.Title} ({InWords.Span([.. series.Levels.Select(l => l.X)], varied.Unit)})"
            : count;
    }

    /// <summary>What was held: "initial concentration 5 mg/L, dose 2 g/L and temperature 298.15 K"; what no record holds is passed over.</summary>
    public static string Held(Series series) => InWords.Listed(Recorded(series).Select(r => $"{r.Property.Title} {InWords.Span(r.Values, r.Property.Unit)}"));

    /// <summary>What was held but not recorded.</summary>
    public static IReadOnlyList<Property> Missing(Series series)
        => [.. Settings.Where(p => p != series.Varied && Values(series, p).Length == 0)];

    /// <summary>The waters of the vessels.</summary>
    public static IReadOnlyList<string> Waters(Series series)
        => [.. series.Vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.Ordinal)];

    private static IEnumerable<(Property Property, double[] Values)> Recorded(Series series)
        => Settings.Where(p => p != series.Varied).Select(p => (p, Values(series, p))).Where(r => r.Item2.Length > 0);

    private static double[] Values(Series series, Property property) => property == BatchProperties.Dose
        ? [.. series.Vessels.Select(v => v.Sample.Number(property) ?? v.Dose?.Value).OfType<double>()]
        : [.. series.Vessels.Select(v => v.Sample.Number(property)).OfType<double>()];
}
