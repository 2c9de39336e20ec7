using System.CommandLine;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Verbs;

/// <summary>Planned work: what is to be done, done, withdrawn.</summary>
internal sealed class Plan : IVerb
{
    public int Place => 75;

    public IReadOnlyList<string> Examples => ["holdfast plan", "holdfast plan --done P-57"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "done already"), (Exit.NoSuchThing, "no such work"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var add = new Option<string>("--add") { Description = "put work of your own into the Plan, in a sentence" };
        var done = new Option<string>("--done") { Description = "note planned work as done" };
        var withdraw = new Option<string>("--withdraw") { Description = "take planned work back" };
        var because = new Option<string>("--because") { Description = "why it is withdrawn" };
        var command = options.On(new Command("plan", "planned work: list it, note it as done, withdraw it") { add, done, withdraw, because });
        command.SetAction(parsed =>
        {
            Change[] changes =
            [
                .. parsed.GetValue(add) is { } work ? [new WorkPlanned(work.Trim(), null, null, [])] : Array.Empty<Change>(),
                .. parsed.GetValue(done) is { } ended ? [new WorkDone(ended)] : Array.Empty<Change>(),
                .. parsed.GetValue(withdraw) is { } dropped ? [new WorkWithdrawn(dropped, parsed.GetValue(because))] : Array.Empty<Change>(),
            ];
            using var study = changes.Length > 0 ? options.Write(parsed, door) : options.Read(parsed, door);
            if (changes.Length > 0)
                study.Append(study.Daybook.Version, door.Who, changes);
            if (parsed.GetValue(options.As) == "text")
                Tell(study, door);
            else
                Printed.Write(Reports.StudyTables.StudyFactTables.Plan(study.Study), parsed.GetValue(options.As)!, door.Out);
            if (changes.Length > 0)
                StudyOptions.Close(study, door);
            return Exit.Done;
        });
        return command;
    }

    private static void Tell(StudyFolder study, Door door)
    {
        if (study.Study.Plan.IsEmpty)
            door.Out.WriteLine("Nothing is planned. holdfast defend CLAIM --plan takes a claim's next experiment up.");
        foreach (var work in study.Study.Plan)
        {
            door.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{work.Id,-7} {(work.Done is { } when ? $"done {when:d MMM yyyy}" : "to do"),-16} {work.Work}{(work.Claim is { } claim ? $" (for {claim})" : "")}"));
        }
    }
}
