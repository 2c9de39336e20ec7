using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>What was struck and why.</summary>
internal static class StrikeSection
{
    /// <summary>The section.</summary>
    public static Section Of(Dossier dossier, Numbering numbering)
    {
        var study = dossier.Evidence.Study;
        return new("strikes", "Strikes", study.Strikes.IsEmpty
            ? [Prose.Paragraph("Nothing was struck: every reading that was taken in counts.")]
            : [
                Prose.Paragraph("Struck things stay legible in tables and figures and count nowhere."),
                numbering.Table(() => StudyFactTables.Strikes(study)),
            ]);
    }
}
