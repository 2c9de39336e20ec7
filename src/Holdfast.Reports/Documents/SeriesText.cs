using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>What is said of every series alike: how many vessels, under which conditions, with the trail of one number.</summary>
internal static class SeriesText
{
    /// <summary>The opening paragraph of a series.</summary>
    public static Element Of(Series series, Numbering numbering)
    {
        var text = Conditions.Extent(series);
        if (Conditions.Held(series) is { Length: > 0 } held)
            text += "; " + held;
        if (Conditions.Missing(series) is { Count: > 0 } missing)
            text += "; " + InWords.Listed(missing.Select(p => $"{p.Title} {Prose.Gap("vessels:" + p.Name)}"));
        text += Conditions.Waters(series) is { Count: > 0 } waters ? $"; water: {InWords.Listed(waters)}." : $"; water {Prose.Gap("vessels:" + SampleProperties.Matrix.Name)}.";
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
}
