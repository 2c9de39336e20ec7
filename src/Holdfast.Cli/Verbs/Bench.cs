using System.ComponentModel;
using System.CommandLine;
using System.Diagnostics;
using Holdfast.Web;

namespace Holdfast.Cli.Verbs;

/// <summary>The study in the browser, on this computer only.</summary>
internal sealed class Bench : IVerb
{
    public int Place => 6;

    public IReadOnlyList<string> Examples => ["holdfast bench", "holdfast bench --study pb-study --no-open"];

    public IReadOnlyList<(int Code, string Meaning)> Exits
        => [(Exit.NoSuchThing, "no study there"), (Exit.ChangedOrSealed, "another program is writing in it"), (Exit.Storage, "storage")];

    public Command Command(Door door)
    {
        var options = new StudyOptions();
        var silent = new Option<bool>("--no-open") { Description = "print the address and leave the browser alone" };
        var port = new Option<int>("--port") { Description = "port on this computer; a free one when left out" };
        var command = options.On(new Command("bench", "open the study in the browser, on this computer only") { silent, port });
        command.SetAction(async (parsed, cancel) =>
        {
            await BenchHost.Run(
                new BenchOptions(options.Folder(parsed, door), door.Clock, door.Who, parsed.GetValue(port)),
                address => Tell(address, !parsed.GetValue(silent), door),
                cancel).ConfigureAwait(false);
            return Exit.Done;
        });
        return command;
    }

    private static void Tell(Uri address, bool open, Door door)
    {
        door.Out.WriteLine(address);
        door.Error.WriteLine("The address opens once, in one browser on this computer. Ctrl+C ends the bench; everything kept stays kept.");
        if (!open)
            return;
        var (program, words) = OperatingSystem.IsWindows() ? ("explorer.exe", address.ToString()) : (OperatingSystem.IsMacOS() ? "open" : "xdg-open", address.ToString());
        try
        {
            using var started = Process.Start(new ProcessStartInfo(program) { ArgumentList = { words }, UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true });
        }
        catch (Win32Exception)
        {
            door.Error.WriteLine("No browser could be opened from here. Open the address above yourself.");
        }
    }
}
