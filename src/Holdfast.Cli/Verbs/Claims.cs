using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>Claims: what can be claimed, a claim stated or worded anew, a claim withdrawn.</summary>
internal sealed class Claims : IVerb
{
    public int Place => 60;

    public IReadOnlyList<string> Examples
        => ["holdfast claim equilibrium-reached series=KIN-20 \"time=120 min\"", "holdfast claim --withdraw equilibrium-120 --because \"not asked any more\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NeedsDecision, "something is missing or cannot be read"), (Exit.NoSuchThing, "no such claim"), (Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var rule = new Argument<string?>("rule") { Description = "the rule that judges it; every rule is listed when left out", Arity = ArgumentArity.ZeroOrOne };
        var about = new Argument<string[]>("about") { Description = "what it is about: name=value, numbers with their unit", Arity = ArgumentArity.ZeroOrMore };
        var words = new Option<string>("--words") { Description = "your own words for it" };
        var id = new Option<string>("--id") { Description = "id of a claim that is to be stated anew" };
        var withdraw = new Option<string>("--withdraw") { Description = "id of a claim to withdraw" };
        var because = new Option<string>("--because") { Description = "why it is withdrawn" };
        var command = options.On(new Command("claim", "state a claim, state it anew, withdraw it, or list what can be claimed") { rule, about, words, id, withdraw, because });
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(withdraw) is { } gone)
                return Keep(options, parsed, door, new ClaimWithdrawn(gone, parsed.GetValue(because)));
            if (parsed.GetValue(rule) is not { } named)
                return List(door);
            var pairs = parsed.GetValue(about)!.Select(pair => pair.Split('=', 2)).ToArray();
            if (pairs.FirstOrDefault(p => p.Length < 2) is { } odd)
            {
                door.Error.WriteLine($"“{odd[0]}” is not name=value. Write it like \"time=120 min\".");
                return Exit.NotUnderstood;
            }

            Statement statement;
            using (var study = options.Read(parsed, door))
            {
                statement = Statement.Of(study.Study, named, pairs.Select(p => KeyValuePair.Create(p[0].Trim(), p[1])), parsed.GetValue(words), parsed.GetValue(id));
            }

            foreach (var refusal in statement.Refusals)
                door.Error.WriteLine(refusal.Sentence);
            return statement.Stated is { } claim ? Keep(options, parsed, door, claim) : Exit.NeedsDecision;
        });
        return command;
    }

    private static int Keep(StudyOptions options, ParseResult parsed, Door door, Change change)
    {
        using var study = options.Write(parsed, door);
        study.Append(study.Daybook.Version, door.Who, change);
        StudyOptions.Close(study, door);
        door.Out.WriteLine(change.Says());
        return Exit.Done;
    }

    private static int List(Door door)
    {
        foreach (var rule in Defence.Rules)
        {
            door.Out.WriteLine($"{rule.Id,-32} {rule.Wording}");
            door.Out.WriteLine($"{"",-32} {string.Join(", ", ClaimParameter.Of(rule).Select(p => $"{p.Name}{(p.IsNeededBy(rule) ? "" : "?")}=\"{p.Example}\""))}");
        }

        return Exit.Done;
    }
}
