using Holdfast.Composition;
using Holdfast.Safety;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>The cautions that a study's own records call for: its metal, its waters, its powder and its instrument.</summary>
public static class StudyCautions
{
    /// <summary>The cautions; nothing recognised does not mean harmless.</summary>
    /// <param name="study">The study.</param>
    public static IReadOnlyList<Caution> Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Caution.For(
        [
            Element.Find(study.Analyte ?? "")?.Name ?? "",
            .. study.Samples.Select(s => s.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.Ordinal),
            .. study.Samples.Select(s => s.Words(CompetitionProperties.Rival)).OfType<string>().Distinct(StringComparer.Ordinal).Select(r => Element.Find(r)?.Name ?? r),
            .. study.Details.Values,
            .. study.Measurements.Select(m => m.Technique).Distinct(StringComparer.Ordinal),
            study.Samples.Any(s => s.Role == SampleRole.Vessel) ? "sorbent" : "",
            study.Runs.Any(r => r.Signal == SpectrometryProperties.Absorbance.Name && r.Details.Keys.Any(k => k.Contains("flame", StringComparison.OrdinalIgnoreCase) || k.Contains("element", StringComparison.OrdinalIgnoreCase))) ? "flame" : "",
        ]);
    }
}
