using System.Globalization;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

public class TakeTests
{
    [Fact]
    public void Folder_OfMixedFiles_IsUnderstoodWithinFiveSecondsAndUnknownOnesStayVisible()
    {
        // X10: fourteen files, readings before their vessels by name, some no table at all.
        using var bench = new Bench();
        using var study = bench.Begin();
        for (var i = 1; i <= 9; i++)
            bench.File("drop/a-run" + Digit(i) + ".csv", "sample;Abs 1;Abs 2\nV-0" + Digit(i) + ";0,1" + Digit(i) + ";0,2" + Digit(i) + "\n");
        bench.File("drop/vessels.csv", "sample,m (mg)\n" + string.Concat(Enumerable.Range(1, 9).Select(i => "V-0" + Digit(i) + ",50\n")));
        bench.File("drop/claims.txt", "claim\tseries\nequilibrium-reached\tKIN\n");
        bench.File("drop/deep/letter.txt", "Dear Bo,\nthe pump is broken.\n");
        bench.File("drop/picture.tif", [0x49, 0x49, 0x2A, 0, 8, 0, 0, 0, 0, 0, 0, 1, 2, 3]);
        bench.File("drop/empty.csv", "");
        var taken = Take.Files(study, [Path.Combine(bench.Root, "drop")], new TakeOptions { SkipRefused = true }, "Ada", TestContext.Current.CancellationToken);
        Assert.Equal(14, taken.Understandings.Length);
        Assert.NotNull(taken.Entry);
        Assert.Equal(18, study.Study.Readings.Length);
        Assert.Equal(Enumerable.Range(1, 18).Select(Bench.Id), study.Study.Readings.Select(r => r.Id));
        Assert.Equal(["empty.csv", "letter.txt", "picture.tif"], taken.Understandings.Where(u => u.Proposal is null).Select(u => u.FileName).Order(StringComparer.Ordinal));
        Assert.All(taken.Understandings.Where(u => u.Proposal is null), u => Assert.NotEmpty(u.Findings));
        Assert.Equal(2, study.Study.Version);
    }

    [Fact]
    public void File_DroppedAgainUnderAnotherName_IsSaidToBeTakenInAlready()
    {
        // X11.
        using var bench = new Bench();
        using var study = bench.Begin();
        var first = bench.File("run.csv", "sample,type,Abs\nblank 1,blank,0.1\n");
        Take.Files(study, [first], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        var again = Take.Files(study, [bench.File("renamed.csv", File.ReadAllBytes(first))], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.Null(again.Entry);
        var finding = Assert.Single(again.Understandings[0].Findings);
        Assert.Equal("HF-405", finding.Code);
        Assert.Contains("already taken in on 12 May 2026 as run.csv, from R-0001", finding.Sentence, StringComparison.Ordinal);

        // After the take is undone the same file may come again.
        study.UndoLast("Ada");
        Assert.NotNull(Take.Files(study, [first], new TakeOptions(), "Ada", TestContext.Current.CancellationToken).Entry);
        Assert.Equal("R-0002", Assert.Single(study.Study.Readings).Id);
    }

    [Fact]
    public void Rehearsal_AndOpenQuestions_KeepNothing()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var good = bench.File("vessels.csv", "sample,m (mg)\nV-01,50\n");
        var open = bench.File("open.csv", "sample\tC0 (mg/L)\nV-01\t1,234\n");
        var rehearsed = Take.Files(study, [good], new TakeOptions { Rehearse = true }, "Ada", TestContext.Current.CancellationToken);
        Assert.Null(rehearsed.Entry);
        Assert.Equal("1 row: 1 ready", rehearsed.Understandings[0].Sentence);
        var asked = Take.Files(study, [good, open], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.Null(asked.Entry);
        Assert.Equal("decimal", Assert.Single(asked.Open).Id);
        Assert.Equal(1, study.Study.Version);
        Assert.Empty(Directory.GetFiles(study.Files.Originals));

        var answered = Take.Files(study, [good, open], new TakeOptions { Answers = Answers.None.With("open.csv|decimal", "comma") }, "Ada", TestContext.Current.CancellationToken);
        Assert.Equal(2, answered.Entry!.Number);
        Assert.Equal(1.234, study.Study.Sample("V-01")!.Facts["initial-concentration"].Value);
        Assert.Equal("undo: take in vessels.csv and 1 more", study.UndoLast("Ada").Change.Says());
        Assert.Empty(study.Study.Samples);
    }

    [Fact]
    public void TwentyFourRows_TakenUndoneRestartedRedone_AreAllBack()
    {
        // X18.
        using var bench = new Bench();
        var file = bench.File("vessels.csv", "sample,m (mg)\n" + string.Concat(Enumerable.Range(1, 24).Select(i => "V-" + Digit(i) + "," + Digit(i) + ".5\n")));
        Study taken;
        using (var study = bench.Begin())
        {
            Take.Files(study, [file], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
            taken = study.Study;
            Assert.Equal(24, taken.Samples.Length);
            study.UndoLast("Ada");
            Assert.Empty(study.Study.Samples);
            study.Close();
        }
        using var again = bench.Open();
        again.RedoLast("Ada");
        Same.Study(taken, again.Study);
        Assert.Equal(["begin ni-study", "take in vessels.csv", "undo: take in vessels.csv", "redo: take in vessels.csv"], again.Daybook.Entries.Select(e => e.Change.Says()));
    }

    [Fact]
    public void Original_OfATake_IsTheFileByteForByte()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. "sample,m (mg)\r\nV-01,50\r\n"u8];
        Take.Files(study, [bench.File("vessels.csv", bytes)], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.Equal(bytes, study.ReadOriginal(Assert.Single(study.Study.Originals).Sha256));
    }

    [Fact]
    public void Readers_FoundByReflection_AreTheseAndNoOthers()
        => Assert.Equal(["workbook", "JCAMP-DX spectrum", "CIF", "delimited text"], FileReaders.All.Select(r => r.Name));

    private static string Digit(int number) => number.ToString(CultureInfo.InvariantCulture);
}
