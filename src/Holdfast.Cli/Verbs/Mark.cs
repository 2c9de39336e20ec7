using System.CommandLine;
using Holdfast.Studies.History;

namespace Holdfast.Cli.Verbs;

/// <summary>A name for this moment, so that a reader can ask later what changed since.</summary>
internal sealed class Mark : IVerb
{
    public int Place => 45;

    public IReadOnlyList<string> Examples => ["holdfast mark \"sent to supervisor\"", "holdfast mark \"before the second powder batch\""];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [(Exit.ChangedOrSealed, "changed elsewhere or sealed")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var name = new Argument<string>("name") { Description = "what the moment is called" };
        var command = options.On(new Command("mark", "name this moment in the Daybook") { name });
        command.SetAction(parsed =>
        {
            if (string.IsNullOrWhiteSpace(parsed.GetValue(name)))
            {
                door.Error.WriteLine("The moment needs a name: holdfast mark \"sent to supervisor\".");
                return Exit.NotUnderstood;
            }

            using var study = options.Write(parsed, door);
            var entry = study.Append(study.Daybook.Version, door.Who, new Marked(parsed.GetValue(name)!.Trim()))[0];
            StudyOptions.Close(study, door);
            door.Out.WriteLine(entry.Change.Says());
            return Exit.Done;
        });
        return command;
    }
}
