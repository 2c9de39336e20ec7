using System.Globalization;
using Holdfast.Claims;
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
        string[] sources = [.. dossier.Evidence.Kinetics.Concat(dossier.Evidence.Isotherms).Select(f => f.Best?.Card).OfType<Fitting.ModelCard>().DistinctBy(c => c.Name, StringComparer.Ordinal)
            .OrderBy(c => c.Name, StringComparer.Ordinal).Select(c => $"{c.Name}: {c.Source}.")];
        if (sources.Length > 0)
            content.AddRange([Prose.Heading("Sources of the curves named"), Prose.List(sources)]);
        return new("availability", "Data availability", content);
    }
}
