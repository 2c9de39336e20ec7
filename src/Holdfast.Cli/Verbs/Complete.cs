using System.CommandLine;
using Holdfast.Cli.Shells;

namespace Holdfast.Cli.Verbs;

/// <summary>A script that lets the shell complete what is typed behind holdfast.</summary>
internal sealed class Complete : IVerb
{
    public int Place => 96;

    public IReadOnlyList<string> Examples => ["source <(holdfast complete bash)", "holdfast complete fish > ~/.config/fish/completions/holdfast.fish"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [];

    public Command Command(Door door)
    {
        var shell = new Argument<string>("shell") { Description = "bash, zsh or fish" };
        shell.AcceptOnlyFromAmong([.. ShellCompletion.Shells]);
        var command = new Command("complete", "print the script by which a shell completes verbs and options") { shell };
        command.SetAction(parsed =>
        {
            door.Out.Write(ShellCompletion.Script(parsed.GetValue(shell)!, VerbWords.All(door)));
            return Exit.Done;
        });
        return command;
    }
}
