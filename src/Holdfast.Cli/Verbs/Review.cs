using System.CommandLine;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>Remarks of readers: shown, answered, closed.</summary>
internal sealed class Review : IVerb
{
    public int Place => 89;

    public IReadOnlyList<string> Examples => ["holdfast review", "holdfast review RM-12.3 --answer \"Repeated with three vessels, see KIN-20.\" --close"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "no such remark"), (Exit.NeedsDecision, "closed already"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var remark = new Argument<string?>("remark") { Description = "a remark, RM-12.3; all of them when left out", Arity = ArgumentArity.ZeroOrOne };
        var answer = new Option<string?>("--answer") { Description = "what is answered; a later answer stands for an earlier one" };
        var close = new Option<bool>("--close") { Description = "close it" };
        var command = options.On(new Command("review", "show the remarks of readers, answer them, close them") { remark, answer, close });
        command.SetAction(parsed =>
        {
            var (wanted, words, closes) = (parsed.GetValue(remark), parsed.GetValue(answer), parsed.GetValue(close));
            if (wanted is null && (words is not null || closes))
            {
                door.Error.WriteLine("Say which remark: holdfast review RM-12.3 --answer \"…\". holdfast review lists them.");
                return Exit.NotUnderstood;
            }

            if (words is not null && string.IsNullOrWhiteSpace(words))
            {
                door.Error.WriteLine("The answer is empty; nothing was kept.");
                return Exit.NotUnderstood;
            }

            if (wanted is null || (words is null && !closes))
                return Show(options, parsed, wanted, door);
            using var study = options.Write(parsed, door);
            Change[] changes = [.. words is null ? Array.Empty<Change>() : [new RemarkAnswered(wanted, words.Trim())], .. closes ? [new RemarkClosed(wanted)] : Array.Empty<Change>()];
            foreach (var entry in study.Append(study.Daybook.Version, door.Who, changes))
                door.Out.WriteLine(entry.Change.Says());
            StudyOptions.Close(study, door);
            return Exit.Done;
        });
        return command;
    }

    private static int Show(StudyOptions options, ParseResult parsed, string? wanted, Door door)
    {
        using var study = options.Read(parsed, door);
        var remarks = study.Study.Remarks.Where(r => wanted is null || r.Id == wanted).ToArray();
        if (wanted is not null && remarks.Length == 0)
        {
            door.Error.WriteLine($"There is no remark {wanted} in this study. holdfast review lists them.");
            return Exit.NoSuchThing;
        }

        Printed.Write(RemarkTable.Of(remarks), parsed.GetValue(options.As)!, door.Out);
        options.Remark(parsed, door, $"{InWords.Count(remarks.Length, "remark")}, {InWords.Plain(remarks.Count(r => r.Answer is null && r.Closed is null))} not answered");
        return Exit.Done;
    }
}
