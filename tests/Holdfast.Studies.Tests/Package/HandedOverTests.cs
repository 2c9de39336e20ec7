using System.Security.Cryptography;
using System.Text;
using Holdfast.Statistics;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;

namespace Holdfast.Studies.Tests.Package;

public class HandedOverTests
{
    private const int Spoilt = 1000;

    [Fact]
    public void Return_OfAPackage_GivesTheSameHistoryAndOriginals()
    {
        using var bench = new Bench();
        var (archive, fingerprint) = Packed(bench);
        var path = bench.File("p.zip", archive);
        Assert.True(HandedOver.Is(path));
        var copy = StudyCopy.In(path, Path.Combine(bench.Root, "again"), bench.Clock);
        Assert.True(copy.IsGood, string.Join("; ", copy.Findings.Concat(copy.ReadBack.Findings).Select(f => f.Sentence)));
        Assert.Equal(fingerprint, copy.ReadBack.Fingerprint);
        Assert.Equal(2, copy.ReadBack.Originals);
        Assert.Null(HandedOver.Open(path).PackedElsewhere);
        var names = Directory.GetFiles(Path.Combine(bench.Folder, "plain")).Select(Path.GetFileName);
        Assert.All(names, n => Assert.Equal(File.ReadAllBytes(Path.Combine(bench.Folder, "plain", n!)), File.ReadAllBytes(Path.Combine(bench.Root, "again", "plain", n!))));
    }

