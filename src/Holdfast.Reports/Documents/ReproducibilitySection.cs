using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Documents.Sources;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>What someone else needs to get the same numbers, and what was not done.</summary>
internal static class ReproducibilitySection
{
    private const string Gap = Prose.NotRecorded;

    /// <summary>The section.</summary>
    public static Section Of(Dossier dossier, Numbering numbering, ReportOptions options)
    {
        var study = dossier.Evidence.Study;
        var open = dossier.Verdicts.Where(v => v.Ruling == Ruling.NotShownYet).Select(v => v.Sentence).ToArray();
        var content = new List<Node>
        {
            Prose.List(
            [
                string.Create(CultureInfo.InvariantCulture, $"Every number is recomputed by {options.MadeBy} from the {InWords.Count(study.Originals.Length, "file")} below and the daybook up to entry {study.Version}; the same study and version give the same bytes. Fingerprint: {(study.Fingerprint.Length == 0 ? "none yet" : study.Fingerprint)}."),
                "Where random numbers are drawn (the example of a linear plot, resampled sizes of particles, noise on pore sizes) the seed is fixed: the same study gives the same digits.",
                "In tables n counts separate vessels; readings of one solution count once.",
                study.Strikes.IsEmpty ? "No reading was excluded." : $"{InWords.Count(study.Strikes.Length, "strike")}, each with its reason in the section on strikes.",
                $"Plan and amendments: {Gap}.",
                $"Batches made, used and left over, and where samples are kept: {Gap}.",
                open.Length == 0 ? "No claim is left open." : $"Not done: the experiments that would settle the {InWords.Count(open.Length, "claim")} not shown yet; the defence names the experiment for each.",
                study.Apparatus.IsEmpty ? $"Instruments, their numbers and calibration dates: {Gap}." : $"Instruments are listed below; their calibration dates: {Gap}.",
                $"Constants of the trade used by a claim are named with it. Who did what: {Gap}.",
            ]),
        };
        if (!study.Originals.IsEmpty)
            content.Add(numbering.Table(() => StudyFactTables.Originals(study)));
        if (!study.Apparatus.IsEmpty)
            content.Add(numbering.Table(() => StudyFactTables.Apparatus(study)));
        content.AddRange(SourceList.Of(dossier, everyCurve: true));
        return new("reproducibility", "Reproducibility", content);
    }
}
