using System.CommandLine;
using System.Globalization;
using System.Security.Cryptography;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.HandOver;
using Holdfast.Reports.Reviews;
using Holdfast.Studies;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>A package that explains itself: for a repository, and for whoever goes on.</summary>
internal sealed class HandOver : IVerb
{
    private const string Review = "review";

    public int Place => 88;

    public IReadOnlyList<string> Examples => ["holdfast hand-over pb-study.zip", "holdfast hand-over review.html --for review --since \"sent to supervisor\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "a file or folder is there already, or it is too large for an archive"), (Exit.NoSuchThing, "no such moment"), (Exit.Storage, "the package is not whole, or cannot be written")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var to = new Argument<string>("to") { Description = "the archive, NAME.zip, or a folder; it must not be there yet" };
        var purpose = new Option<string>("--for") { Description = "package, for a repository and whoever goes on, or review, one page to remark on that works without a network", DefaultValueFactory = _ => "package" };
        purpose.AcceptOnlyFromAmong("package", Review);
        var since = new Option<string?>("--since") { Description = "for a review: what the reader last had before her, a moment of the Daybook or the number of an entry; the entry of her last remarks when left out" };
        var bare = new Option<bool>("--bare") { Description = "without chapter, record, workbook and figures, which are made from the rest" };
        var command = options.On(new Command("hand-over", "hand the study over: files as taken in, tables with their units, open formats, metadata, what is left to do; or a page to remark on") { to, purpose, since, bare });
        command.SetAction(parsed =>
        {
            var path = Path.GetFullPath(parsed.GetValue(to)!, door.Folder);
            if (Path.Exists(path))
            {
                door.Error.WriteLine($"{Path.GetFileName(path)} is there already; nothing was written. Choose another name.");
                return Exit.NeedsDecision;
            }

            using var study = options.Read(parsed, door);
            if (parsed.GetValue(purpose) == Review)
                return ForReview(path, study, parsed.GetValue(since), door);
            var files = HandOverPackage.Of(study.Daybook, Dossier.Of(study.Study), study.ReadOriginal, !parsed.GetValue(bare));
            if (path.EndsWith(".zip", StringComparison.OrdinalIgnoreCase))
                Archive(path, files, door);
            else
                Folder(path, files, door);
            foreach (var lacking in Lacking(study.Study))
                options.Remark(parsed, door, lacking);
            return Told(path, files.Count, door);
        });
        return command;
    }

    private static int ForReview(string path, StudyFolder study, string? since, Door door)
    {
        var from = since is null ? null : Since.Moment(study.Daybook, since);
        if (since is not null && from is null)
            return Since.NoMoment(since, door);
        var page = ReviewPage.Of(study.Daybook, Dossier.Of(study.Study), from?.Number);
        SafePath.RefuseLinks(path, door.Folder);
        DurableFile.Write(path, System.Text.Encoding.UTF8.GetBytes(page), shared: true);
        door.Out.WriteLine($"{Path.GetRelativePath(door.Folder, path)}: entry {Ordinal(study)}. Send it; the reader needs no Holdfast and no network. The file that comes back is taken in: holdfast take remarks-….json, then holdfast review.");
        return Exit.Done;

        static string Ordinal(StudyFolder study) => study.Daybook.Version.ToString(CultureInfo.InvariantCulture);
    }

    private static void Archive(string path, IReadOnlyList<DocumentFile> files, Door door)
    {
        var archive = HandOverPackage.Zip(files);
        SafePath.RefuseLinks(path, door.Folder);
        DurableFile.Write(path, archive, shared: true);
        door.Out.WriteLine($"{Convert.ToHexStringLower(SHA256.HashData(archive))}  {Path.GetFileName(path)}");
    }

    private static void Folder(string path, IReadOnlyList<DocumentFile> files, Door door)
    {
        SafePath.RefuseLinks(path, door.Folder);
        foreach (var file in files)
        {
            var target = Path.Combine(path, file.Name.Replace('/', Path.DirectorySeparatorChar));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            DurableFile.Write(target, file.Bytes.Span, shared: true);
        }
    }

    // No package is called whole before every byte of it was read back.
    private static int Told(string path, int files, Door door)
    {
        var package = HandedOver.Open(path);
        var findings = package.Check();
        foreach (var finding in findings)
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Path.GetRelativePath(door.Folder, path)}: {files} files, fingerprint {package.History().Fingerprint}"));
        door.Out.WriteLine(findings.IsEmpty ? "Every byte was read back: the package is whole. README.md in it tells what is where, NEXT.md what is left to do." : "The package is not whole: see above.");
        return findings.IsEmpty ? Exit.Done : Exit.Storage;
    }

    private static IEnumerable<string> Lacking(Study study)
    {
        if (study.Details.GetValueOrDefault("licence") is not { Length: > 0 })
            yield return "No licence is chosen, so nobody may use the data: holdfast describe licence=CC-BY-4.0, after asking your institute.";
        if (study.Details.GetValueOrDefault("author") is not { Length: > 0 })
            yield return "The author is not recorded; the package names who began the study: holdfast describe author=\"…\".";
        if (study.Details.GetValueOrDefault("shelf") is not { Length: > 0 })
            yield return "Where samples and powders are kept is not recorded: holdfast describe shelf=\"…\".";
    }
}
