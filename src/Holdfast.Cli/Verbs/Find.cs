using System.CommandLine;
using Holdfast.Claims;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Trails;

namespace Holdfast.Cli.Verbs;

/// <summary>Words looked for in claims, figures, samples, readings, files and planned work.</summary>
internal sealed class Find : IVerb
{
    public int Place => 52;

    public IReadOnlyList<string> Examples => ["holdfast find 120", "holdfast find equilibrium KIN-20"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.NoSuchThing, "nothing holds all of the words")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var words = new Argument<string[]>("words") { Description = "words that must all occur, in any order", Arity = ArgumentArity.OneOrMore };
        var command = options.On(new Command("find", "look for words in claims, figures, samples, readings and files") { words });
        command.SetAction(parsed =>
        {
            using var study = options.Read(parsed, door);
            var dossier = Dossier.Of(study.Study);
            var wanted = string.Join(' ', parsed.GetValue(words)!);
            var found = Mention.Of(dossier, StudyFigure.All(dossier), wanted);
            foreach (var mention in found)
                door.Out.WriteLine($"{mention.Kind,-12} {mention.Id}: {mention.Words}");
            if (found.IsEmpty)
                options.Remark(parsed, door, $"Nothing in this study holds “{wanted}”.");
            return found.IsEmpty ? Exit.NoSuchThing : Exit.Done;
        });
        return command;
    }
}
