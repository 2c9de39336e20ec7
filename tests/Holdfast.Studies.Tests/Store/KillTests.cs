using System.Diagnostics;
using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Store;

/// <summary>A writer killed at any moment: what it said was kept is there, and nothing is half there. scripts/kill-during-take.sh runs it long.</summary>
public class KillTests
{
    [Fact]
    public void Writer_KilledAtRandomMoments_LosesNoEntryThatItSaidWasKept()
    {
        var cycles = int.TryParse(Environment.GetEnvironmentVariable("HOLDFAST_KILL_CYCLES"), NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : 12;
        using var bench = new Bench();
        bench.Begin().Close();
        var moments = new SeededStream(1589, "kill");
        List<(long Number, string Hash)> kept = [];
        for (var cycle = 0; cycle < cycles; cycle++)
        {
            using var writer = Process.Start(Appender.Start(bench.Folder, 100_000))!;
            Assert.Equal("ready", writer.StandardOutput.ReadLine());
            // The first append of a process is slow: every second cycle waits for it, so that the kill falls among many.
            if (cycle % 2 == 0)
                kept.AddRange(Appender.Kept([writer.StandardOutput.ReadLine()!]));
            Thread.Sleep(moments.Below(150));
            writer.Kill();
            kept.AddRange(Appender.Kept(writer.StandardOutput.ReadToEnd().Split('\n')));
            writer.WaitForExit();

            using (var study = bench.Open())
                Assert.Equal(study.Study.Readings.Length, study.Study.Originals.Length);
            var hashes = RawStudy.Hashes(bench.Folder);
            Assert.All(kept, k => Assert.Equal(k.Hash, hashes[(int)k.Number - 1]));
            Assert.True(Inspection.Of(bench.Folder, everyByte: cycle == cycles - 1, TestContext.Current.CancellationToken).IsSound);
        }
        Assert.True(kept.Count > cycles, "The writer was killed before it kept anything: the test proves nothing.");
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{cycles} kills, {kept.Count} entries said to be kept, none lost"));
    }
}
