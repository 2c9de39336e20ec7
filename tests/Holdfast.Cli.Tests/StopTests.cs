using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Holdfast.Cli.Tests;

/// <summary>Long work that is stopped: exit 9, and the study is as it was.</summary>
public class StopTests
{
    [Fact]
    public async Task Fit_StoppedWhileItResamples_EndsWithNineAndKeepsNothing()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "A program cannot be asked to end from outside there.");
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        line.Type("list", "daybook");
        var before = line.Out;

        using var process = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "Holdfast.Cli"))
        {
            ArgumentList = { "fit", "kinetics", "--resample", "1000000", "--study", line.Folder },
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        var counted = await process.StandardError.ReadLineAsync(TestContext.Current.CancellationToken);
        Assert.Matches(@"^KIN-05, .+: \d+ of 1000000, about \d+ s left\. Ctrl\+C stops\.$", counted);
        Assert.Equal(0, Kill(process.Id, Terminate));
        var said = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(Exit.Stopped, process.ExitCode);
        Assert.Contains("Stopped. The study is as it was.", said, StringComparison.Ordinal);
        Assert.Empty(await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
        line.Type("list", "daybook");
        Assert.Equal(before, line.Out);
    }

    [Fact]
    public void Fit_ResampledTwice_SaysTheSame()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Assert.Equal(Exit.Done, line.Type("fit", "isotherm", "--resample", "500", "--as", "json"));
        var once = line.Out;
        line.Type("fit", "isotherm", "--resample", "500", "--as", "json");
        Assert.Equal(once, line.Out);
        Assert.Contains("resampled_low", once, StringComparison.Ordinal);
        Assert.Equal(Exit.NotUnderstood, line.Type("fit", "isotherm", "--resample", "5"));
    }

    private const int Terminate = 15;

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
