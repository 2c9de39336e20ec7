using System.Security.Cryptography;
using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Store;

/// <summary>Seals: held against hashes that are worked out here by the recipe of docs/sealing.md, apart from the code that makes them.</summary>
public class SealTests
{
    private static readonly byte[] Chapter = Encoding.UTF8.GetBytes("What is handed in, byte for byte. " + new string('x', 200));

    // X48, first part: the line holds the hash of every line of the history up to it.
    [Fact]
    public void Line_HoldsTheHashOfTheHistory()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        var hash = new byte[32];
        foreach (var line in File.ReadAllText(Path.Combine(bench.Folder, "plain", "history.jsonl")).TrimEnd('\n').Split('\n'))
            hash = SHA256.HashData([.. hash, .. Encoding.UTF8.GetBytes(line)]);
        Assert.EndsWith("sha256=" + Convert.ToHexStringLower(hash), seal.Line, StringComparison.Ordinal);
        Assert.StartsWith("holdfast-seal/1 entry=3 ", seal.Line, StringComparison.Ordinal);
        Assert.Equal($"{Convert.ToHexStringLower(SHA256.HashData(Chapter))}  chapter.pdf\n", seal.Checksums);
        using var again = bench.Open();
        Assert.Null(Seal.Differs(again.Daybook, seal.Line));
        Assert.Null(Seal.Differs(again.Daybook, "  " + seal.Line.Replace(" ", "   ", StringComparison.Ordinal).Replace(Convert.ToHexStringLower(hash), Convert.ToHexString(hash), StringComparison.Ordinal) + "\n"));
    }

    [Fact]
    public void EveryFlippedByteOfADocument_IsFound()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        Assert.Null(seal.Differs("any name", Chapter));
        for (var i = 0; i < Chapter.Length; i++)
        {
            var changed = Chapter.ToArray();
            changed[i] ^= 1;
            Assert.Equal((Codes.Damage, Weight.Stop), (seal.Differs("chapter.pdf", changed)!.Code, seal.Differs("chapter.pdf", changed)!.Weight));
        }

        Assert.Contains("was not sealed", seal.Differs("other.pdf", [1])!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void FlippedByteOfTheKeptDocument_IsFoundByInspecting()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        Assert.True(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).IsSound);
        var kept = Path.Combine(bench.Folder, "originals", seal.Documents.Single().Sha256);
        var bytes = File.ReadAllBytes(kept);
        bytes[17] ^= 0x40;
        File.SetAttributes(kept, FileAttributes.Normal);
        File.Delete(kept);
        File.WriteAllBytes(kept, bytes);
        Assert.Contains(Inspection.Of(bench.Folder, everyByte: true, TestContext.Current.CancellationToken).Findings, f => f.Code == Codes.Damage && f.Sentence.Contains("chapter.pdf", StringComparison.Ordinal));
        File.Delete(kept);
        Assert.False(Inspection.Of(bench.Folder, everyByte: false, TestContext.Current.CancellationToken).IsSound);
    }

    // A chain that was made anew from the first changed entry on is whole in itself: only the line tells.
    [Fact]
    public void RewrittenHistory_IsFoundByTheLine()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        using var study = bench.Open();
        var rewritten = new Daybook([]);
        foreach (var entry in study.Daybook.Entries)
            rewritten = rewritten.With(entry.When, entry.Who, entry.Change is StudyBegun begun ? begun with { Title = begun.Title + "!" } : entry.Change);
        Assert.Equal(Codes.Damage, Seal.Differs(rewritten, seal.Line)!.Code);
        Assert.Equal(Codes.Damage, Seal.Differs(study.Daybook.At(2), seal.Line)!.Code);
        Assert.Equal(Codes.Damage, Seal.Differs(study.Daybook, seal.Line.Replace("entry=3", "entry=2", StringComparison.Ordinal))!.Code);
        Assert.All(["", "holdfast-seal/1", seal.Line[..^1], seal.Line + "0", seal.Line.Replace("entry=3", "entry=-3", StringComparison.Ordinal)], l => Assert.Equal(Codes.Unreadable, Seal.Differs(study.Daybook, l)!.Code));
    }

    [Fact]
    public void Amendments_AreNamed_AndTheSealStillHolds()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        using var study = bench.Open();
        Assert.Equal(Codes.Sealed, Assert.Throws<StudyException>(() => Seal.Put(study, "Ada", "again", "Holdfast 0", [])).Code);
        study.Amending = "stopper found broken";
        study.Append(study.Daybook.Version, "Ada", new Struck("V-01", "stopper leaked"));
        Assert.Equal((4L, "stopper found broken", "Ada"), (study.Study.Amendments.Single().Entry, study.Study.Amendments.Single().Reason, study.Study.Amendments.Single().Who));
        Assert.Equal("undo: strike V-01", study.UndoLast("Ada").Change.Says());
        Assert.Null(Seal.Differs(study.Daybook, seal.Line));
        var second = Seal.Put(study, "Ada", "final version", "Holdfast 0.1.0", []);
        Assert.Empty(study.Study.Amendments);
        Assert.Null(Seal.Differs(study.Daybook, second.Line));
        Assert.Null(Seal.Differs(study.Daybook, seal.Line));
        Assert.NotEqual(seal.Fingerprint, second.Fingerprint);
    }

    [Fact]
    public void Copies_BringWhatWasHandedIn()
    {
        using var bench = new Bench();
        var seal = Sealed(bench);
        var copy = StudyCopy.Out(bench.Folder, bench.Folder + "-copy", TimeProvider.System);
        Assert.True(copy.IsGood);
        Assert.Equal(Chapter, File.ReadAllBytes(Path.Combine(copy.Folder, "originals", seal.Documents.Single().Sha256)));
        var returned = StudyCopy.In(Path.Combine(bench.Folder, "plain"), bench.Folder + "-again", TimeProvider.System);
        Assert.True(returned.IsGood);
        using var study = StudyFolder.OpenToRead(returned.Folder);
        Assert.Null(Seal.Differs(study.Daybook, seal.Line));
        Assert.Contains(seal.Line, File.ReadAllText(Path.Combine(returned.Folder, "README.md")), StringComparison.Ordinal);
    }

    private static Seal Sealed(Bench bench)
    {
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50));
        var seal = Seal.Put(study, "Ada", "submitted", "Holdfast 0.1.0", [("chapter.pdf", Chapter)]);
        Assert.Empty(study.Close());
        return seal;
    }
}
