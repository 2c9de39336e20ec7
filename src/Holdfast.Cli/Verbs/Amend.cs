using System.CommandLine;

namespace Holdfast.Cli.Verbs;

/// <summary>Another verb, as an amendment of a sealed study.</summary>
internal sealed class Amend : IVerb
{
    public int Place => 85;

    public IReadOnlyList<string> Examples => ["holdfast amend \"stopper found broken\" -- strike V-11 --because \"stopper leaked\"", "holdfast amend \"water was named wrongly\" -- describe water=rain"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NeedsDecision, "no reason"), (Exit.ChangedOrSealed, "changed elsewhere")];

    public Command Command(Door door)
    {
        var reason = new Argument<string>("reason") { Description = "why; it stands in the daybook before the change and in every document after it" };
        var words = new Argument<string[]>("verb") { Description = "the verb with its options, behind --", Arity = ArgumentArity.OneOrMore };
        var command = new Command("amend", "change a sealed study, with a reason that every later document tells") { reason, words };
        command.SetAction(parsed =>
        {
            if (string.IsNullOrWhiteSpace(parsed.GetValue(reason)))
            {
                door.Error.WriteLine("Say why: a reader will look for it. Nothing was changed.");
                return Exit.NeedsDecision;
            }

            string[] verb = parsed.GetValue(words)!;
            if (verb[0] is not "amend")
                return CommandLine.Run(verb, door with { Amending = parsed.GetValue(reason) });
            door.Error.WriteLine("One reason is enough: name the verb that makes the change. Nothing was changed.");
            return Exit.NotUnderstood;
        });
        return command;
    }
}
