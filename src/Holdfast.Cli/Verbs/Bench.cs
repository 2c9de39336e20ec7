using System.Buffers.Binary;
using System.CommandLine;
using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Web;

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
        var silent = new Option<bool>("--no-open") { Description = "print the address and leave the browser alone" };
        var port = new Option<int>("--port") { Description = "port on this computer; the same one each time when left out, where it is free" };
        var command = options.On(new Command("bench", "open the study in the browser, on this computer only") { named, silent, port });
        command.SetAction(async (parsed, cancel) =>
        {
            var folder = parsed.GetValue(named) is { Length: > 0 } given ? Path.GetFullPath(given, door.Folder) : options.Folder(parsed, door);
            await BenchHost.Run(
                new BenchOptions(folder, door.Clock, door.Who, parsed.GetValue(port) is > 0 and var chosen ? chosen : Usual(folder)),
                address => Tell(address, !parsed.GetValue(silent), door),
                cancel).ConfigureAwait(false);
            return Exit.Done;
        });
        return command;
    }

    // The same folder has the same port where it can: a page that was left open finds the program again.
    private static int Usual(string folder)
    {
        const int first = 49152;
        const int ports = 16384;
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(folder));
        var port = first + (BinaryPrimitives.ReadUInt16LittleEndian(hash) % ports);
        try
        {
            using var trial = new TcpListener(IPAddress.Loopback, port);
            trial.Start();
            return port;
        }
        catch (SocketException)
        {
            return 0;
        }
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
