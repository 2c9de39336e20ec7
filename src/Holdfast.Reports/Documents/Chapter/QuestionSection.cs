using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>What the study asks, in the order of its results.</summary>
internal static class QuestionSection
{
    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="claims">The claims with their numbers.</param>
    public static Section Of(Dossier dossier, ClaimList claims)
    {
        var study = dossier.Evidence.Study;
        var subject = $"{study.Details.GetValueOrDefault("material") ?? "the material"} and {study.Analyte ?? "the metal"}";
        var topics = Topics.Of(dossier);
        return new("question", "Question", [Prose.Paragraph(topics.Count == 0
            ? $"The study was begun for {subject}; no claim was stated."
            : $"What do the data show about {subject}? The study puts this as {InWords.Count(dossier.Verdicts.Count(v => v.Claim.Stated), "claim")}, in this order: "
                + $"{InWords.Listed(topics.Select(t => $"{t.Title[..1].ToLowerInvariant()}{t.Title[1..]} ({claims.Named(t.Claims)})").Select(t => t.StartsWith("pH", StringComparison.OrdinalIgnoreCase) ? "pH" + t[2..] : t))}.")]);
    }
}
