using System.CommandLine;
using Holdfast.Studies.Acts;

namespace Holdfast.Cli.Verbs;

/// <summary>Undoes the newest entry.</summary>
internal sealed class Undo : IVerb
{
    public int Place => 42;

    public IReadOnlyList<string> Examples => ["holdfast undo", "holdfast undo --yes"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "there is nothing to undo, or a large import is asked about"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var yes = new Option<bool>("--yes") { Description = $"take an import of more than {TakenBack.WithoutAsking} samples or readings back unasked; a script is never asked" };
        var command = options.On(new Command("undo", "undo the newest entry; undoing is an entry too") { yes });
        command.SetAction(parsed =>
        {
            using var study = options.Write(parsed, door);
            var next = study.Daybook.Undo.Next;
            if (door.IsTerminal && !parsed.GetValue(yes) && TakenBack.IsLarge(next))
            {
                door.Error.WriteLine($"This takes back {TakenBack.Words(next!)} of entry {next!.Number.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {next.Change.Says()}. Nothing is undone yet: holdfast undo --yes does it.");
                return Exit.NeedsDecision;
            }

            var entry = study.UndoLast(door.Who);
            StudyOptions.Close(study, door);
            door.Out.WriteLine(entry.Change.Says() + (next is not null && TakenBack.Words(next) is { Length: > 0 } words ? $" ({words})" : ""));
            return Exit.Done;
        });
        return command;
    }
}