    [Fact]
    public void Return_OfAnUnpackedPackage_IsTheSameAndALinkInItIsNamed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights on Windows.");
        using var bench = new Bench();
        var (archive, fingerprint) = Packed(bench);
        var folder = Path.Combine(bench.Root, "unpacked");
        foreach (var (name, bytes) in SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken))
            bench.File(Path.Combine("unpacked", name), bytes);
        Assert.Empty(HandedOver.Open(folder).Check());
        File.CreateSymbolicLink(Path.Combine(folder, "originals", "more.csv"), "/etc/passwd");
        var copy = StudyCopy.In(folder, Path.Combine(bench.Root, "again"), bench.Clock);
        Assert.Equal(fingerprint, copy.ReadBack.Fingerprint);
        Assert.Contains("is a link", Assert.Single(copy.Findings).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_FolderPackedWithItsOwnName_IsRead()
    {
        using var bench = new Bench();
        var (archive, _) = Packed(bench);
        var within = SettledZip.Write(SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken).Select(f => ("pb-study/" + f.Key, (ReadOnlyMemory<byte>)f.Value)));
        Assert.Empty(HandedOver.Of("p.zip", within).Check());
    }

    [Theory]
    [InlineData("tables/t.csv", "its bytes are not those that were handed over")]
    [InlineData("plain/samples.csv", "it is not what the history says")]
    [InlineData("originals/V-01.csv", "no file of the package has its bytes")]
    public void Check_ChangedFile_IsNamed(string name, string what)
    {
        using var bench = new Bench();
        var files = SafeZip.Read(Packed(bench).Archive, "p.zip", TestContext.Current.CancellationToken);
        var changed = files.SetItem(name, [.. files[name], (byte)' ']);
        Assert.Contains(HandedOver.Of("p.zip", Write(changed)).Check(), f => f.Sentence.Contains(name, StringComparison.Ordinal) && f.Sentence.Contains(what, StringComparison.Ordinal));
    }

    [Fact]
    public void Check_FileMoreOrLess_IsNamed()
    {
        using var bench = new Bench();
        var files = SafeZip.Read(Packed(bench).Archive, "p.zip", TestContext.Current.CancellationToken);
        Assert.Contains("put there since", Assert.Single(HandedOver.Of("p.zip", Write(files.Add("tables/own.csv", [1]))).Check()).Sentence, StringComparison.Ordinal);
        Assert.Contains("listed and missing", Assert.Single(HandedOver.Of("p.zip", Write(files.Remove("tables/t.csv"))).Check()).Sentence, StringComparison.Ordinal);
        Assert.Contains("it is missing", Assert.Single(HandedOver.Of("p.zip", Write(files.Remove("SHA256SUMS"))).Check()).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_ArchiveOfSomethingElse_IsNoPackage()
        => Assert.Equal(Codes.NotAStudy, Assert.Throws<StudyException>(() => HandedOver.Of("p.zip", SettledZip.Write([("a.csv", "1"u8.ToArray())])).Check()).Code);

    [Fact]
    public void Of_OneByteChanged_IsFoundWhereverItIs()
    {
        using var bench = new Bench();
        var (archive, _) = Packed(bench);
        var missed = new List<int>();
        for (var at = 0; at < archive.Length; at += 3)
        {
            var flipped = (byte[])archive.Clone();
            flipped[at] ^= (byte)(1 << (at % 8));
            if (!IsFound(flipped))
                missed.Add(at);
        }

        Assert.Empty(missed);

        static bool IsFound(byte[] bytes)
        {
            try
            {
                var package = HandedOver.Of("p.zip", bytes);
                return package.PackedElsewhere is not null || !package.Check().IsEmpty;
            }
            catch (StudyException)
            {
                return true;
            }
        }
    }

    [Fact]
    public void Return_OfAThousandSpoiltPackages_DoesNoHarm()
    {
        using var bench = new Bench();
        var (archive, fingerprint) = Packed(bench);
        var inside = SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken);
        var outside = bench.File("outside.txt", "as it was");
        var (refused, found, whole) = (0, 0, 0);
        for (var number = 0; number < Spoilt; number++)
        {
            var bytes = Spoil(archive, inside, new SeededStream((ulong)number, "packages"));
            try
            {
                var package = HandedOver.Of("p.zip", bytes);
                var findings = package.Check();
                if (findings.IsEmpty)
                {
                    Assert.Equal(fingerprint, package.History().Fingerprint);
                    Assert.All(inside, f => Assert.Equal(f.Value, package.Read(f.Key)));
                }

                if (number % 10 == 0)
                {
                    var again = Path.Combine(bench.Root, "again");
                    var (study, _) = package.Return(again, bench.Clock);
                    using (study)
                        Assert.Equal(package.History().Fingerprint, study.Daybook.Fingerprint);
                    foreach (var file in Directory.EnumerateFiles(again, "*", SearchOption.AllDirectories))
                        File.SetAttributes(file, FileAttributes.Normal);
                    Directory.Delete(again, recursive: true);
                }

                (found, whole) = findings.IsEmpty ? (found, whole + 1) : (found + 1, whole);
            }
            catch (StudyException)
            {
                refused++;
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"refused {refused}, damage named {found}, whole {whole}");
        Assert.Equal(Spoilt, refused + found + whole);
        Assert.True(refused > 100 && found > 100, $"refused {refused}, damage named {found}, whole {whole}");
        Assert.Equal("as it was", File.ReadAllText(outside));
        Assert.Equal(["ni-study", "outside.txt"], Directory.GetFileSystemEntries(bench.Root).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    // Bytes of the archive, or files inside a sound archive: flipped, cut, doubled, renamed, emptied, replaced by another.
    private static byte[] Spoil(byte[] archive, System.Collections.Immutable.ImmutableSortedDictionary<string, byte[]> files, SeededStream chance)
    {
        string[] names = [.. files.Keys], evil = ["../../outside.txt", "/tmp/outside.txt", "plain/../../outside.txt", "plain\\history.jsonl", "PLAIN/HISTORY.JSONL", "originals/con", "a\u202Eb"];
        var name = names[chance.Below(names.Length)];
        var other = names[chance.Below(names.Length)];
        var bytes = (byte[])archive.Clone();
        switch (chance.Below(9))
        {
            case 0:
                for (var i = chance.Below(8); i >= 0; i--)
                    bytes[chance.Below(bytes.Length)] ^= (byte)(1 << chance.Below(8));
                return bytes;
            case 1:
                return bytes[..chance.Below(bytes.Length)];
            case 2:
                var at = chance.Below(bytes.Length);
                return [.. bytes[..at], .. bytes[chance.Below(bytes.Length)..], .. bytes[at..]];
            case 3:
                return Write(files.SetItem(name, files[other]));
            case 4:
                var inner = (byte[])files[name].Clone();
                if (inner.Length > 0)
                    inner[chance.Below(inner.Length)] ^= (byte)(1 << chance.Below(8));
                return Write(files.SetItem(name, inner));
            case 5:
                return Write(files.Remove(name));
            case 6:
                return Write(files.Add(evil[chance.Below(evil.Length)], files[other]));
            case 7:
                return Write(files.SetItem(name, files[name][..chance.Below(files[name].Length + 1)]));
            default:
                return SettledZip.Write(files.Append(new(name, files[other])).Select(f => (f.Key, (ReadOnlyMemory<byte>)f.Value)));
        }
    }

    private static byte[] Write(IEnumerable<KeyValuePair<string, byte[]>> files) => SettledZip.Write(files.Select(f => (f.Key, (ReadOnlyMemory<byte>)f.Value)));

    // A package as the trade packs it, made by hand: the plain form, the originals under their own names, one more table, fingerprints.
    private static (byte[] Archive, string Fingerprint) Packed(Bench bench)
    {
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50.2), new Struck("R-0002", "stopper leaked"));
        study.Append(3, "Ada", Bench.Take(study, "V-02", 49.8));
        var files = new SortedDictionary<string, byte[]>(StringComparer.Ordinal) { ["README.md"] = "a study"u8.ToArray(), ["tables/t.csv"] = "a,b\r\n1,2\r\n"u8.ToArray() };
        foreach (var (name, bytes) in PlainPackage.Files(study.Daybook))
            files["plain/" + name] = bytes;
        foreach (var file in study.Daybook.Files)
            files["originals/" + file.FileName] = study.ReadOriginal(file.Sha256);
        files["SHA256SUMS"] = Encoding.UTF8.GetBytes(string.Concat(files.Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Value))}  {f.Key}\n")));
        study.Close();
        return (Write(files), study.Daybook.Fingerprint);
    }
}
