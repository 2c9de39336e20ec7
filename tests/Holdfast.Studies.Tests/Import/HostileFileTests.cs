using System.Diagnostics;
using System.Text;
using CsCheck;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Files that are not what they should be: refused in words, quickly, with nothing half kept.</summary>
public class HostileFileTests
{
    // Not a timing: only a reader that hangs, or unpacks everything, takes this long on the slowest machine.
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(60);

    [Fact]
    public void EmptyFile_IsRefusedInWords()
        => Assert.Equal("HF-406", Assert.Single(Read.Bytes([]).Findings).Code);

    [Fact]
    public void BinaryJunk_IsRefusedInWords()
    {
        var junk = new byte[5000];
        for (var i = 0; i < junk.Length; i++)
            junk[i] = (byte)((i * 7919) % 251);
        var understood = Read.Bytes(junk);
        Assert.Equal("HF-406", Assert.Single(understood.Findings).Code);
        Assert.Null(understood.Proposal);
    }

    [Fact]
    public void HugeFile_IsRefusedBySizeWithoutBeingRead()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var path = Path.Combine(bench.Root, "huge.csv");
        using (var stream = File.Create(path))
            stream.SetLength(100L << 20);
        var clock = Stopwatch.StartNew();
        var taken = Take.Files(study, [path], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.True(clock.Elapsed < Hang);
        Assert.Null(taken.Entry);
        var finding = Assert.Single(taken.Understandings[0].Findings);
        Assert.Equal("HF-407", finding.Code);
        Assert.Contains("100 MB; the limit is 64 MB", finding.Sentence, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(study.Files.Originals));
    }

    [Fact]
    public void LinksPipesAndDevices_AreNotOpened()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pipes and devices have names on Unix.");
        using var bench = new Bench();
        using var study = bench.Begin();
        var file = bench.File("real.csv", "sample,m (mg)\nV-01,50\n");
        var link = Path.Combine(bench.Root, "link.csv");
        File.CreateSymbolicLink(link, file);
        var pipe = Path.Combine(bench.Root, "pipe.csv");
        using (var made = Process.Start("mkfifo", pipe))
            made.WaitForExit();
        foreach (var path in new[] { link, pipe, "/dev/zero", Path.Combine(bench.Root, "none.csv") })
        {
            var clock = Stopwatch.StartNew();
            var taken = Take.Files(study, [path], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
            Assert.Equal("HF-406", Assert.Single(taken.Understandings[0].Findings).Code);
            Assert.True(clock.Elapsed < Hang);
        }
        Assert.Equal(1, study.Study.Version);
        File.Delete(pipe);
    }

    [Fact]
    public void Archive_ThatUnpacksToFarMore_IsRefused()
    {
        // 200 MB of zeros pack about 1000:1.
        var bomb = Workbooks.Zip(("xl/workbook.xml", new byte[200 << 20]));
        var clock = Stopwatch.StartNew();
        Assert.Equal("HF-407", Assert.Single(Read.Bytes(bomb, "bomb.xlsx").Findings).Code);
        Assert.True(clock.Elapsed < Hang);
    }

    [Fact]
    public void Archive_WhoseHeaderLies_IsRefused()
    {
        var archive = Workbooks.Zip(("xl/workbook.xml", Encoding.UTF8.GetBytes("<workbook/>" + new string(' ', 1000))));
        // The central directory states the unpacked size 24 bytes after its signature PK\1\2.
        var at = archive.AsSpan().LastIndexOf("PK\u0001\u0002"u8) + 24;
        BitConverter.TryWriteBytes(archive.AsSpan(at), 10);
        Assert.Equal("HF-406", Assert.Single(Read.Bytes(archive, "liar.xlsx").Findings).Code);
    }

    [Fact]
    public void Workbook_WithADocumentType_IsRefused()
    {
        var archive = Workbooks.Zip(("xl/workbook.xml", Encoding.UTF8.GetBytes("<!DOCTYPE a [<!ENTITY b \"c\">]><workbook>&b;</workbook>")));
        Assert.Equal("HF-406", Assert.Single(Read.Bytes(archive, "entity.xlsx").Findings).Code);
    }

