using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text.Json;

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

        using var process = Process.Start(new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "holdfast"))
        {
            ArgumentList = { "fit", "kinetics", "--resample", "1000000", "--progress", "json", "--study", line.Folder },
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        // Stopped at a thousandth of the million: at a fifth the same happens later.
        var done = 0;
        while (done < 1_000)
        {
            using var counted = JsonDocument.Parse((await process.StandardError.ReadLineAsync(TestContext.Current.CancellationToken))!);
            var progress = counted.RootElement.GetProperty("progress");
            Assert.Equal("holdfast/1", counted.RootElement.GetProperty("schema").GetString());
            Assert.Equal(1_000_000, progress.GetProperty("all").GetInt32());
            Assert.InRange(progress.GetProperty("done").GetInt32(), done, 1_000_000);
            done = progress.GetProperty("done").GetInt32();
        }

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
        Assert.Equal(Exit.Done, line.Type("fit", "kinetics", "--resample", "500", "--as", "json"));
        var once = line.Out;
        line.Type("fit", "kinetics", "--resample", "500", "--as", "json");
        Assert.Equal(once, line.Out);
        using var json = JsonDocument.Parse(once);
        var row = json.RootElement.GetProperty("rows")[0];
        Assert.Equal("KIN-05", row.GetProperty("series").GetString());
        var (low, estimate, high) = (row.GetProperty("resampled_low").GetProperty("value").GetDouble(), row.GetProperty("estimate").GetProperty("value").GetDouble(), row.GetProperty("resampled_high").GetProperty("value").GetDouble());
        Assert.True(low < estimate && estimate < high, once);
        Assert.DoesNotContain("progress", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NotUnderstood, line.Type("fit", "isotherm", "--resample", "5"));
        line.Type("fit", "kinetics", "--resample", "500", "--seed", "2", "--as", "json");
        Assert.NotEqual(once, line.Out);
    }

    // The words come second by second from the third second on; the clock is the test's.
    [Fact]
    public void Progress_AtATerminal_WaitsTwoSecondsAndRenewsOneLine()
    {
        var (clock, error) = (new HandClock(), new StringWriter());
        var door = new Door(TextWriter.Null, error, clock, "tester", "", IsTerminal: true) { IsWatched = true };
        var progress = CountedProgress.Of("Resampling 2 curves", 5000, null, door)!;
        progress.Report(250);
        clock.Seconds = 1.9;
        progress.Report(1000);
        Assert.Empty(error.ToString());
        clock.Seconds = 2;
        progress.Report(1250);
        clock.Seconds = 2.5;
        progress.Report(1500);
        clock.Seconds = 3;
        progress.Report(4000);
        progress.Clear();
        Assert.Equal(
            "\rResampling 2 curves: 1 250 of 5 000, about 6 s left. Ctrl+C stops.\rResampling 2 curves: 4 000 of 5 000, about 1 s left. Ctrl+C stops.\r\r",
            error.ToString().Replace('\u00A0', ' ').Replace(new string(' ', 66), "", StringComparison.Ordinal));
        Assert.Null(CountedProgress.Of("x", 1, null, door with { IsWatched = false }));
    }

    private const int Terminate = 15;

    [DllImport("libc", EntryPoint = "kill", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);

    private sealed class HandClock : TimeProvider
    {
        public double Seconds { get; set; }

        public override long TimestampFrequency => 1000;

        public override long GetTimestamp() => (long)(Seconds * TimestampFrequency);
    }
}
