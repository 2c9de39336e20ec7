using System.Globalization;
using System.Text;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.HandOver;

/// <summary>README.md of a package, for a reader who has no Holdfast and knows no one to ask.</summary>
internal static class PackageReadme
{
    /// <summary>The text.</summary>
    /// <param name="about">What is said of the package.</param>
    /// <param name="files">Every file before this one.</param>
    public static string Of(HandOverWords about, IReadOnlyCollection<HandOverFile> files)
    {
        var study = about.Study;
        var text = new StringBuilder();
        Line(text, $"# {about.Title}");
        Line(text);
        if (study.Invented)
        {
            Line(text, "**Invented demo data: no number here is a measurement.**");
            Line(text);
        }

        Line(text, about.Abstract);
        Line(text);
        Line(text, $"- Author: {about.Author}{(about.Orcid is { } orcid ? $", ORCID {orcid}" : "")}");
        Line(text, $"- Begun {Day(about.When.From)}, last entry {Day(about.When.To)}, number {InWords.Plain(about.Daybook.Version)}");
        Line(text, $"- Licence: {(about.Licence is { } licence ? $"{licence.Title} ({licence.Id}): {licence.Says}. {licence.Address}" : "none was chosen, so nobody but the author may use the data")}");
        Line(text, $"- Fingerprint of the history: {about.Daybook.Fingerprint}");
        Line(text, $"- Made by {about.MadeBy}; the same study gives the same bytes.");
        Line(text);
        Line(text, "## What is here");
        Line(text);
        Line(text, "| folder or file | what it is |");
        Line(text, "| --- | --- |");
        foreach (var (name, says) in Places(files))
            Line(text, $"| `{name}` | {says} |");
        Line(text);
        Line(text, "Each column of each table is described in `datapackage.json`, with its unit; the same unit stands in the column's heading. Numbers in tables have every digit; a column that begins with `u_` is the uncertainty of the one before it. A cell that is empty is missing, never zero.");
        Line(text, "A text that a spreadsheet would run as a formula has an apostrophe in front.");
        Line(text);
        if (about.Originals.Count > 0)
        {
            Line(text, "## Files as they were taken in");
            Line(text);
            Line(text, "| file | kept as | SHA-256 |");
            Line(text, "| --- | --- | --- |");
            foreach (var file in about.Daybook.Files)
                Line(text, $"| {Escaped(file.FileName)} | `originals/{about.Originals[file.Sha256]}` | {file.Sha256} |");
            Line(text);
        }

        Line(text, "## Is it whole?");
        Line(text);
        Line(text, "`sha256sum -c SHA256SUMS` in this folder compares every file without Holdfast. `holdfast inspect --study THIS-FOLDER-OR-ARCHIVE` does the same, and follows the history entry by entry.");
        Line(text);
        Line(text, "## Going on with it");
        Line(text);
        Line(text, "`holdfast copy-in THIS-FOLDER-OR-ARCHIVE NEW-FOLDER` makes the study anew, with the same history and fingerprint. `NEXT.md` tells what is left to do.");
        return text.ToString();
    }

    private static IEnumerable<(string Name, string Says)> Places(IReadOnlyCollection<HandOverFile> files)
    {
        yield return ("NEXT.md", "for whoever goes on: open claims, what would settle them, what is on the shelf");
        yield return ("originals/", $"{InWords.Count(files.Count(f => f.Kind == "raw"), "file")} as taken in, byte for byte");
        yield return ("plain/", "what was recorded of samples, readings and measurements, and `history.jsonl`, every entry ever made");
        yield return ("tables/", "what follows from it: quantities with uncertainties, fits, verdicts");
        foreach (var (folder, says) in new[] { ("characterisation", "measurements of the powder in open formats: AIF, JCAMP-DX, CIF"), ("documents", "chapter, record and workbook"), ("figures", "every figure as SVG") })
        {
            if (files.Any(f => f.Name.StartsWith(folder + "/", StringComparison.Ordinal)))
                yield return (folder + "/", says);
        }

        yield return ("datapackage.json", "every file and column, for programs (Data Package 2.0)");
        yield return ("ro-crate-metadata.json", "the same with people and provenance (RO-Crate 1.2)");
        yield return ("datacite.json, CITATION.cff", "metadata for a repository, and how to cite");
        yield return ("SHA256SUMS", "fingerprint of every file");
    }

    private static string Escaped(string name) => name.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');

    private static string Day(DateTimeOffset when) => when.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
