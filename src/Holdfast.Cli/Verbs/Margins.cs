using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>Margins: how large a difference still counts as none.</summary>
internal sealed class Margins : IVerb
{
    public int Place => 61;

    public IReadOnlyList<string> Examples => ["holdfast margin", "holdfast margin plateau --from -3 --to 3"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "no such margin, or an end that is no number"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var name = new Argument<string?>("name") { Description = "which margin; all are listed when left out", Arity = ArgumentArity.ZeroOrOne };
        var low = new Option<string>("--from") { Description = "lower end, in the margin's unit" };
        var high = new Option<string>("--to") { Description = "upper end, in the margin's unit" };
        var because = new Option<string>("--because") { Description = "why a margin is changed after the plan was frozen" };
        var command = options.On(new Command("margin", "fix a margin before the data are seen, or list them") { name, low, high, because });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(name) is not { } which)
            {
                using var read = options.Read(parsed, door);
                foreach (var kind in MarginKind.All)
                {
                    var fixedOne = read.Study.Margins.FirstOrDefault(m => string.Equals(m.Name, kind.Name, StringComparison.Ordinal));
                    if (fixedOne is null && kind.Otherwise is { } otherwise)
                    {
                        door.Out.WriteLine($"{kind.Name,-15} none ({otherwise}): inside it, {kind.Meaning}");
                        continue;
                    }

                    door.Out.WriteLine($"{kind.Name,-15} {InWords.Plain(fixedOne?.Low ?? kind.Low)} to {InWords.Plain(fixedOne?.High ?? kind.High)} {fixedOne?.Unit ?? kind.Unit}"
                        + $" {(fixedOne is null ? "(default)" : $"(fixed, entry {InWords.Plain(fixedOne.Entry)})")}: inside it, {kind.Meaning}");
                }

                return Exit.Done;
            }

            var (margin, refusal) = MarginKind.Read(which, parsed.GetValue(low) ?? "", parsed.GetValue(high) ?? "");
            if (margin is null)
            {
                door.Error.WriteLine(refusal!.Sentence);
                return Exit.NeedsDecision;
            }

            using var study = options.Write(parsed, door);
            study.Append(study.Daybook.Version, door.Who, parsed.GetValue(because) is { } reason ? [new Amended(reason), margin] : [margin]);
            StudyOptions.Close(study, door);
            door.Out.WriteLine(margin.Says());
            return Exit.Done;
        });
        return command;
    }
}
