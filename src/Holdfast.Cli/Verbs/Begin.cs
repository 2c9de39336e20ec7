using System.CommandLine;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>A new study folder.</summary>
internal sealed class Begin : IVerb
{
    public int Place => 10;

    public IReadOnlyList<string> Examples => ["holdfast begin pb-study --analyte Pb", "holdfast begin ni-thesis --analyte Ni --author \"A. Student\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "there is a study already"), (Exit.Storage, "the folder cannot be written")];

    public Command Command(Door door)
    {
        var name = new Argument<string>("name") { Description = "the study's folder, made new" };
        var analyte = new Option<string>("--analyte") { Description = "metal that is taken up, by symbol or name: Pb, lead" };
        var author = new Option<string>("--author") { Description = "your name as the Daybook shall show it" };
        var command = new Command("begin", "begin a study in a new folder") { name, analyte, author };
        command.SetAction(parsed =>
        {
            var metal = StudyDetail.Named("metal")!.Read(parsed.GetValue(analyte) ?? "", out var trouble);
            if (metal is null)
            {
                door.Error.WriteLine(trouble);
                return Exit.NotUnderstood;
            }

            var folder = Path.GetFullPath(parsed.GetValue(name)!, door.Folder);
            var title = Path.GetFileName(folder.TrimEnd(Path.DirectorySeparatorChar));
            using var study = StudyFolder.Begin(
                folder, parsed.GetValue(author) ?? door.Who, door.Clock, new StudyBegun(title, metal.Length == 0 ? null : metal, Invented: false));
            StudyOptions.Close(study, door);
            door.Out.WriteLine($"Study {title} begun.");
            door.Error.WriteLine($"Next: cd {parsed.GetValue(name)}, then holdfast take your-files. holdfast take -h says what they may hold.");
            return Exit.Done;
        });
        return command;
    }
}
