using System.CommandLine;

namespace Holdfast.Cli.Verbs;

/// <summary>Brings back what was undone.</summary>
internal sealed class Redo : IVerb
{
    public int Place => 43;

    public IReadOnlyList<string> Examples => ["holdfast redo", "holdfast redo --study pb-study"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "there is nothing to redo"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var command = options.On(new Command("redo", "bring back what was undone last"));
        command.SetAction(parsed =>
        {
            using var study = options.Write(parsed, door);
            var entry = study.RedoLast(door.Who);
            StudyOptions.Close(study, door);
            door.Out.WriteLine(entry.Change.Says());
            return Exit.Done;
        });
        return command;
    }
}
