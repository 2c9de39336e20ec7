using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>A line through a sample, reading or measurement.</summary>
internal sealed class Strike : IVerb
{
    public int Place => 40;

    public IReadOnlyList<string> Examples => ["holdfast strike V-11 --because \"stopper leaked\"", "holdfast strike R-0142 --rehearse"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "no reason, or struck already"), (Exit.NoSuchThing, "no such sample, reading or measurement"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var target = new Argument<string>("target") { Description = "sample code, or id of a reading or measurement" };
        var because = new Option<string>("--because") { Description = "why; a reader will see this" };
        var rehearse = new Option<bool>("--rehearse") { Description = "show what would change, keep nothing" };
        var command = options.On(new Command("strike", "draw a line through a sample, reading or measurement; it stays legible") { target, because, rehearse });
        command.SetAction(parsed =>
        {
            var what = parsed.GetValue(target)!;
            if (parsed.GetValue(rehearse))
                return Rehearse(options, parsed, door, what);
            if (parsed.GetValue(because) is not { Length: > 0 } reason || string.IsNullOrWhiteSpace(reason))
            {
                door.Error.WriteLine($"Say why {what} is struck: --because \"…\". A reader will see this.");
                return Exit.NeedsDecision;
            }

            using var study = options.Write(parsed, door);
            study.Append(study.Daybook.Version, door.Who, new Struck(what, reason.Trim()));
            StudyOptions.Close(study, door);
            door.Out.WriteLine($"{what} struck: {reason.Trim()}");
            options.Remark(parsed, door, "holdfast undo takes it back; holdfast defend shows what changed.");
            return Exit.Done;
        });
        return command;
    }

    private static int Rehearse(StudyOptions options, ParseResult parsed, Door door, string what)
    {
        using var study = options.Read(parsed, door);
        if (!study.Study.Has(what))
        {
            door.Error.WriteLine($"There is no sample, reading or measurement {what} in this study. Nothing was tried.");
            return Exit.NoSuchThing;
        }

        var changes = WorkingComparison.OfStrike(Dossier.Of(study.Study), what);
        if (changes.IsEmpty)
            door.Out.WriteLine($"Without {what} no claim, finding or mean changes.");
        else
            Printed.Write(changes.AsTable("with it", "without it"), parsed.GetValue(options.As)!, door.Out);
        options.Remark(parsed, door, "Nothing was kept.");
        return Exit.Done;
    }
}
