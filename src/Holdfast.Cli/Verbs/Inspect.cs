using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Looks a study folder over for damage.</summary>
internal sealed class Inspect : IVerb
{
    public int Place => 90;

    public IReadOnlyList<string> Examples => ["holdfast inspect", "holdfast inspect --every-byte --document chapter.docx --seal \"holdfast-seal/1 entry=…\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "not a study"), (Exit.Storage, "damage was found, or something is not as it was sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var everyByte = new Option<bool>("--every-byte") { Description = "re-read every original and compare its fingerprint" };
        var line = new Option<string?>("--seal") { Description = "the line of the seal, from paper: is the history still the one that was sealed?" };
        var documents = new Option<string[]>("--document") { Description = "a document to hold against the seal (may be given again)", AllowMultipleArgumentsPerToken = true };
        var command = options.On(new Command("inspect", "check the study folder, or a package, for damage; nothing is repaired in place") { everyByte, line, documents });
        command.SetAction(parsed =>
        {
            if (HandedOver.Is(options.Folder(parsed, door)))
                return Package(options.Folder(parsed, door), parsed.GetValue(line), parsed.GetValue(documents) ?? [], door);
            var found = Inspection.Of(options.Folder(parsed, door), parsed.GetValue(everyByte));
            foreach (var finding in found.Findings)
                door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{found.Entries} entries, {found.Samples} samples, {found.Readings} readings, {found.Strikes} strikes, {found.Originals} originals"));
            door.Out.WriteLine($"fingerprint {found.Fingerprint}");
            var asSealed = Sealing(StudyFolder.Salvage(options.Folder(parsed, door)).Daybook, parsed.GetValue(line), parsed.GetValue(documents) ?? [], door);
            if (found.IsSound && !asSealed)
            {
                door.Out.WriteLine("Not as it was sealed: see above.");
                return Exit.Storage;
            }

            door.Out.WriteLine(found.IsSound ? "No damage found." : "Damage found: see above. Compare with a copy before relying on this study.");
            return found.IsSound ? Exit.Done : Exit.Storage;
        });
        return command;
    }

    private static int Package(string path, string? line, string[] documents, Door door)
    {
        var package = HandedOver.Open(path);
        var findings = package.Check();
        foreach (var finding in package.PackedElsewhere is { } elsewhere ? findings.Add(elsewhere) : findings)
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        var daybook = package.History();
        var study = daybook.Study;
        door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"package of {daybook.Version} entries, {study.Samples.Length} samples, {study.Readings.Length} readings, {study.Strikes.Length} strikes, {daybook.Files.Count()} originals; {package.Names.Count()} files"));
        door.Out.WriteLine($"fingerprint {daybook.Fingerprint}");
        if (File.Exists(path))
            door.Out.WriteLine($"sha256 of the archive {Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(PlainFile.Read(path, long.MaxValue)))}");
        var asSealed = Sealing(daybook, line, documents, door);
        door.Out.WriteLine(!findings.IsEmpty ? "Damage found: see above. Ask for the package once more." : asSealed ? "No damage found: every file is as it was handed over." : "Not as it was sealed: see above.");
        return findings.IsEmpty && asSealed ? Exit.Done : Exit.Storage;
    }

    // True where nothing speaks against the seal.
    private static bool Sealing(Daybook daybook, string? line, string[] documents, Door door)
    {
        var findings = new List<Finding>();
        if (line is not null && Seal.Differs(daybook, line) is { } rewritten)
            findings.Add(rewritten);
        if (daybook.Version == 0 || Seal.Of(daybook) is not { } seal)
        {
            if (documents.Length > 0)
                findings.Add(Finding.Of(Codes.Damage, Weight.Stop, "The study is not sealed, so no document can be held against a seal."));
        }
        else
        {
            door.Out.WriteLine(seal.Line);
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"sealed by entry {seal.Entry}, {seal.Who}: {seal.Note}; {InWords.Count(seal.Documents.Length, "document")}; {InWords.Count(daybook.Study.Amendments.Length, "amendment")} since"));
            foreach (var amendment in daybook.Study.Amendments)
                door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"amended, entry {amendment.Entry}, {amendment.When:yyyy-MM-dd}, {amendment.Who}: {amendment.Reason}"));
            foreach (var path in documents.Select(d => Path.GetFullPath(d, door.Folder)))
            {
                var name = Path.GetFileName(path);
                if (seal.Differs(name, PlainFile.Read(path, long.MaxValue)) is { } changed)
                    findings.Add(changed);
                else
                    door.Out.WriteLine($"{name} is as it was sealed");
            }
        }

        foreach (var finding in findings)
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        return findings.Count == 0;
    }
}
