using System.Buffers.Binary;
using System.CommandLine;
using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Web;

namespace Holdfast.Cli;

/// <summary>Serves a study to the browser and opens it there; the options are the same wherever that is offered.</summary>
internal sealed class BenchDoor
{
    private readonly Option<bool> silent = new("--no-open") { Description = "print the address and leave the browser alone" };
    private readonly Option<int> port = new("--port") { Description = "port on this computer; the same one each time when left out, where it is free" };

    /// <summary>Adds the options to a command.</summary>
    public void On(Command command)
    {
        command.Options.Add(silent);
        command.Options.Add(port);
    }

    /// <summary>Serves the study until it is stopped.</summary>
    /// <param name="folder">The study.</param>
    /// <param name="parsed">The command line.</param>
    /// <param name="door">The world.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task Open(string folder, ParseResult parsed, Door door, CancellationToken cancel)
    {
        using var page = new StartPage();
        await BenchHost.Run(
            new BenchOptions(folder, door.Clock, door.Who, parsed.GetValue(port) is > 0 and var chosen ? chosen : Usual(folder)) { Example = () => Verbs.Demo.Example(door) }, address => Tell(address, parsed.GetValue(silent) ? null : page, door), cancel).ConfigureAwait(false);
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

    private static void Tell(Uri address, StartPage? page, Door door)
    {
        door.Out.WriteLine(address);
        door.Error.WriteLine("The address opens once, in one browser on this computer. Ctrl+C ends the bench; everything kept stays kept.");
        if (page is null)
            return;
        // The browser is handed a page that only its owner can read, and not the address: what a program is started with is seen by everybody on this computer.
        var words = page.LeadTo(address);
        var program = OperatingSystem.IsWindows() ? "explorer.exe" : OperatingSystem.IsMacOS() ? "open" : "xdg-open";
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
