using System.CommandLine;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Workbooks;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Figures, tables and text.</summary>
internal sealed class Write : IVerb
{
    private const string Chapter = "chapter";
    private const string Record = "record";

    public int Place => 80;

    public IReadOnlyList<string> Examples => ["holdfast write --docx chapter.docx --xlsx workbook.xlsx", "holdfast write --document record --html record.html --csv tables --figures svg,pdf --width 85"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "a file is there already"), (Exit.Storage, "the folder cannot be written")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var which = new Option<string>("--document") { Description = "chapter, what is handed in, or record, everything behind it", DefaultValueFactory = _ => Chapter };
        which.AcceptOnlyFromAmong(Chapter, Record);
        var html = new Option<string?>("--html") { Description = "the document as one self-contained page" };
        var docx = new Option<string?>("--docx") { Description = "the document for a word processor" };
        var pdf = new Option<string?>("--pdf") { Description = "the document as PDF, to read and print" };
        var latex = new Option<string?>("--latex") { Description = "the document as LaTeX with its figures and sources, into this folder" };
        var xlsx = new Option<string?>("--xlsx") { Description = "a workbook in which q can be followed cell by cell, and every table" };
        var csv = new Option<string?>("--csv") { Description = "every table as CSV into this folder" };
        var figures = new Option<string?>("--figures") { Description = "every figure as svg, png or pdf (several with commas)" };
        var width = new Option<string>("--width") { Description = "85 or 174 mm, or both with a comma", DefaultValueFactory = _ => "85" };
        var to = new Option<string>("--to") { Description = "folder for the figures", DefaultValueFactory = _ => "figures" };
        var replace = new Option<bool>("--replace") { Description = "write over files that are there already" };
        var command = options.On(new Command("write", "write the chapter or the record, workbook, tables and figures") { which, html, docx, pdf, latex, xlsx, csv, figures, width, to, replace });
        command.SetAction(parsed =>
        {
            var (page, words, printed, typeset, book, tables, kinds) = (parsed.GetValue(html), parsed.GetValue(docx), parsed.GetValue(pdf), parsed.GetValue(latex), parsed.GetValue(xlsx), parsed.GetValue(csv), parsed.GetValue(figures));
            if (page is null && words is null && printed is null && typeset is null && book is null && tables is null && kinds is null)
            {
                door.Error.WriteLine("Say what to write: --docx chapter.docx, --pdf chapter.pdf, --html chapter.html, --latex tex, --xlsx workbook.xlsx, --csv tables, --figures svg.");
                return Exit.NotUnderstood;
            }

            var formats = (kinds ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            var widths = parsed.GetValue(width)!.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (formats.Except(["svg", "png", "pdf"], StringComparer.Ordinal).Any() || widths.Except(["85", "174"], StringComparer.Ordinal).Any())
            {
                door.Error.WriteLine("Figures are written as svg, png or pdf, 85 or 174 mm wide.");
                return Exit.NotUnderstood;
            }

            using var study = options.Read(parsed, door);
            var dossier = Dossier.Of(study.Study);
            var files = new List<(string Path, byte[] Bytes)>();
            if (page is not null || words is not null || printed is not null || typeset is not null)
            {
                var document = parsed.GetValue(which) == Record ? StudyReport.Of(dossier) : StudyChapter.Of(dossier);
                if (page is not null)
                    files.Add((Path.GetFullPath(page, door.Folder), System.Text.Encoding.UTF8.GetBytes(document.Html())));
                if (words is not null)
                    files.Add((Path.GetFullPath(words, door.Folder), document.Docx()));
                if (printed is not null)
                    files.Add((Path.GetFullPath(printed, door.Folder), document.Pdf()));
                if (typeset is not null)
                    files.AddRange(document.Latex().Select(f => (Path.Combine(Path.GetFullPath(typeset, door.Folder), f.Name.Replace('/', Path.DirectorySeparatorChar)), f.Bytes.ToArray())));
            }

            if (book is not null)
                files.Add((Path.GetFullPath(book, door.Folder), StudyWorkbook.Of(dossier)));
            if (tables is not null)
            {
                foreach (var table in ReportTables.All(dossier))
                    files.Add((Path.Combine(Path.GetFullPath(tables, door.Folder), table.Id + ".csv"), System.Text.Encoding.UTF8.GetBytes(TableCsv.Of(table))));
            }

            var folder = Path.GetFullPath(parsed.GetValue(to)!, door.Folder);
            var undrawn = FigureFiles.Write(
                dossier,
                [.. formats.Select(f => Enum.Parse<FigureFileKind>(f, ignoreCase: true))],
                [.. widths.Select(w => double.Parse(w, CultureInfo.InvariantCulture))],
                (name, bytes) => files.Add((Path.Combine(folder, name), bytes)));
            foreach (var fallen in StudyFigure.Fallen(dossier).Concat(undrawn))
                options.Remark(parsed, door, $"{fallen.Code} {fallen.Sentence}");
            return Keep(files, parsed.GetValue(replace), door);
        });
        return command;
    }

    private static int Keep(List<(string Path, byte[] Bytes)> files, bool replace, Door door)
    {
        var there = replace ? [] : files.Where(f => Path.Exists(f.Path)).Select(f => Path.GetFileName(f.Path)).ToArray();
        if (there.Length > 0)
        {
            door.Error.WriteLine($"{string.Join(", ", there.Take(4))}{(there.Length > 4 ? ", …" : "")} is there already; nothing was written. Add --replace, or choose another name.");
            return Exit.NeedsDecision;
        }

        try
        {
            foreach (var (path, bytes) in files)
            {
                SafePath.RefuseLinks(path, door.Folder);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                DurableFile.Write(path, bytes, shared: true);
                door.Out.WriteLine(Path.GetRelativePath(door.Folder, path));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            door.Error.WriteLine($"{Studies.Codes.ReadOnlyFolder} It could not be written: {e.Message} What is listed above is complete; the rest is not there.");
            return Exit.Storage;
        }

        return Exit.Done;
    }
}
