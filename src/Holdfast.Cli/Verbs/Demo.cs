using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>The worked example: the invented study taken in, defended and written up with no preparation.</summary>
internal sealed class Demo : IVerb
{
    private const string Prefix = "demo/";

    public int Place => 5;

    public IReadOnlyList<string> Examples => ["holdfast demo", "holdfast demo --bench"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.Storage, "the folder cannot be written")];

    public Command Command(Door door)
    {
        var to = new Option<string>("--to") { Description = "where the demo study goes", DefaultValueFactory = _ => "holdfast-demo" };
        var bench = new Option<bool>("--bench") { Description = "show it in the browser instead of reporting it here" };
        var address = new BenchDoor();
        var command = new Command("demo", "the worked example, invented: take in, defend, write up") { to, bench };
        address.On(command);
        command.SetAction(async (parsed, cancel) =>
        {
            var folder = Path.GetFullPath(parsed.GetValue(to)!, door.Folder);
            using var study = Prepared(folder, door);
            if (parsed.GetValue(bench))
            {
                StudyOptions.Close(study, door);
                await address.Open(folder, parsed, door, cancel).ConfigureAwait(false);
                return Exit.Done;
            }

            var dossier = Dossier.Of(study.Study);
            door.Out.WriteLine();
            Defend.Tell(invented: true, dossier.Verdicts, brief: true, door.Out);
            var report = Path.Combine(folder, "report.html");
            SafePath.RefuseLink(report);
            DurableFile.Write(report, System.Text.Encoding.UTF8.GetBytes(Reports.Documents.StudyReport.Html(dossier)), shared: true);
            StudyOptions.Close(study, door);
            door.Out.WriteLine();
            door.Out.WriteLine($"Study   {folder}");
            door.Out.WriteLine($"Report  {report}");
            door.Error.WriteLine($"Next: cd {Path.GetRelativePath(door.Folder, folder)}; holdfast defend; holdfast trail q:ISO-20-1; holdfast strike ISO-20-1 --because \"…\"");
            return Exit.Done;
        });
        return command;
    }

    /// <summary>The demo study in a folder: begun and taken in where it is new, opened where it is there already.</summary>
    /// <param name="folder">Where.</param>
    /// <param name="door">The world.</param>
    internal static StudyFolder Prepared(string folder, Door door)
    {
        if (File.Exists(Path.Combine(folder, "study.db")))
        {
            door.Out.WriteLine("The demo study is there already and is opened as it stands.");
            return StudyFolder.Open(folder, door.Clock);
        }

        var begun = new StudyBegun("nickel on EHA-2 (invented)", "Ni", Invented: true)
        {
            Details = new StudyBegun("", null, false).Details
                .SetItem("material", "EHA-2, europium-doped hydroxyapatite (invented)")
                .SetItem("author", "invented demo student"),
        };
        var study = StudyFolder.Begin(folder, "invented demo student", door.Clock, begun);
        var files = Files();
        var understood = Take.Understand(study.Study, files, Answers.None);
        var taken = Take.Keep(study, understood, new TakeOptions(), "invented demo student");
        TakeIn.Tell(taken, rehearsing: false, follows: null, typed: [], door);
        if (taken.Entry is null)
            throw new InvalidOperationException("The demo study was not taken in whole.");
        return study;
    }

    /// <summary>The invented study alone: made in a folder that is gone afterwards.</summary>
    /// <param name="door">The world.</param>
    internal static Study Example(Door door)
    {
        var root = Directory.CreateTempSubdirectory("holdfast-example-").FullName;
        try
        {
            using var study = Prepared(Path.Combine(root, "example"), door with { Out = TextWriter.Null, Error = TextWriter.Null });
            return study.Study;
        }
        finally
        {
            foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
                File.SetAttributes(file, FileAttributes.Normal);
            Directory.Delete(root, recursive: true);
        }
    }

    private static List<IncomingFile> Files()
    {
        var assembly = typeof(Demo).Assembly;
        var files = new List<IncomingFile>();
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            files.Add(new IncomingFile(name[Prefix.Length..], bytes.ToArray()));
        }

        return files;
    }
}
