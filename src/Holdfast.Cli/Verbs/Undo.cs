using System.CommandLine;

namespace Holdfast.Cli.Verbs;

/// <summary>Undoes the newest entry.</summary>
internal sealed class Undo : IVerb
{
    public int Place => 42;

    public IReadOnlyList<string> Examples => ["holdfast undo", "holdfast undo --study pb-study"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "there is nothing to undo"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var command = options.On(new Command("undo", "undo the newest entry; undoing is an entry too"));
        command.SetAction(parsed =>
        {
            using var study = options.Write(parsed, door);
            var entry = study.UndoLast(door.Who);
            StudyOptions.Close(study, door);
            door.Out.WriteLine(entry.Change.Says());
            return Exit.Done;
        });
        return command;
    }
}
