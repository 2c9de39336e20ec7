using System.CommandLine;

namespace Holdfast.Cli.Verbs;

/// <summary>The study in the browser, on this computer only.</summary>
internal sealed class Bench : IVerb
{
    public int Place => 6;

    public IReadOnlyList<string> Examples => ["holdfast bench", "holdfast bench pb-study --no-open"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.ChangedOrSealed, "another program is writing in it"), (Exit.Storage, "storage")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var named = new Argument<string?>("folder") { Description = "the study's folder; one that holds no study offers to begin one", Arity = ArgumentArity.ZeroOrOne };
        var bench = new BenchDoor();
        var command = options.On(new Command("bench", "open the study in the browser, on this computer only") { named });
        bench.On(command);
        command.SetAction(async (parsed, cancel) =>
        {
            var folder = parsed.GetValue(named) is { Length: > 0 } given ? Path.GetFullPath(given, door.Folder) : options.Folder(parsed, door);
            await bench.Open(folder, parsed, door, cancel).ConfigureAwait(false);
            return Exit.Done;
        });
        return command;
    }
}
