using System.CommandLine;
using Holdfast.Studies.Package;

namespace Holdfast.Cli.Verbs;

/// <summary>A copy of the study in another place, read back.</summary>
internal sealed class CopyOut : IVerb
{
    public int Place => 92;

    public IReadOnlyList<string> Examples => ["holdfast copy-out /media/stick/pb-study", "holdfast copy-out ../pb-study-copy --study pb-study"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NoSuchThing, "not a study, or the new folder is there already"), (Exit.Storage, "the copy is not whole")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var to = new Argument<string>("to") { Description = "the folder of the copy; it must not be there yet" };
        var command = options.On(new Command("copy-out", "copy the study to another place and read every byte of the copy back") { to });
        command.SetAction(parsed => Tell(StudyCopy.Out(options.Folder(parsed, door), Path.GetFullPath(parsed.GetValue(to)!, door.Folder), door.Clock), door));
        return command;
    }

    /// <summary>Says what came of a copy.</summary>
    /// <param name="copy">The copy.</param>
    /// <param name="door">The world.</param>
    /// <returns>The exit code.</returns>
    internal static int Tell(StudyCopy copy, Door door)
    {
        foreach (var finding in copy.Findings.Concat(copy.ReadBack.Findings))
            door.Error.WriteLine($"{finding.Code} {finding.Sentence}");
        door.Out.WriteLine($"{copy.Folder}: {copy.Sentence}");
        if (copy.FromPlain)
            door.Out.WriteLine("The history came from plain/, which shows the study as it was when that was last refreshed.");
        door.Out.WriteLine(copy.IsGood ? "Every byte was read back: the copy is whole." : "The copy is not whole: see above. Keep what it came from.");
        return copy.IsGood ? Exit.Done : Exit.Storage;
    }
}