    [Fact]
    public void Workbook_NestedTooDeep_IsRefused()
    {
        var archive = Workbooks.Zip(("xl/workbook.xml", Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("<a>", 5000)) + string.Concat(Enumerable.Repeat("</a>", 5000)))));
        Assert.Equal("HF-406", Assert.Single(Read.Bytes(archive, "deep.xlsx").Findings).Code);
    }

    [Fact]
    public void Code_WithHiddenOrTurningCharacters_NeedsADecision()
        => Assert.Equal("rows:no-code", Assert.Single(Read.Text("sample,m (mg)\nV\u202E-01,50\nV-0\u200B2,50\n").Questions).Id);

    [Fact]
    public void Columns_PastTheLimit_AreRefused()
        => Assert.Equal("HF-407", Assert.Single(Read.Text("sample" + string.Concat(Enumerable.Range(0, 5000).Select(_ => ",x")) + "\n").Findings).Code);

    [Theory]
    [InlineData("%%")]
    [InlineData("%%%")]
    [InlineData("% %")]
    [InlineData("%")]
    [InlineData("%±%")]
    public void SignsWithoutANumber_AreAText(string cell)
        => Assert.Empty(Read.Text("sample,removal (%)\nV-01," + cell, study: Read.With("V-01")).Proposal?.Readings.Where(r => r.Value is not null) ?? []);

    [Fact]
    public void ASignInFrontOfANumber_IsItsUnit()
    {
        var (number, unit) = CellParts.Split("%79,8")!.Value;
        Assert.Equal("79,8", number);
        Assert.Equal(CellParts.Split("79,8 %")!.Value.Unit, unit);
        Assert.Equal(CellParts.Split("79,8 %")!.Value.Number, CellParts.Split("% 79,8")!.Value.Number);
    }

    [Fact]
    public void AnyText_IsUnderstoodOrRefusedButNeverThrows()
    {
        var cell = Gen.OneOf(Gen.Const("V-01"), Gen.Const("1,234"), Gen.Const("<LOD"), Gen.Const("C0 (mg/L)"), Gen.Const("sample"), Gen.Const("Abs 1"), Gen.Const("\""), Gen.Const("(("), Gen.Const("3-Mar"),
            Gen.Const("margin"), Gen.Const("low"), Gen.Const("claim"), Gen.Const("apparatus"), Gen.Const("serves"), Gen.Const("type"), Gen.Const("dilution"), Gen.Const("-5"), Gen.Const("1e999"), Gen.Const(""), Gen.String[0, 6]);
        var text = Gen.Select(cell.Array[0, 6].Array[0, 8], Gen.Char[",;\t| "], (rows, mark) => string.Join('\n', rows.Select(r => string.Join(mark, r))));
        text.Sample(t =>
        {
            var understood = Read.Text(t, study: Read.With("V-01"));
            Assert.All(understood.Proposal?.Readings ?? [], r => Assert.True(r.Value is null || double.IsFinite(r.Value.Value)));
        }, iter: 3000, seed: "0000holdfast7");
    }

    [Fact]
    public void AnyBytes_AreUnderstoodOrRefusedButNeverThrow()
        => Gen.Byte.Array[0, 300].Sample(bytes => { _ = Read.Bytes(bytes).Sentence; }, iter: 3000, seed: "0000holdfast8");

    [Fact]
    public void Workbook_WithAnyByteChanged_IsUnderstoodOrRefusedButNeverThrows()
    {
        var good = Workbooks.Of(("Results", false, [["sample", "Abs"], ["V-01", 0.1]]));
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte).Sample((at, value) =>
        {
            var bad = (byte[])good.Clone();
            bad[at] = value;
            _ = Read.Bytes(bad, "book.xlsx", Read.With("V-01")).Sentence;
        }, iter: 1500, seed: "0000holdfast9");
    }
}
