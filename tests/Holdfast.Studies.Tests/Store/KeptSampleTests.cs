using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Studies.Tests.Store;

/// <summary>Studies as earlier versions wrote them, kept as they were (F17): each opens, is whole, goes on, and returns from its plain form, whatever was added since.</summary>
public class KeptSampleTests
{
    public static TheoryData<string, string, int> Samples => new()
    {
        // Name of the folder: the day of the commit whose program wrote it. Fingerprints and counts are what that program printed.
        { "2026-11-25", "61ed275fc493f38fc30736e4e1f12ed1abbc7ab99c393b1bdab31438d02a1be3", 5 },
        { "2026-11-30", "bf61e25d08840e0da1d64221eff4521e0b0e7548af4022835bf91560bbce6ad9", 5 },
        { "2026-11-30-words", "ff4e8d91475022298e3a51d14c2994417b1c0785afa62b41ff93ed2881a3ad63", 6 },
    };

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_OfAnEarlierVersion_OpensIsWholeAndGoesOn(string name, string fingerprint, int entries)
    {
        using var bench = new Bench();
        var folder = Copied(name, bench);
        var before = File.ReadAllBytes(Path.Combine(folder, "study.db"));
        using (var study = StudyFolder.OpenToRead(folder))
        {
            Assert.Equal(fingerprint, study.Daybook.Fingerprint);
            Assert.Equal(entries, study.Daybook.Version);
            Assert.Equal(4, study.Study.Samples.Length);
            Assert.Equal("V-02", Assert.Single(study.Study.Strikes).Target);
            Assert.All(study.Daybook.Files, f => Assert.NotEmpty(study.ReadOriginal(f.Sha256)));
        }

        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder, "study.db")));
        Assert.DoesNotContain(Inspection.Of(folder, everyByte: true, TestContext.Current.CancellationToken).Findings, f => f.Weight == Weight.Stop);
        using (var study = StudyFolder.Open(folder, bench.Clock))
        {
            study.Append(study.Daybook.Version, "Ada", new TextWritten("question", "Does it go on?"));
            Assert.Empty(study.Close());
        }

        Assert.True(Inspection.Of(folder, everyByte: true, TestContext.Current.CancellationToken).IsSound);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_OfAnEarlierVersion_ReturnsFromItsPlainForm(string name, string fingerprint, int entries)
    {
        using var bench = new Bench();
        var folder = Copied(name, bench);
        File.Delete(Path.Combine(folder, "study.db"));
        var copy = StudyCopy.In(folder, Path.Combine(bench.Root, "again"), bench.Clock);
        Assert.True(copy.IsGood);
        Assert.True(copy.FromPlain);
        Assert.Equal((fingerprint, (long)entries), (copy.ReadBack.Fingerprint, copy.ReadBack.Entries));
    }

    [Fact]
    public void Form_OfTheFile_IsOneThatASampleIsKeptOf()
    {
        // A new form needs a new sample: bytes 60 to 63 of an SQLite file are its user version (sqlite.org, file format, 1.3.1), big-endian.
        var kept = Directory.GetDirectories(Repository.Path("tests", "Holdfast.Studies.Tests", "Kept")).Select(f => File.ReadAllBytes(Path.Combine(f, "study.db"))[63]).Distinct();
        using var bench = new Bench();
        bench.Begin().Dispose();
        Assert.Contains(File.ReadAllBytes(Path.Combine(bench.Folder, "study.db"))[63], kept);
    }

    private static string Copied(string name, Bench bench)
    {
        var kept = Repository.Path("tests", "Holdfast.Studies.Tests", "Kept", name);
        foreach (var file in Directory.EnumerateFiles(kept, "*", SearchOption.AllDirectories))
            bench.File(Path.Combine(name, Path.GetRelativePath(kept, file)), File.ReadAllBytes(file));
        return Path.Combine(bench.Root, name);
    }
}
