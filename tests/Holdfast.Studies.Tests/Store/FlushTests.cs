using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Store;

/// <summary>A disk that says no is heard. The platform's own flush was seen to hide it on Unix, so these stay for ever.</summary>
public class FlushTests
{
    private static readonly bool CanObstruct = OperatingSystem.IsLinux() && Appenders.StraceWorks();

    [Fact]
    public void Flush_OfWhatCannotBeFlushed_Throws()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The null device refuses to be flushed on Linux.");
        // fsync(2) of the null device fails with EINVAL; the platform's FlushToDisk passes over it without a word.
        using var handle = File.OpenHandle("/dev/null", FileMode.Open, FileAccess.Write);
        Assert.Equal("HF-436", Assert.Throws<StudyException>(() => DurableFile.Flush(handle, "null")).Code);
    }

    [Theory]
    [InlineData("fsync", "EIO", "HF-436")]
    [InlineData("fsync", "ENOSPC", "HF-430")]
    [InlineData("fsync,fdatasync", "EIO:when=3+", "HF-436")]
    [InlineData("fsync,fdatasync", "ENOSPC:when=3+", "HF-436")]
    [InlineData("pwrite64", "ENOSPC", "HF-430")]
    [InlineData("pwrite64", "ENOSPC:when=2+", "HF-430")]
    [InlineData("pwrite64", "EDQUOT", "HF-430")]
    [InlineData("rename", "EROFS", "HF-431")]
    public void Writer_WhoseDiskFails_SaysSoAndKeepsNothing(string call, string error, string code)
    {
        Assert.SkipUnless(CanObstruct, "strace is not there, or may not trace here.");
        using var bench = new Bench();
        bench.Begin().Close();
        var before = RawStudy.Hashes(bench.Folder);
        var (exit, lines) = Appender.Run(bench.Folder, 1, "strace", "-f", "-qq", "-o", Path.Combine(bench.Root, "trace"), "-e", "trace=" + call, "-e", $"inject={call}:error={error}");
        Assert.Equal(8, exit);
        Assert.StartsWith(code, lines[^1], StringComparison.Ordinal);
        Assert.Empty(Appender.Kept(lines));
        Assert.Equal(before, RawStudy.Hashes(bench.Folder));
        Assert.True(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).IsSound);
    }

    [Fact]
    public void Folder_ThatCannotBeWritten_IsToldAtOnceAndCanBeRead()
    {
        Assert.SkipUnless(CanObstruct, "strace is not there, or may not trace here.");
        using var bench = new Bench();
        bench.Begin().Close();
        var (exit, lines) = Appender.Run(bench.Folder, 1, "strace", "-f", "-qq", "-o", Path.Combine(bench.Root, "trace"), "-P", Path.Combine(bench.Folder, "study.lock"),
            "-e", "trace=openat", "-e", "inject=openat:error=EROFS");
        Assert.Equal(8, exit);
        Assert.StartsWith("HF-431", lines[^1], StringComparison.Ordinal);
        using var study = StudyFolder.OpenToRead(bench.Folder);
        Assert.Equal("HF-431", Assert.Throws<StudyException>(() => study.Append(1, "Ada", new Studies.History.DetailSet("water", "tap"))).Code);
    }

    [Theory]
    [InlineData("fsync,fdatasync")]
    [InlineData("unlink,unlinkat")]
    [InlineData("rename")]
    [InlineData("pwrite64")]
    [InlineData("close")]
    public void Writer_KilledAtEachCallOfTheDisk_LeavesTheOldStateOrTheNew(string calls)
    {
        Assert.SkipUnless(CanObstruct, "strace is not there, or may not trace here.");
        // A short run looks at the first few calls of each kind, the long one (scripts/kill-during-take.sh) at every one until the writer ends by itself.
        var most = Environment.GetEnvironmentVariable("HOLDFAST_KILL_CYCLES") is null ? 4 : int.MaxValue;
        using var bench = new Bench();
        bench.Begin().Close();
        for (var n = 1; n <= most; n++)
        {
            var before = RawStudy.Hashes(bench.Folder);
            var (exit, lines) = Appender.Run(bench.Folder, 1, "strace", "-f", "-qq", "-o", Path.Combine(bench.Root, "trace"), "-e", "trace=" + calls,
                "-e", $"inject={calls}:signal=SIGKILL:when={n.ToString(System.Globalization.CultureInfo.InvariantCulture)}");
            using (var study = bench.Open())
                Assert.Equal(study.Study.Readings.Length, study.Study.Originals.Length);
            var after = RawStudy.Hashes(bench.Folder);
            Assert.Equal(before, after.Take(before.Count));
            Assert.InRange(after.Count - before.Count, Appender.Kept(lines).Count, 1);
            Assert.True(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).IsSound);
            if (exit == 0)
                break;
        }
    }

    private static class Appenders
    {
        public static bool StraceWorks()
        {
            try
            {
                using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo("strace", "-qq -o /dev/null true") { RedirectStandardError = true, UseShellExecute = false })!;
                process.WaitForExit();
                return process.ExitCode == 0;
            }
            catch (System.ComponentModel.Win32Exception)
            {
                return false;
            }
        }
    }
}
