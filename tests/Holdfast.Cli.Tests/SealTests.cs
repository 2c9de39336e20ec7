using System.Security.Cryptography;

namespace Holdfast.Cli.Tests;

/// <summary>Sealing, amending and inspecting as typed (X48), with the exit codes that scripts rely on.</summary>
public class SealTests
{
    [Fact]
    public void Seal_ThenEdit_IsRefused_AndAmendingIsNamedEverywhere()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("describe", "material=zeolite"));
        Assert.Equal(Exit.Done, line.Type("write", "--pdf", "chapter.pdf", "--html", "chapter.html"));
        Assert.Equal(Exit.NeedsDecision, line.Type("seal", "chapter.pdf"));
        Assert.Equal(Exit.NeedsDecision, line.Type("seal", "chapter.pdf", "none.pdf", "--note", "submitted"));
        Assert.Equal(Exit.Done, line.Type("seal", "chapter.pdf", "chapter.html", "--note", "submitted", "--qr", "seal.svg"));
        var seal = line.Out.Split('\n')[0];
        Assert.StartsWith("holdfast-seal/1 ", seal, StringComparison.Ordinal);
        var hash = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(line.Folder, "chapter.pdf"))));
        Assert.Contains($"{hash}  chapter.pdf\n", line.Out, StringComparison.Ordinal);
        Assert.Contains(seal, File.ReadAllText(Path.Combine(line.Folder, "seal.svg")), StringComparison.Ordinal);

        Assert.Equal(Exit.ChangedOrSealed, line.Type("describe", "material=chitosan"));
        Assert.Contains("HF-421", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.ChangedOrSealed, line.Type("seal", "--note", "again"));
        Assert.Equal(Exit.Done, line.Type("inspect", "--every-byte", "--document", "chapter.pdf", "chapter.html", "--seal", seal));
        Assert.Contains("chapter.pdf is as it was sealed", line.Out, StringComparison.Ordinal);

        Assert.Equal(Exit.NeedsDecision, line.Type("amend", " ", "--", "describe", "material=chitosan"));
        Assert.Equal(Exit.NotUnderstood, line.Type("amend", "why", "--", "amend", "why", "--", "describe", "material=chitosan"));
        Assert.Equal(Exit.Done, line.Type("amend", "the material was named wrongly", "--", "describe", "material=chitosan"));
        Assert.Equal(Exit.ChangedOrSealed, line.Type("describe", "material=clay"));
        Assert.Equal(Exit.Done, line.Type("inspect", "--seal", seal));
        Assert.Contains("1 amendment since", line.Out, StringComparison.Ordinal);
        Assert.Contains("the material was named wrongly", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("write", "--html", "later.html"));
        Assert.Contains("the material was named wrongly", File.ReadAllText(Path.Combine(line.Folder, "later.html")), StringComparison.Ordinal);
        Assert.DoesNotContain("amended since", File.ReadAllText(Path.Combine(line.Folder, "chapter.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void OneFlippedByte_IsFound()
    {
        using var line = new Typed();
        line.Begin();
        line.File("chapter.txt", "What is handed in.");
        Assert.Equal(Exit.Done, line.Type("seal", "chapter.txt", "--note", "submitted"));
        var seal = line.Out.Split('\n')[0];
        line.File("chapter.txt", "What is handed iM.");
        Assert.Equal(Exit.Storage, line.Type("inspect", "--document", "chapter.txt"));
        Assert.Contains("HF-432 chapter.txt is not the document that was sealed", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Storage, line.Type("inspect", "--seal", seal[..^1] + (seal[^1] == '0' ? '1' : '0')));
        Assert.Contains("not the one that was sealed", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Storage, line.Type("inspect", "--seal", "nonsense"));
        Assert.Contains("HF-406", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_StudyHasNoSealToCompareWith()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Storage, line.Type("inspect", "--document", line.File("a.txt", "a")));
        Assert.Contains("not sealed", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("inspect"));
    }
}
