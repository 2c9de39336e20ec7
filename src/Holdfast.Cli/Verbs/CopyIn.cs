using System.CommandLine;
using Holdfast.Studies.Package;

namespace Holdfast.Cli.Verbs;

/// <summary>A study returned from a copy or from its plain form, read back.</summary>
internal sealed class CopyIn : IVerb
{
    public int Place => 93;

    public IReadOnlyList<string> Examples => ["holdfast copy-in /media/stick/pb-study pb-study-again", "holdfast copy-in pb-study.zip pb-study-again"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "what it comes from cannot be read"), (Exit.NoSuchThing, "no study there, or the new folder is there already"), (Exit.Storage, "damaged, or the copy is not whole")];

    public Command Command(Door door)
    {
        var from = new Argument<string>("from") { Description = "a copy of a study, its folder plain, or a package, packed or not" };
        var to = new Argument<string>("to") { Description = "the new folder; it must not be there yet" };
        var command = new Command("copy-in", "return a study from a copy, from plain/ or from a package into a new folder, and read every byte back") { from, to };
        command.SetAction(parsed => CopyOut.Tell(
            StudyCopy.In(Path.GetFullPath(parsed.GetValue(from)!, door.Folder), Path.GetFullPath(parsed.GetValue(to)!, door.Folder), door.Clock), door));
        return command;
    }
}
