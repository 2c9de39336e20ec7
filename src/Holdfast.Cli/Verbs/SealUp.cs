using System.CommandLine;
using System.Globalization;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Locks the study and what is handed in with it.</summary>
internal sealed class SealUp : IVerb
{
    public int Place => 84;

    public IReadOnlyList<string> Examples => ["holdfast seal chapter.docx record.pdf --note submitted", "holdfast seal chapter.pdf --note submitted --qr seal.svg"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "a document that cannot be read, no note, or a file is there already"), (Exit.ChangedOrSealed, "changed elsewhere, or sealed already"), (Exit.Storage, "storage")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var documents = new Argument<string[]>("documents") { Description = "what is handed in; each is kept byte for byte with the study", Arity = ArgumentArity.ZeroOrMore };
        var note = new Option<string>("--note") { Description = "why: submitted, accepted" };
        var qr = new Option<string?>("--qr") { Description = "the line of the seal as a QR code into this SVG file" };
        var command = options.On(new Command("seal", "lock the study and its documents; later changes are amendments that say so") { documents, note, qr });
        command.SetAction(parsed =>
        {
            if (string.IsNullOrWhiteSpace(parsed.GetValue(note)))
            {
                door.Error.WriteLine("Say why it is sealed: --note submitted. A reader will look for it. Nothing was sealed.");
                return Exit.NeedsDecision;
            }

            string[] paths = [.. (parsed.GetValue(documents) ?? []).Select(d => Path.GetFullPath(d, door.Folder))];
            if (paths.Select(Path.GetFileName).GroupBy(n => n, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            {
                door.Error.WriteLine($"Two documents are named {twice.Key}. A reader tells them apart by their names: rename one. Nothing was sealed.");
                return Exit.NeedsDecision;
            }

            var picture = parsed.GetValue(qr) is { } to ? Path.GetFullPath(to, door.Folder) : null;
            if (picture is not null && Path.Exists(picture))
            {
                door.Error.WriteLine($"{Path.GetFileName(picture)} is there already. Choose another name. Nothing was sealed.");
                return Exit.NeedsDecision;
            }

            (string, byte[])[] read = [.. paths.Select(p => (Path.GetFileName(p), PlainFile.Read(p, LargestDocument)))];
            using var study = options.Write(parsed, door);
            var seal = Seal.Put(study, door.Who, parsed.GetValue(note)!, new ReportOptions().MadeBy, read);
            StudyOptions.Close(study, door);
            Tell(seal, door);
            if (picture is not null)
            {
                SafePath.RefuseLinks(picture, door.Folder);
                DurableFile.Write(picture, System.Text.Encoding.UTF8.GetBytes(SquareCode.Of(seal.Line).Svg(seal.Line)), shared: true);
            }

            return Exit.Done;
        });
        return command;
    }

    /// <summary>As large as a file that is taken in may be.</summary>
    private const long LargestDocument = 512L << 20;

    private static void Tell(Seal seal, Door door)
    {
        door.Out.WriteLine(seal.Line);
        if (door.IsTerminal)
        {
            foreach (var line in SquareCode.Of(seal.Line).Lines)
                door.Out.WriteLine(line);
        }

        door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Sealed by entry {seal.Entry}: {seal.Note}. Print the line and keep it apart from the study: it tells whether one byte was changed since."));
        if (!seal.Documents.IsEmpty)
        {
            door.Out.WriteLine("Handed in; save these lines as SHA256SUMS, and sha256sum -c SHA256SUMS compares without Holdfast:");
            door.Out.Write(seal.Checksums);
        }
    }
}
