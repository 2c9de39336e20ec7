using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Workbooks;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Package;

namespace Holdfast.Reports.HandOver;

/// <summary>
/// Everything of a study for a repository or for whoever goes on: the files as taken in, the plain form, tables with their descriptions, figures, documents, the measurements of
/// the powder in open formats, and what each is. It explains itself without Holdfast, and a study made from it hands over the same bytes again.
/// </summary>
public static class HandOverPackage
{
    private static readonly Lazy<ImmutableArray<IMeasurementFile>> Formats = new(() => [.. Catalogue.Of<IMeasurementFile>().OrderBy(f => f.Technique, StringComparer.Ordinal)]);

    /// <summary>Every file, in the order of their names.</summary>
    /// <param name="daybook">The study's history.</param>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="original">Bytes of a file that was taken in, by its fingerprint.</param>
    /// <param name="withDocuments">False to leave out chapter, record, workbook and figures, which are made from the rest.</param>
    /// <exception cref="StudyException">A file that was taken in is missing or damaged (HF-432).</exception>
    public static IReadOnlyList<DocumentFile> Of(Daybook daybook, Dossier dossier, Func<string, byte[]> original, bool withDocuments = true)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        ArgumentNullException.ThrowIfNull(dossier);
        ArgumentNullException.ThrowIfNull(original);
        var originals = OriginalName.All(daybook.Files);
        var tables = ReportTables.All(dossier);
        List<HandOverFile> files =
        [
            .. daybook.Files.Select(f => new HandOverFile(HandedOver.Originals + originals[f.Sha256], original(f.Sha256), "file as it was taken in or handed in, untouched", "raw")),
            .. PlainPackage.Files(daybook).Select(f => new HandOverFile(HandedOver.Plain + f.Key, f.Value, "what was recorded, and the whole history", "plain")),
            .. tables.Select(t => new HandOverFile($"tables/{t.Id}.csv", Encoding.UTF8.GetBytes(TableCsv.Of(t)), t.Caption.Plain, "table")),
            .. Measured(dossier.Evidence.Study),
        ];
        if (withDocuments)
            files.AddRange(Documents(dossier));
        var about = new HandOverWords(daybook, dossier, originals);
        files.AddRange(
        [
            new("README.md", Encoding.UTF8.GetBytes(PackageReadme.Of(about, files)), "what this is, for people", "description"),
            new("NEXT.md", Encoding.UTF8.GetBytes(NextStudent.Of(about)), "for whoever goes on: what is left, where it is, and what would settle it", "description"),
            new("CITATION.cff", Encoding.UTF8.GetBytes(CitationFile.Of(about)), "how to cite it (Citation File Format 1.2.0)", "description"),
            new("datacite.json", DataCiteFile.Of(about, files), "metadata for a repository (DataCite 4)", "description"),
        ]);
        if (about.Licence is { } licence)
            files.Add(new("LICENSE.txt", Encoding.UTF8.GetBytes($"{licence.Title}\nSPDX-License-Identifier: {licence.Id}\n{licence.Address}\n"), "licence of the data", "description"));
        files.Add(new(PackageDescriptor.FileName, DataPackageFile.Of(about, tables, files), "description of every file (Data Package 2.0)", "description"));
        files.Add(new(CrateFile.FileName, CrateFile.Of(about, files), "description of every file and of where it comes from (RO-Crate 1.2)", "description"));
        files.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return [.. files.Select(f => new DocumentFile(f.Name, f.Bytes)), new DocumentFile(HandedOver.Sums, Sums(files))];
    }

    /// <summary>The files as one archive: the same study gives the same bytes.</summary>
    /// <param name="files">What <see cref="Of"/> gave.</param>
    /// <exception cref="StudyException">More than an archive may hold (HF-407).</exception>
    public static byte[] Zip(IReadOnlyList<DocumentFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        if (files.Sum(f => (long)f.Bytes.Length) > Limits.Unpacked || files.Count > Limits.ArchiveEntries)
        {
            throw new StudyException(Codes.LimitExceeded, string.Create(CultureInfo.InvariantCulture,
                $"The package would hold more than {Limits.Unpacked >> 20} MB or {Limits.ArchiveEntries} files, which an archive may not, so none is written. Hand it over as a folder: give a name without .zip."));
        }

        return Packed.Of(files.OrderBy(f => f.Name, StringComparer.Ordinal));
    }

    private static IEnumerable<HandOverFile> Measured(Study study)
    {
        foreach (var measurement in study.Measurements)
        {
            foreach (var format in Formats.Value.Where(f => f.Technique == measurement.Technique))
            {
                // The plain form and the file as taken in are there in any case: what falls here takes nothing away.
                if (Room.Of($"{measurement.Id} as {format.Format}", () => format.Of(measurement, study) is { } one ? new[] { one } : []).Value is [var file])
                    yield return new("characterisation/" + file.Name, file.Bytes.ToArray(), $"{measurement.Id}, {measurement.Sample}, as {format.Format}", "characterisation");
            }
        }
    }

    private static IEnumerable<HandOverFile> Documents(Dossier dossier)
    {
        var (chapter, record) = (StudyChapter.Of(dossier), StudyReport.Of(dossier));
        yield return new("documents/chapter.docx", chapter.Docx(), "the chapter, for a word processor", "document");
        yield return new("documents/chapter.pdf", chapter.Pdf(), "the chapter, to read and print", "document");
        yield return new("documents/record.html", Encoding.UTF8.GetBytes(record.Html()), "the record: every claim with its defence, every vessel, curve and trail", "document");
        yield return new("documents/workbook.xlsx", StudyWorkbook.Of(dossier), "q cell by cell from the readings, and every table", "document");
        var figures = new List<HandOverFile>();
        FigureFiles.Write(dossier, [FigureFileKind.Svg], [85], (name, bytes) => figures.Add(new("figures/" + name, bytes, "figure, 85 mm wide", "figure")));
        foreach (var figure in figures)
            yield return figure;
    }

    // In the form that sha256sum -c reads.
    private static byte[] Sums(IEnumerable<HandOverFile> files)
        => Encoding.UTF8.GetBytes(string.Concat(files.Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Bytes))}  {f.Name}\n")));
}
