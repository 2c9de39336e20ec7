using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>What is said of every series alike: how many vessels, under which conditions, with the trail of one number.</summary>
internal static class SeriesText
{
    private static readonly Property[] Conditions =
    [
        BatchProperties.InitialConcentration, BatchProperties.Dose, BatchProperties.ContactTime, BatchProperties.StartPh, BatchProperties.Temperature,
    ];

    /// <summary>The opening paragraph of a series.</summary>
    public static Element Of(Series series, Numbering numbering)
    {
        var vessels = series.Vessels.ToArray();
        var text = $"{InWords.Count(vessels.Length, "vessel")} at {InWords.Count(series.Levels.Length, "level")}";
        if (series.Varied is { } varied && vessels.Length > 0)
            text += $" of {varied.Title} ({InWords.Span([.. series.Levels.Select(l => l.X)], varied.Unit)})";
        text += "; ";
        var held = Conditions.Where(p => p != series.Varied).Select(p => Held(p, vessels)).ToArray();
        text += InWords.Listed(held);
        var waters = vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.Ordinal).ToArray();
        text += waters.Length == 0 ? $"; water {Prose.NotRecorded}." : $"; water: {InWords.Listed(waters)}.";
        if (series.Struck.Length > 0)
            text += $" {InWords.Count(series.Struck.Length, "vessel")} struck, shown and not used.";
        var pieces = Prose.Marked(text).ToList();
        if (Representative(series) is { } one)
            pieces.AddRange([$" Trail of one uptake, {one.Code}: ", .. numbering.Trail("q:" + one.Code), "."]);
        return Prose.Paragraph(pieces);
    }

    // The first vessel of the middle level that has an uptake: neither the best nor the worst known.
    private static Vessel? Representative(Series series)
        => series.Levels.IsEmpty ? null
            : series.Levels[series.Levels.Length / 2].Vessels.FirstOrDefault(v => v.Uptake is not null) ?? series.Vessels.FirstOrDefault(v => v.Uptake is not null);

    private static string Held(Property property, Vessel[] vessels)
    {
        double[] values = property == BatchProperties.Dose
            ? [.. vessels.Select(v => v.Dose?.Value ?? v.Sample.Number(property)).OfType<double>()]
            : [.. vessels.Select(v => v.Sample.Number(property)).OfType<double>()];
        return values.Length == 0 ? $"{property.Title} {Prose.NotRecorded}" : $"{property.Title} {InWords.Span(values, property.Unit)}";
    }
}
