using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Documents.Sources;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>Where the data are, what recomputes the numbers, and the sources of the curves.</summary>
internal static class AvailabilitySection
{
    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="options">What the chapter says of itself.</param>
    public static Section Of(Dossier dossier, ReportOptions options)
    {
        var study = dossier.Evidence.Study;
        var content = new List<Node>
        {
            Prose.Paragraph(string.Create(CultureInfo.InvariantCulture,
                $"Every number is recomputed by {options.MadeBy} from {InWords.Count(study.Originals.Length, "file")}, kept as taken in, and the daybook up to entry {study.Version}")
                + $"{(study.Fingerprint.Length == 0 ? "" : $" (fingerprint {study.Fingerprint})")}. The record lists the files with their SHA-256, every vessel, and the trail from each number to the cell it was read from; the workbook lets q be followed cell by cell."),
        };
        if (study.SealedBy is { } seal)
            content.Add(Prose.Paragraph(string.Create(CultureInfo.InvariantCulture, $"The study was sealed by entry {seal}") + Opening.Amended(study) + "."));
        content.AddRange(SourceList.Of(dossier, everyCurve: false));
        return new("availability", "Data availability", content);
    }
}
