using System.CommandLine;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>Takes a strike back.</summary>
internal sealed class Restore : IVerb
{
    public int Place => 41;

    public IReadOnlyList<string> Examples => ["holdfast restore V-11", "holdfast restore V-11 --because \"the leak was in V-12\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "it is not struck"), (Exit.NoSuchThing, "no such sample, reading or measurement"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var target = new Argument<string>("target") { Description = "sample code, or id of a reading or measurement" };
        var because = new Option<string>("--because") { Description = "why" };
        var command = options.On(new Command("restore", "take a strike back; both entries stay in the Daybook") { target, because });
        command.SetAction(parsed =>
        {
            using var study = options.Write(parsed, door);
            study.Append(study.Daybook.Version, door.Who, new Restored(parsed.GetValue(target)!, parsed.GetValue(because)));
            StudyOptions.Close(study, door);
            door.Out.WriteLine($"{parsed.GetValue(target)} restored.");
            return Exit.Done;
        });
        return command;
    }
}
