using Holdfast.Statistics;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Store;

/// <summary>Bytes that change on the disk: found, named, and never computed with.</summary>
public class RotTests
{
    private const int Flips = 400;

    [Fact]
    public void AnyByte_OfAnyFile_ChangedIsFoundAndNamed()
    {
        using var bench = new Bench();
        Study expected;
        using (var study = bench.Begin())
        {
            for (var i = 1; i <= 12; i++)
                study.Append(study.Daybook.Version, "Ada", Bench.Take(study, "V-" + Bench.Id(i), i), new Struck(Bench.Id(2 * i), "bubble"));
            expected = study.Study;
            study.Close();
        }
        Assert.Empty(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).Findings);
        var files = Directory.GetFiles(bench.Folder, "*", SearchOption.AllDirectories).Where(f => new FileInfo(f).Length > 0).Order(StringComparer.Ordinal).ToList();
        Assert.True(files.Count > 20);
        var chance = new SeededStream(1589, "rot");
        for (var n = 0; n < Flips; n++)
        {
            // Every file has its turn, and study.db every second one.
            var file = n % 2 == 0 ? Path.Combine(bench.Folder, "study.db") : files[n / 2 % files.Count];
            var good = File.ReadAllBytes(file);
            var at = chance.Below(good.Length);
            var bad = (byte[])good.Clone();
            bad[at] ^= (byte)(1 + chance.Below(255));
            Overwrite(file, bad);
            var name = Path.GetRelativePath(bench.Folder, file).Replace('\\', '/');
            var inspection = Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken);
            Assert.True(inspection.Findings.Any(f => f.Sentence.Contains(name, StringComparison.Ordinal)),
                $"byte {at.ToString(System.Globalization.CultureInfo.InvariantCulture)} of {name} was changed and not found: {string.Join(" | ", inspection.Findings.Select(f => f.Sentence))}");
            if (!name.StartsWith("plain/", StringComparison.Ordinal) && name != "README.md")
                Assert.False(inspection.IsSound);
            NeverComputedWith(bench.Folder, expected);
            Overwrite(file, good);
        }
        Assert.Empty(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).Findings);
    }

    [Fact]
    public void Database_CutShort_LeavesTheLongestWholePrefixReadable()
    {
        using var bench = new Bench();
        var hashes = new List<string>();
        using (var study = bench.Begin())
        {
            for (var i = 1; i <= 60; i++)
                study.Append(study.Daybook.Version, "Ada", Bench.Take(study, "V-" + Bench.Id(i), i));
            hashes.AddRange(study.Daybook.Entries.Select(e => e.Hash));
            study.Close();
        }
        var database = Path.Combine(bench.Folder, "study.db");
        var whole = File.ReadAllBytes(database);
        for (var length = whole.Length - 4096; length > 0; length -= 4096)
        {
            File.WriteAllBytes(database, whole[..length]);
            Assert.Contains(Assert.Throws<StudyException>(() => StudyFolder.OpenToRead(bench.Folder)).Code, new[] { "HF-432", "HF-434" });
            var (daybook, damage) = StudyFolder.Salvage(bench.Folder);
            Assert.NotNull(damage);
            Assert.Equal(hashes.Take((int)daybook.Version), daybook.Entries.Select(e => e.Hash));
            Assert.False(Inspection.Of(bench.Folder, everyByte: false, TestContext.Current.CancellationToken).IsSound);
        }
    }

    [Fact]
    public void NewestEntries_TakenOutWithCare_AreMissed()
    {
        // Whoever removes the last entries by hand leaves a chain that holds; the note of the last close tells.
        using var bench = new Bench();
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", new DetailSet("water", "tap"), new DetailSet("water", "rain"));
            study.Close();
        }
        using (var raw = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(bench.Folder, "study.db")};Pooling=False"))
        {
            raw.Open();
            using var command = raw.CreateCommand();
            string Trigger(string name)
            {
                command.CommandText = $"SELECT sql FROM sqlite_schema WHERE name = '{name}'";
                return (string)command.ExecuteScalar()!;
            }
            command.CommandText = "DROP TRIGGER entry_is_kept; DROP TRIGGER entry_stays; DELETE FROM entry WHERE number = 3;" + Trigger("entry_is_kept") + ";" + Trigger("entry_stays");
            command.ExecuteNonQuery();
        }
        Assert.Contains("study.check knows 3", string.Join(' ', Inspection.Of(bench.Folder, everyByte: false, TestContext.Current.CancellationToken).Findings.Select(f => f.Sentence)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void StrangeThings_InAStudyFolder_AreNamedAndNotFollowed()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Links are made without special rights.");
        using var bench = new Bench();
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", Bench.Take(study, "V-01", 1));
            study.Close();
        }
        File.CreateSymbolicLink(Path.Combine(bench.Folder, "elsewhere"), Directory.CreateDirectory(Path.Combine(bench.Root, "outside")).FullName);
        bench.File("ni-study/study (conflicted copy).db", "x");
        bench.File("ni-study/originals/note.txt", "x");
        var found = string.Join(' ', Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).Findings.Select(f => f.Sentence));
        Assert.Contains("elsewhere is a link", found, StringComparison.Ordinal);
        Assert.Contains("conflicted copy", found, StringComparison.Ordinal);
        Assert.Contains("originals/note.txt", found, StringComparison.Ordinal);

        File.Move(Path.Combine(bench.Folder, "study.db"), Path.Combine(bench.Root, "moved.db"));
        File.CreateSymbolicLink(Path.Combine(bench.Folder, "study.db"), Path.Combine(bench.Root, "moved.db"));
        Assert.Equal("HF-434", Assert.Throws<StudyException>(() => StudyFolder.OpenToRead(bench.Folder)).Code);
    }

    private static void NeverComputedWith(string folder, Study expected)
    {
        try
        {
            using var study = StudyFolder.OpenToRead(folder);
            Same.Study(expected, study.Study);
            Assert.Equal(expected.Fingerprint, study.Study.Fingerprint);
        }
        catch (StudyException e)
        {
            Assert.StartsWith("HF-43", e.Code, StringComparison.Ordinal);
        }
    }

    private static void Overwrite(string file, byte[] bytes)
    {
        File.SetAttributes(file, FileAttributes.Normal);
        File.WriteAllBytes(file, bytes);
    }
}
