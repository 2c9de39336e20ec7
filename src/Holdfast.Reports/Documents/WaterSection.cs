using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Water samples and whatever else the report has not shown so far.</summary>
internal sealed class WaterSection : IResultSection
{
    private static readonly Property[] Shown =
    [
        BatchProperties.Dose, BatchProperties.ContactTime, BatchProperties.InitialConcentration, BatchProperties.StartPh,
    ];

    /// <inheritdoc/>
    public int Place => 90;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var content = new List<Node>();
        var cycles = ReuseStudy.Of(dossier.Evidence).Series.Select(s => s.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var series in dossier.Evidence.Series.Where(s => !cycles.Contains(s.Name) && s.Vessels.Any(v => v.End is not null) && (s.Varied is null || !Shown.Contains(s.Varied))))
            content.AddRange(One(series, numbering));
        var digests = dossier.Evidence.Vessels.Where(v => v.Sample.Role == SampleRole.Digest).ToArray();
        if (digests.Length > 0)
            content.AddRange(Dissolved(digests));
        content.AddRange(Unworked(dossier.Evidence));
        return content.Count == 0 ? null : new("waters", "Water samples and other series", content);
    }

    private static IEnumerable<Node> One(Series series, Numbering numbering)
    {
        yield return Prose.Heading($"Series {series.Name}");
        yield return SeriesText.Of(series, numbering);
        yield return numbering.Table(() => LevelTable.Of(series));
        var read = series.Vessels.Where(v => v.End is { Value: not null } or { IsOnlyBelow: true }).ToArray();
        if (read.Length > 0 && series.Varied is null)
        {
            yield return Prose.List(read.Select(v => v.End!.IsBelowDetection && v.End.DetectionLimit is { } limit
                ? $"{v.Code}: below {(v.End.IsOnlyBelow ? "" : "the detection limit of ")}{InWords.Plain(limit, "mg/L")}"
                : $"{v.Code}: {InWords.Of(v.End.Value!.Value, "mg/L")} left"));
        }
    }

    private static IEnumerable<Node> Dissolved(Vessel[] digests)
    {
        yield return Prose.Heading("Loaded solids that were dissolved");
        yield return Prose.List(digests.Select(d => d.Sample.Fact(BatchProperties.UptakeBySolid) is { Value: { } q } fact
            ? $"{d.Code}: {InWords.Plain(q, "mg/g")}, as recorded in {fact.Origin}{(fact.U is { } u ? $", standard uncertainty {InWords.Plain(u, "mg/g")}" : "; it came without an uncertainty")}"
            : $"{d.Code}: uptake found in the solid {Prose.NotRecorded}"));
    }

    // Records that give no uptake here are named, so that nothing that was taken in is passed over in silence.
    private static IEnumerable<Node> Unworked(Evidence evidence)
    {
        var rest = evidence.Vessels
            .Where(v => v.End is null && v.Sample.Role != SampleRole.Digest)
            .Select(v => (Vessel: v, Facts: Others(v.Sample)))
            .Where(v => !v.Facts.IsEmpty)
            .ToArray();
        if (rest.Length == 0)
            yield break;
        yield return Prose.Heading("Recorded beside the uptake");
        yield return Prose.Paragraph("These records enter a claim where its rule asks for them; no uptake follows from them.");
        yield return Prose.List(rest
            .SelectMany(v => v.Facts.Select(f => (v.Vessel, Property: f)))
            .GroupBy(f => f.Property)
            .OrderBy(g => g.Key.Title, StringComparer.Ordinal)
            .Select(g => $"{g.Key.Title}: {InWords.Span([.. g.Select(f => Math.Round(f.Vessel.Sample.Number(g.Key)!.Value, 4))], g.Key.Unit)} in {InWords.Count(g.Count(), "sample")} ({InWords.Some([.. g.Select(f => f.Vessel.Code)], 3)})"));
    }

    private static ImmutableArray<Property> Others(Sample sample)
        => [.. sample.Facts.Values.Where(f => f.Value is not null).Select(f => Property.Named(f.Property)).OfType<Property>()
            .Where(p => p != BatchProperties.Volume && p != BatchProperties.Mass && p != BatchProperties.StartPh && p != BatchProperties.EndPh
                && p != BatchProperties.Temperature && p != BatchProperties.ContactTime && p != BatchProperties.InitialConcentration && p != BatchProperties.Dose
                && p != SurfaceChargeProperties.IonicStrength)];
}
