using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>What the study asks, in the order of its results.</summary>
internal static class QuestionSection
{
    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="topics">The claims by area.</param>
    /// <param name="numbering">Refers to tables.</param>
    public static Section Of(Dossier dossier, IReadOnlyList<Topic> topics, Numbering numbering)
    {
        var study = dossier.Evidence.Study;
        var subject = $"{study.Details.GetValueOrDefault("material") ?? "the material"} and {study.Analyte ?? "the metal"}";
        return new("question", "Question", [topics.Count == 0
            ? Prose.Paragraph($"The study was begun for {subject}; no claim was stated.")
            : Prose.Paragraph(
                $"What do the data show about {subject}? The study puts this as {InWords.Count(dossier.Verdicts.Count(v => v.Claim.Stated), "claim")}; the results take them area by area, in the order of ",
                numbering.Reference(GlanceSection.StandingId), ".")]);
    }
}
