using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Water samples and every other series in which no setting was varied.</summary>
internal static class WaterSection
{
    /// <summary>The section; null when every series varied something the report already showed.</summary>
    public static Section? Of(Dossier dossier, Numbering numbering)
    {
        var shown = new[] { BatchProperties.Dose, BatchProperties.ContactTime, BatchProperties.InitialConcentration, BatchProperties.StartPh };
        var rest = dossier.Evidence.Series.Where(s => !s.Levels.IsEmpty && (s.Varied is null || !shown.Contains(s.Varied))).ToArray();
        var digests = dossier.Evidence.Vessels.Where(v => v.Sample.Role == SampleRole.Digest).ToArray();
        var content = new List<Node>();
        foreach (var series in rest)
            content.AddRange(One(series, numbering));
        if (digests.Length > 0)
            content.AddRange(Dissolved(digests));
        return content.Count == 0 ? null : new("waters", "Water samples and other series", content);
    }

    private static IEnumerable<Node> One(Series series, Numbering numbering)
    {
        yield return Prose.Heading($"Series {series.Name}");
        yield return SeriesText.Of(series, numbering);
        if (series.Vessels.Any(v => v.End is not null))
            yield return numbering.Table(LevelTable.Of(series));
        var read = series.Vessels.Where(v => v.End?.Value is not null).ToArray();
        if (read.Length > 0 && series.Varied is null)
        {
            yield return Prose.List(read.Select(v => v.End!.IsBelowDetection && v.End.DetectionLimit is { } limit
                ? $"{v.Code}: below the detection limit of {InWords.Plain(limit, "mg/L")}"
                : $"{v.Code}: {InWords.Of(v.End.Value!.Value, "mg/L")} left"));
        }
    }

    private static IEnumerable<Node> Dissolved(Vessel[] digests)
    {
        yield return Prose.Heading("Loaded solids that were dissolved");
        yield return Prose.List(digests.Select(d => d.Sample.Fact(BatchProperties.UptakeBySolid) is { Value: { } q } fact
            ? $"{d.Code}: {InWords.Plain(q, "mg/g")}, as recorded in {fact.Origin}{(fact.U is null ? "; it came without an uncertainty" : $", standard uncertainty {InWords.Plain(fact.U.Value, "mg/g")}")}"
            : $"{d.Code}: uptake found in the solid {Prose.NotRecorded}"));
    }
}
