using System.CommandLine;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>A line through a sample or reading.</summary>
internal sealed class Strike : IVerb
{
    public int Place => 40;

    public IReadOnlyList<string> Examples => ["holdfast strike V-11 --because \"stopper leaked\"", "holdfast strike R-0142 --because \"bubble in the capillary\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "no reason, or struck already"), (Exit.NoSuchThing, "no such sample or reading"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var target = new Argument<string>("target") { Description = "sample code or reading id" };
        var because = new Option<string>("--because") { Description = "why; a reader will see this" };
        var command = options.On(new Command("strike", "draw a line through a sample or reading; it stays legible") { target, because });
        command.SetAction(parsed =>
        {
            var what = parsed.GetValue(target)!;
            if (parsed.GetValue(because) is not { Length: > 0 } reason || string.IsNullOrWhiteSpace(reason))
            {
                door.Error.WriteLine($"Say why {what} is struck: --because \"…\". A reader will see this.");
                return Exit.NeedsDecision;
            }

            using var study = options.Write(parsed, door);
            study.Append(study.Daybook.Version, door.Who, new Struck(what, reason.Trim()));
            study.Close();
            door.Out.WriteLine($"{what} struck: {reason.Trim()}");
            options.Remark(parsed, door, "holdfast undo takes it back; holdfast defend shows what changed.");
            return Exit.Done;
        });
        return command;
    }
}
