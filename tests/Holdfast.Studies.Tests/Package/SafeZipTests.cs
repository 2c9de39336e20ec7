using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Holdfast.Studies.Import;
using Holdfast.Studies.Package;

namespace Holdfast.Studies.Tests.Package;

public class SafeZipTests
{
    [Fact]
    public void Read_WhatWasWritten_IsTheSameAndWrittenTwiceTheSameBytes()
    {
        (string, ReadOnlyMemory<byte>)[] files = [("b/ä.csv", "1"u8.ToArray()), ("a.txt", "two"u8.ToArray()), ("empty", Array.Empty<byte>())];
        var archive = SettledZip.Write(files);
        Assert.Equal(archive, SettledZip.Write(files));
        var read = SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken);
        Assert.Equal(["a.txt", "b/ä.csv", "empty"], read.Keys);
        Assert.Equal("two", Encoding.UTF8.GetString(read["a.txt"]));
    }

    // Names by which an archive reaches out of its folder, overwrites, or misleads: OWASP file upload cheat sheet; CWE-22; Windows device names (common practice); UTS 36 for signs that cannot be seen.
    [Theory]
    [InlineData("../outside.txt")]
    [InlineData("a/../../outside.txt")]
    [InlineData("/etc/passwd")]
    [InlineData("C:/windows.txt")]
    [InlineData("a\\..\\b.txt")]
    [InlineData("a//b.txt")]
    [InlineData("./a.txt")]
    [InlineData("a/b.txt ")]
    [InlineData("a./b.txt")]
    [InlineData("nul")]
    [InlineData("x/COM1.csv")]
    [InlineData("a\0.txt")]
    [InlineData("a\nb.txt")]
    [InlineData("a:stream")]
    [InlineData("gpj\u202Eexe.txt")]
    [InlineData("a\u200Bb.txt")]
    public void Read_NameThatMayNotBe_IsRefused(string name)
    {
        var refused = Assert.Throws<StudyException>(() => SafeZip.Read(SettledZip.Write([("fine.txt", "1"u8.ToArray()), (name, "2"u8.ToArray())]), "p.zip", TestContext.Current.CancellationToken));
        Assert.Equal(Codes.Unreadable, refused.Code);
        Assert.DoesNotContain(refused.Message, char.IsControl);
    }

    [Theory]
    [InlineData("originals/run 1 (May).csv")]
    [InlineData("tables/kinetics-kin-05.csv")]
    [InlineData("originals/Größe_µm.xlsx")]
    [InlineData("common.csv")]
    public void WhatIsWrong_OrdinaryName_IsNothing(string name) => Assert.Null(SafeZip.WhatIsWrong(name));

    [Fact]
    public void WhatIsWrong_LongestName_IsFromBothSides()
    {
        Assert.Null(SafeZip.WhatIsWrong(new string('a', 240)));
        Assert.NotNull(SafeZip.WhatIsWrong(new string('a', 241)));
        Assert.NotNull(SafeZip.WhatIsWrong(""));
    }

    [Theory]
    [InlineData("a.txt", "A.TXT")]
    [InlineData("\u00E4.txt", "a\u0308.txt")]
    [InlineData("a.txt", "a.txt")]
    public void Read_NameThatIsThereTwice_IsRefused(string one, string other)
        => Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => SafeZip.Read(SettledZip.Write([(one, "1"u8.ToArray()), (other, "2"u8.ToArray())]), "p.zip", TestContext.Current.CancellationToken)).Code);

    [Fact]
    public void Read_Link_IsRefused()
    {
        using var to = new MemoryStream();
        using (var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true))
        {
            var link = zip.CreateEntry("link");
            link.ExternalAttributes = unchecked((int)0xA1FF0000); // S_IFLNK, as unzip programs take it
            using var target = link.Open();
            target.Write("/etc/passwd"u8);
        }

        Assert.Contains("a link", Assert.Throws<StudyException>(() => SafeZip.Read(to.ToArray(), "p.zip", TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Bomb_IsRefusedBeforeItIsUnpacked()
    {
        // 64 MB of zeros in about 64 KB: DEFLATE gives 1032:1 at most (Fifield, WOOT 2019).
        var bomb = SettledZip.Write([("zeros.csv", new byte[64 << 20])]);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(Codes.LimitExceeded, Assert.Throws<StudyException>(() => SafeZip.Read(bomb, "p.zip", TestContext.Current.CancellationToken)).Code);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 16 << 20);
    }

    [Fact]
    public void Read_MoreEntriesThanMayBe_IsRefused()
    {
        var many = SettledZip.Write(Enumerable.Range(0, Limits.ArchiveEntries + 1).Select(i => (i.ToString(System.Globalization.CultureInfo.InvariantCulture), (ReadOnlyMemory<byte>)Array.Empty<byte>())));
        Assert.Equal(Codes.LimitExceeded, Assert.Throws<StudyException>(() => SafeZip.Read(many, "p.zip", TestContext.Current.CancellationToken)).Code);
        Assert.Equal(Limits.ArchiveEntries, SafeZip.Read(SettledZip.Write(Enumerable.Range(0, Limits.ArchiveEntries).Select(i => (i.ToString(System.Globalization.CultureInfo.InvariantCulture), (ReadOnlyMemory<byte>)Array.Empty<byte>()))), "p.zip", TestContext.Current.CancellationToken).Count);
    }

    [Fact]
    public void Read_HeaderThatLiesAboutTheSize_IsRefused()
    {
        var archive = SettledZip.Write([("a.csv", Encoding.ASCII.GetBytes(new string('1', 5000) + "end"))]);
        var central = archive.AsSpan().IndexOf("PK\u0001\u0002"u8);
        BinaryPrimitives.WriteInt32LittleEndian(archive.AsSpan(central + 24), 10); // uncompressed size, APPNOTE 4.3.12
        Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken)).Code);
    }

    [Fact]
    public void Read_TwoEntriesOverTheSameBytes_IsRefusedOrGivesWhatEachSays()
    {
        // An archive whose central directory names one local part twice: the second name is another file with the same bytes, or the archive is refused; never a crash.
        var archive = SettledZip.Write([("a.csv", "1,2"u8.ToArray()), ("b.csv", "1,2"u8.ToArray())]);
        var second = archive.AsSpan().LastIndexOf("PK\u0001\u0002"u8);
        BinaryPrimitives.WriteInt32LittleEndian(archive.AsSpan(second + 42), 0); // offset of the local header
        try
        {
            Assert.All(SafeZip.Read(archive, "p.zip", TestContext.Current.CancellationToken).Values, bytes => Assert.Equal("1,2"u8.ToArray(), bytes));
        }
        catch (StudyException e)
        {
            Assert.Equal(Codes.Unreadable, e.Code);
        }
    }
}
