using System.CommandLine;
using Holdfast.Cli.Shells;

namespace Holdfast.Cli.Verbs;

/// <summary>The manual page, as the program that shows manuals reads it.</summary>
internal sealed class Manual : IVerb
{
    public int Place => 97;

    public IReadOnlyList<string> Examples => ["holdfast manual | man -l -", "holdfast manual > ~/.local/share/man/man1/holdfast.1"];

    public IReadOnlyList<(int Code, string Meaning)> Exits => [];

    public Command Command(Door door)
    {
        var command = new Command("manual", "print the manual page of all verbs, in the form that man shows");
        command.SetAction(_ =>
        {
            door.Out.Write(ManualPage.Of(CommandLine.Version, door));
            return Exit.Done;
        });
        return command;
    }
}
