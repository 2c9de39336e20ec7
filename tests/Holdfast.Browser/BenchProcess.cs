using System.Diagnostics;

namespace Holdfast.Browser;

/// <summary>The program as a person starts it: a process of its own that can be killed while somebody types.</summary>
internal sealed class BenchProcess : IDisposable
{
    private readonly Process process;

    private BenchProcess(Process process, Uri start) => (this.process, Start) = (process, start);

    /// <summary>The address it printed; it opens once.</summary>
    public Uri Start { get; }

    /// <summary>Scheme, name and port.</summary>
    public string Address => Start.GetLeftPart(UriPartial.Authority);

    /// <summary>Runs "holdfast bench FOLDER --no-open" and waits for the address.</summary>
    /// <param name="folder">The study's folder, or one that holds none yet.</param>
    public static async Task<BenchProcess> Run(string folder)
    {
        // artifacts/bin/Holdfast.Browser/debug: the program lies in the neighbouring folder of the same configuration.
        var here = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
        var program = Path.Combine(here.Parent!.Parent!.FullName, "Holdfast.Cli", here.Name, OperatingSystem.IsWindows() ? "holdfast.exe" : "holdfast");
        // No reference: two projects with web files of their own cannot stand in one build. The solution builds both.
        Assert.True(File.Exists(program), $"{program} is missing. Build the solution, not this project alone.");
        var process = Process.Start(new ProcessStartInfo(program) { ArgumentList = { "bench", folder, "--no-open" }, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var line = await process.StandardOutput.ReadLineAsync();
        Assert.True(line is not null, await ErrorOf(process, line));
        return new BenchProcess(process, new Uri(line));
    }

    /// <summary>Ends it at once, as kill -9 does: nothing is tidied up.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!process.HasExited)
            Kill();
        process.Dispose();
    }

    private static async Task<string> ErrorOf(Process process, string? line) => line ?? await process.StandardError.ReadToEndAsync();
}
