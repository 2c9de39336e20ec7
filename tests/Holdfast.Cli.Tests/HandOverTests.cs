namespace Holdfast.Cli.Tests;

/// <summary>Handing over as typed (X35, X36), with the exit codes that scripts rely on.</summary>
public class HandOverTests
{
    [Fact]
    public void HandOver_ThenInspectAndCopyIn_IsWholeAndTheSameStudy()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("describe", "material=zeolite", "licence=cc by", "shelf=box 4"));
        Assert.Equal(Exit.Done, line.Type("hand-over", "../p.zip", "--bare"));
        Assert.Contains("Every byte was read back", line.Out, StringComparison.Ordinal);
        Assert.Contains("The author is not recorded", line.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("No licence is chosen", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("hand-over", "../p.zip", "--bare"));
        Assert.Equal(Exit.Done, line.Type("hand-over", "../folder", "--bare"));
        Assert.True(File.Exists(Path.Combine(line.Folder, "..", "folder", "README.md")));
        foreach (var package in new[] { "../p.zip", "../folder" })
        {
            Assert.Equal(Exit.Done, line.Type("inspect", "--study", package));
            Assert.Contains("No damage found: every file is as it was handed over.", line.Out, StringComparison.Ordinal);
            Assert.Contains("2 entries, 0 samples, 0 readings, 0 strikes, 0 originals", line.Out, StringComparison.Ordinal);
        }

        Assert.Equal(Exit.Done, line.Type("copy-in", "../p.zip", "../again"));
        line.Folder = Path.Combine(line.Folder, "..", "again");
        Assert.Equal(Exit.Done, line.Type("hand-over", "../p2.zip", "--bare"));
        Assert.Equal(File.ReadAllBytes(Path.Combine(line.Folder, "..", "p.zip")), File.ReadAllBytes(Path.Combine(line.Folder, "..", "p2.zip")));
    }

    [Fact]
    public void Inspect_OfAPackageWithOneFlippedByte_NamesTheFile()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("hand-over", "../folder", "--bare"));
        var readme = Path.Combine(line.Folder, "..", "folder", "NEXT.md");
        var bytes = File.ReadAllBytes(readme);
        bytes[7] ^= 1;
        File.WriteAllBytes(readme, bytes);
        Assert.Equal(Exit.Storage, line.Type("inspect", "--study", "../folder"));
        Assert.Contains("HF-432", line.Error, StringComparison.Ordinal);
        Assert.Contains("NEXT.md", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Storage, line.Type("copy-in", "../folder", "../again"));
    }

    [Fact]
    public void CopyIn_OfAnArchiveThatIsNoPackage_IsRefusedInWords()
    {
        using var line = new Typed();
        line.Begin();
        File.WriteAllBytes(Path.Combine(line.Folder, "other.zip"), Studies.Package.SettledZip.Write([("../x", "1"u8.ToArray())]));
        Assert.Equal(Exit.NeedsDecision, line.Type("copy-in", "other.zip", "again"));
        Assert.Contains("leads out of its folder", line.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(line.Folder, "again")));
    }

    [Theory]
    [InlineData("licence=GPL")]
    [InlineData("orcid=0000-0000-0000-0002")]
    public void Describe_LicenceOrOrcidThatIsNone_IsNotKept(string typed)
    {
        using var line = new Typed();
        line.Begin();
        Assert.NotEqual(Exit.Done, line.Type("describe", typed));
    }
}
