using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Package;

namespace Holdfast.Studies.Tests.Import;

public class ReviewFileTests
{
    [Fact]
    public void Remarks_TakenInAnsweredClosedAndUndone_AreEntriesLikeOthers()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var path = bench.File("remarks.json", Remarks(1, study.Daybook.Fingerprint, "Why three?", "Which powder?"));
        var taken = Take.Files(study, [path], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.Equal("remarks of a reader", taken.Understandings[0].Reader);
        Assert.Equal(["RM-2.1", "RM-2.2"], study.Study.Remarks.Select(r => r.Id));
        Assert.Equal("Why three?", study.Study.Remarks[0].Pin.Words);
        Assert.Single(study.Study.Originals);
        study.Append(2, "Ada", new RemarkAnswered("RM-2.1", "By power."), new RemarkClosed("RM-2.1"));
        Assert.Equal("By power.", study.Study.Remarks[0].Answer!.Words);
        Assert.NotNull(study.Study.Remarks[0].Closed);
        Assert.Equal(Codes.NothingChanges, Assert.Throws<StudyException>(() => study.Append(4, "Ada", new RemarkClosed("RM-2.1"))).Code);
        Assert.Equal(Codes.UnknownSample, Assert.Throws<StudyException>(() => study.Append(4, "Ada", new RemarkAnswered("RM-2.9", "x"))).Code);
        Assert.Contains("RM-2.1,Bo,1,claim,equilibrium,", Encoding.UTF8.GetString(PlainPackage.Files(study.Daybook)["remarks.csv"]), StringComparison.Ordinal);
        Assert.Equal(study.Study.Remarks, new Daybook(study.Daybook.Entries).Study.Remarks);
        study.UndoLast("Ada");
        study.UndoLast("Ada");
        study.UndoLast("Ada");
        Assert.Empty(study.Study.Remarks);
        Assert.DoesNotContain("remarks.csv", PlainPackage.Files(study.Daybook).Keys);
    }

    [Fact]
    public void Remarks_OnAnotherStudy_AreNotKept()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        foreach (var (entry, hash) in new[] { (1, new string('a', 64)), (2, study.Daybook.Fingerprint), (0, study.Daybook.Fingerprint) })
        {
            var path = bench.File("remarks.json", Remarks(entry, hash, "x"));
            Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => Take.Files(study, [path], new TakeOptions(), "Ada", TestContext.Current.CancellationToken)).Code);
        }

        Assert.Equal(1, study.Daybook.Version);
    }

    [Theory]
    [InlineData("{\"schema\":\"holdfast-review/1\"}")]
    [InlineData("{\"schema\":\"holdfast-review/1\",\"by\":\"B\",\"entry\":1,\"fingerprint\":\"\",\"remarks\":[{\"kind\":\"elsewhere\",\"target\":\"a\",\"quote\":\"\",\"words\":\"w\",\"made\":\"2026-05-12T12:00:00Z\"}]}")]
    [InlineData("{\"schema\":\"holdfast-review/1\",\"by\":\"B\",\"entry\":1,\"fingerprint\":\"\",\"remarks\":[{\"kind\":\"claim\",\"target\":\"a\",\"quote\":\"\",\"words\":\" \",\"made\":\"2026-05-12T12:00:00Z\"}]}")]
    [InlineData("{\"schema\":\"holdfast-review/1\",\"by\":null,\"entry\":\"one\",\"remarks\":7}")]
    [InlineData("{\"schema\":\"holdfast-review/1\",\"by\":")]
    public void Read_FileThatIsNotWhole_IsRefusedInWords(string text)
    {
        Assert.True(ReviewFile.Is(Encoding.UTF8.GetBytes(text)));
        Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => ReviewFile.Read(Encoding.UTF8.GetBytes(text), "r.json")).Code);
    }

    [Fact]
    public void Read_MostRemarksAndLongestWords_AreFromBothSides()
    {
        var hash = new string('0', 64);
        Assert.Equal(ReviewFile.MostRemarks, ReviewFile.Read(Encoding.UTF8.GetBytes(Remarks(1, hash, [.. Enumerable.Repeat("w", ReviewFile.MostRemarks)])), "r.json").Remarks.Length);
        Assert.Equal(Codes.LimitExceeded, Assert.Throws<StudyException>(() => ReviewFile.Read(Encoding.UTF8.GetBytes(Remarks(1, hash, [.. Enumerable.Repeat("w", ReviewFile.MostRemarks + 1)])), "r.json")).Code);
        Assert.Single(ReviewFile.Read(Encoding.UTF8.GetBytes(Remarks(1, hash, new string('w', ReviewFile.Longest))), "r.json").Remarks);
        Assert.Equal(Codes.LimitExceeded, Assert.Throws<StudyException>(() => ReviewFile.Read(Encoding.UTF8.GetBytes(Remarks(1, hash, new string('w', ReviewFile.Longest + 1))), "r.json")).Code);
    }

    [Theory]
    [InlineData("code,mass\nV-01,50\n")]
    [InlineData("{\"schema\":\"holdfast/1\"}")]
    [InlineData("")]
    public void Is_OtherFiles_AreNot(string text) => Assert.False(ReviewFile.Is(Encoding.UTF8.GetBytes(text)));

    private static string Remarks(long entry, string fingerprint, params string[] words) => System.Text.Json.JsonSerializer.Serialize(new
    {
        schema = ReviewFile.Schema,
        study = "ni-study",
        entry,
        fingerprint,
        by = "Bo",
        remarks = words.Select(w => new { kind = "claim", target = "equilibrium", quote = "q", words = w, made = "2026-05-12T12:00:00.000Z" }),
    });
}
