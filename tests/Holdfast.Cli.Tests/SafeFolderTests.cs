using System.Text.Json.Nodes;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Cli.Tests;

/// <summary>A study folder from a stranger, a folder that cannot be written in full, and copies: nothing outside is touched, and "kept" is never called "not kept".</summary>
public class SafeFolderTests
{
    private const string Vessels = "sample,series,m (mg),V (mL),C0 (mg/L),t (min),Ce (mg/L)\nV-1,KIN,20,25,40,30,20\nV-2,KIN,20,25,40,60,15\nV-3,KIN,20,25,40,120,12\n";

    [Theory]
    [InlineData("study.writer"), InlineData("study.lock"), InlineData("study.check"), InlineData("README.md"), InlineData("study.db-journal")]
    public void LinkToAFile_UnderOneOfOurNames_IsRefusedWithItsPathAndNotFollowed(string name)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Links are made without special rights.");
        using var line = Taken();
        var outside = Path.Combine(Path.GetDirectoryName(line.Folder)!, "outside.txt");
        foreach (var there in new[] { true, false })
        {
            File.Delete(Path.Combine(line.Folder, name));
            File.Delete(outside);
            if (there)
                File.WriteAllText(outside, "mine");
            File.CreateSymbolicLink(Path.Combine(line.Folder, name), outside);
            Assert.Equal(Exit.Storage, line.Type("strike", "V-1", "--because", "spilt"));
            Assert.Contains("HF-437", line.Error, StringComparison.Ordinal);
            Assert.Contains(Path.Combine(line.Folder, name), line.Error, StringComparison.Ordinal);
            Assert.Equal(there ? "mine" : null, File.Exists(outside) ? File.ReadAllText(outside) : null);
        }
    }

    [Theory, InlineData("plain"), InlineData("originals")]
    public void LinkToAFolder_UnderOneOfOurNames_IsRefusedWithItsPathAndNotFollowed(string name)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Links are made without special rights.");
        using var line = Taken();
        var outside = Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(line.Folder)!, "outside")).FullName;
        Directory.Move(Path.Combine(line.Folder, name), Path.Combine(Path.GetDirectoryName(line.Folder)!, "aside"));
        File.CreateSymbolicLink(Path.Combine(line.Folder, name), outside);
        Assert.Equal(Exit.Storage, line.Type("take", line.File("more.csv", Vessels.Replace("V-", "W-", StringComparison.Ordinal))));
        Assert.Contains("HF-437", line.Error, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(line.Folder, name), line.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(outside));
    }

    [Fact]
    public void WriteUp_WhereALinkLies_IsRefusedAndNotFollowed()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Links are made without special rights.");
        using var line = Taken();
        var outside = Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(line.Folder)!, "outside")).FullName;
        File.CreateSymbolicLink(Path.Combine(line.Folder, "report.html"), Path.Combine(outside, "new.html"));
        File.CreateSymbolicLink(Path.Combine(line.Folder, "tables"), outside);
        Assert.Equal(Exit.Storage, line.Type("write", "--html", "report.html", "--replace"));
        Assert.Equal(Exit.Storage, line.Type("write", "--csv", "tables", "--replace"));
        Assert.Contains("HF-437", line.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(outside));
    }

    // A folder or file in the way stands for a folder without the right to write and a file held open, which an administrator is never refused.
    [Theory, InlineData("plain"), InlineData("README.md"), InlineData("study.check")]
    public void Undo_WhereACopyCannotBeRefreshed_IsKeptAndSaysSo(string name)
    {
        using var line = Taken();
        Assert.Equal(Exit.Done, line.Type("strike", "V-1", "--because", "spilt"));
        Assert.Equal(Exit.Done, line.Type("strike", "V-2", "--because", "spilt too"));
        var path = Path.Combine(line.Folder, name);
        if (name == "plain")
        {
            Directory.Delete(path, recursive: true);
            File.WriteAllText(path, "in the way");
        }
        else
        {
            File.Delete(path);
            Directory.CreateDirectory(Path.Combine(path, "in the way"));
        }

        Assert.Equal(Exit.Done, line.Type("undo"));
        Assert.Contains("Kept as entry 5", line.Error, StringComparison.Ordinal);
        Assert.Contains("HF-438", line.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing is kept", line.Error, StringComparison.Ordinal);
        using var study = StudyFolder.OpenToRead(line.Folder);
        Assert.Equal(["V-1"], study.Study.Strikes.Select(s => s.Target));
        foreach (var words in new string[][] { ["mark", "sent"], ["correct", "V-1", "mass=21", "--because", "misread"], ["plan", "--add", "read again"], ["margin", "plateau", "--from", "-3", "--to", "3"] })
        {
            Assert.Equal(Exit.Done, line.Type(words));
            Assert.Contains("Kept as entry", line.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void NewStudy_IsReadableByItsOwnerAlone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has rights of another kind.");
        if (OperatingSystem.IsWindows())
            return;
        using var line = Taken();
        const UnixFileMode others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;
        Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(line.Folder) & others);
        foreach (var ours in Directory.EnumerateFileSystemEntries(line.Folder, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith("vessels.csv", StringComparison.Ordinal)))
            Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(ours) & others);
    }

    /// <summary>What somebody could put into a history: which entry, which part of what was done, what stands there.</summary>
    public static TheoryData<int, string, string> Crafts => new()
    {
        { 2, "target", "\"V-99\"" },
        { 3, "entry", "77" },
        { 1, "files", """[{"sha256":"../../../../outside","fileName":"x","bytes":1}]""" },
        { 1, "samples", "7" },
        { 1, "samples", "[null]" },
        { 1, "readings", """[{"id":"R-1","sample":"nobody","run":"none","order":1,"signal":"absorbance","value":1,"dilution":1,"portion":1,"written":"1","origin":{"fileName":"x","row":1}}]""" },
        { 0, "title", "null" },
        { 0, "title", "5" },
        { 2, "reason", "[]" },
    };

    [Theory, MemberData(nameof(Crafts))]
    public void CraftedHistory_IsNamedAsDamageOnOpening(int entry, string part, string value)
    {
        using var line = Taken();
        line.Type("strike", "V-1", "--because", "spilt");
        line.Type("undo");
        var entries = CraftedStudy.Entries(line.Folder);
        entries[entry]["change"]![part] = JsonNode.Parse(value);
        CraftedStudy.Write(line.Folder, entries);
        foreach (var words in new string[][] { ["defend"], ["list"], ["reduce"], ["undo"], ["inspect"], ["write", "--html", "r.html"], ["copy-out", "../copy"] })
        {
            Assert.Equal(Exit.Storage, line.Type(words));
            Assert.Contains("HF-432", line.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void CraftedHistories_AnyValueAnywhere_AreRefusedOrWorkedOut()
    {
        using var line = Taken();
        line.Type("strike", "V-1", "--because", "spilt");
        line.Type("correct", "V-2", "mass=21", "--because", "misread");
        line.Type("claim", "equilibrium-reached", "series=KIN", "time=60 min");
        line.Type("margin", "plateau", "--from", "-3", "--to", "3");
        line.Type("plan", "--add", "read again");
        line.Type("undo");
        string[] values = ["null", "0", "-7", "1e300", "\"x\"", "\"../../outside\"", "[]", "[null]", "{}", "true"];
        var good = CraftedStudy.Entries(line.Folder);
        var random = new Random(11);
        var odd = new List<string>();
        var (refused, opened) = (0, 0);
        for (var round = 0; round < 400; round++)
        {
            var entries = good.ConvertAll(e => e.DeepClone());
            var nodes = entries.SelectMany(e => CraftedStudy.All(e["change"])).Where(n => n.Parent is not null).ToArray();
            var node = nodes[random.Next(nodes.Length)];
            var value = values[random.Next(values.Length)];
            var path = node.GetPath();
            node.ReplaceWith(JsonNode.Parse(value));
            CraftedStudy.Write(line.Folder, entries);
            try
            {
                using var study = StudyFolder.OpenToRead(line.Folder);
                opened++;
                _ = PlainPackage.Files(study.Daybook);
                var report = StudyReport.Html(Dossier.Of(study.Study));
                if (report.Contains("HF-451", StringComparison.Ordinal))
                    odd.Add($"{path} = {value}: HF-451 {report.Substring(Math.Max(0, report.IndexOf("HF-451", StringComparison.Ordinal) - 200), 200)}");
            }
            catch (StudyException e) when (e.Code is "HF-432" or "HF-435" or "HF-434")
            {
                refused++;
            }
#pragma warning disable CA1031 // Whatever is thrown is what the test looks for.
            catch (Exception e)
#pragma warning restore CA1031
            {
                odd.Add($"{path} = {value}: {e.GetType().Name} {e.Message} {e.StackTrace?.Split('\n')[0]}");
            }
        }

        Assert.True(odd.Count == 0, string.Join("\n", odd));
        Assert.InRange(refused, 100, 399);
        Assert.InRange(opened, 1, 300);
    }

    [Fact]
    public void CopyOut_IsReadBackAndHasTheSameFingerprint()
    {
        using var line = Taken();
        line.Type("strike", "V-1", "--because", "spilt");
        Assert.Equal(Exit.Done, line.Type("copy-out", "../copy"));
        Assert.Contains("Every byte was read back", line.Out, StringComparison.Ordinal);
        var copy = Path.Combine(Path.GetDirectoryName(line.Folder)!, "copy");
        using (var study = StudyFolder.OpenToRead(line.Folder))
        using (var copied = StudyFolder.OpenToRead(copy))
            Assert.Equal(study.Daybook.Fingerprint, copied.Daybook.Fingerprint);
        Assert.Equal(Exit.NoSuchThing, line.Type("copy-out", "../copy"));
        Assert.Equal(Exit.Done, line.Type("strike", "V-2", "--because", "in the copy", "--study", copy));
    }

    [Fact]
    public void CopyIn_OfADamagedStudy_ComesFromItsPlainForm()
    {
        using var line = Taken();
        string fingerprint;
        using (var study = StudyFolder.OpenToRead(line.Folder))
            fingerprint = study.Daybook.Fingerprint;
        File.WriteAllText(Path.Combine(line.Folder, "study.db"), "broken");
        foreach (var (from, to) in new[] { (".", "../one"), ("plain", "../two") })
        {
            Assert.Equal(Exit.Done, line.Type("copy-in", from, to));
            Assert.Contains("came from plain/", line.Out, StringComparison.Ordinal);
            using var returned = StudyFolder.OpenToRead(Path.Combine(line.Folder, to));
            Assert.Equal(fingerprint, returned.Daybook.Fingerprint);
        }
    }

    [Fact]
    public void Copy_WithAMissingOriginal_IsNotCalledWhole()
    {
        using var line = Taken();
        var original = Directory.EnumerateFiles(Path.Combine(line.Folder, "originals")).First();
        File.SetAttributes(original, FileAttributes.Normal);
        File.Delete(original);
        Assert.Equal(Exit.Storage, line.Type("copy-out", "../copy"));
        Assert.Contains("The copy is not whole", line.Out, StringComparison.Ordinal);
        Assert.Contains("HF-432", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Copy_CutShort_LeavesNothingThatLooksLikeAStudy()
    {
        using var line = Taken();
        var history = Path.Combine(line.Folder, "plain", "history.jsonl");
        File.WriteAllText(history, File.ReadAllText(history)[..^20]);
        Assert.Equal(Exit.Storage, line.Type("copy-in", "plain", "../copy"));
        Assert.DoesNotContain(Directory.EnumerateDirectories(Path.GetDirectoryName(line.Folder)!), d => d.Contains("copy", StringComparison.Ordinal));
    }

    private static Typed Taken()
    {
        var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("take", line.File("vessels.csv", Vessels)));
        return line;
    }
}
