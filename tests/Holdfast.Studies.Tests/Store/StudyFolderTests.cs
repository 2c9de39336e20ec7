using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests.Store;

public class StudyFolderTests
{
    [Fact]
    public void Study_BegunClosedAndOpened_IsTheSame()
    {
        using var bench = new Bench();
        string fingerprint;
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", Bench.Take(study, "V-01", 50.2), new Struck("R-0002", "bubble in the line"));
            fingerprint = study.Daybook.Fingerprint;
            study.Close();
        }
        using var again = StudyFolder.OpenToRead(bench.Folder);
        Assert.Equal(fingerprint, again.Study.Fingerprint);
        Assert.Equal(3, again.Study.Version);
        Assert.Equal(50.2, again.Study.Sample("V-01")!.Number(Property.Named("mass")!));
        Assert.True(again.Study.IsStruck(again.Study.Reading("R-0002")!));
        Assert.Equal("2026-05-12T14:00:00.0000000+02:00", again.Daybook.Entries[0].When.ToString("o", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Append_WithAnOldVersion_IsRefusedAndKeepsNothing()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", new DetailSet("water", "tap"));
        var refusal = Assert.Throws<StudyException>(() => study.Append(1, "Bo", new DetailSet("water", "rain")));
        Assert.Equal("HF-420", refusal.Code);
        Assert.Equal("tap", study.Study.Details["water"]);
    }

    [Fact]
    public void Append_OneOfSeveralNotPermitted_KeepsNone()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var refusal = Assert.Throws<StudyException>(() => study.Append(1, "Ada", new DetailSet("water", "tap"), new Struck("V-99", "no such vial")));
        Assert.Equal("HF-404", refusal.Code);
        Assert.Equal(1, study.Study.Version);
    }

    [Fact]
    public void SecondWriter_WhileOneWrites_IsToldWhoHoldsIt()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var refusal = Assert.Throws<StudyException>(() => bench.Open().Dispose());
        Assert.Equal("HF-422", refusal.Code);
        Assert.Contains("process", refusal.Message, StringComparison.Ordinal);
        using var reader = StudyFolder.OpenToRead(bench.Folder);
        Assert.False(reader.CanWrite);
    }

    [Fact]
    public void Undo_OfEverything_LeavesTheBeginningAndRedoBringsAllBack()
    {
        // X18: all gone, all back after a restart, every step in the history.
        using var bench = new Bench();
        Study before;
        using (var study = bench.Begin())
        {
            study.Append(1, "Ada", Bench.Take(study, "V-01", 50));
            study.Append(2, "Ada", new Struck("V-01", "stopper leaked"));
            before = study.Study;
            Assert.Equal("undo: strike V-01", study.UndoLast("Ada").Change.Says());
            study.UndoLast("Ada");
            Assert.Empty(study.Study.Samples);
            Assert.Empty(study.Study.Originals);
            Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.UndoLast("Ada")).Code);
            study.Close();
        }
        using var again = bench.Open();
        again.RedoLast("Ada");
        again.RedoLast("Ada");
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => again.RedoLast("Ada")).Code);
        Same.Study(before, again.Study);
        Assert.Equal(7, again.Daybook.Entries.Length);
    }

    [Fact]
    public void Strike_WithoutReason_IsRefused()
    {
        // X19.
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50));
        Assert.Throws<ArgumentException>(() => study.Append(2, "Ada", new Struck("V-01", " ")));
        Assert.Equal(2, study.Study.Version);
    }

    [Fact]
    public void Restore_AfterStrike_GivesTheSameNumbersAndKeepsBothEntries()
    {
        // X20, the part that is the history's.
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50.123456789012345));
        var before = study.Study;
        study.Append(2, "Ada", new Struck("V-01", "stopper leaked"));
        Assert.True(study.Study.IsStruck(study.Study.Sample("V-01")!));
        study.Append(3, "Ada", new Restored("V-01", "it was V-11 that leaked"));
        Same.Study(before, study.Study);
        Assert.Equal(4, study.Daybook.Entries.Length);
    }

    [Fact]
    public void ReadingIds_AfterAnUndoneTake_AreNotGivenAgain()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50));
        study.UndoLast("Ada");
        study.Append(3, "Ada", Bench.Take(study, "V-02", 51));
        Assert.Equal(["R-0003", "R-0004"], study.Study.Readings.Select(r => r.Id));
    }

    [Fact]
    public void Sealed_Study_TakesOnlyAmendments()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", new Sealed("submitted"));
        Assert.Equal("HF-421", Assert.Throws<StudyException>(() => study.Append(2, "Ada", new DetailSet("water", "tap"))).Code);
        var sealedAs = study.Daybook.Fingerprint;
        study.Append(2, "Ada", new Amended("the water was named wrongly"), new DetailSet("water", "rain"));
        Assert.Equal("rain", study.Study.Details["water"]);
        Assert.NotEqual(sealedAs, study.Daybook.Fingerprint);
        Assert.Equal("HF-421", Assert.Throws<StudyException>(() => study.Append(4, "Ada", new DetailSet("water", "tap"))).Code);
    }

    [Fact]
    public void Clock_SteppingBack_IsNotedAndOrderStays()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        bench.Clock.Now = bench.Clock.Now.AddYears(-1);
        study.Append(1, "Ada", new DetailSet("water", "tap"));
        Assert.Equal(["HF-433"], study.Daybook.ClockFindings().Select(f => f.Code));
        Assert.Equal([1L, 2L], study.Daybook.Entries.Select(e => e.Number));
    }

    [Fact]
    public void Open_FolderWithoutStudy_SaysSo()
    {
        using var bench = new Bench();
        Assert.Equal("HF-434", Assert.Throws<StudyException>(() => StudyFolder.OpenToRead(bench.Root)).Code);
        bench.File("other/study.db", "this is no database, and long enough to have been a header of one if it were");
        Assert.Contains(Assert.Throws<StudyException>(() => StudyFolder.OpenToRead(Path.Combine(bench.Root, "other"))).Code, new[] { "HF-432", "HF-434" });
        Assert.Equal("HF-434", Assert.Throws<StudyException>(() => { bench.Begin().Close(); bench.Begin(); }).Code);
    }

    [Fact]
    public void Open_StudyOfANewerForm_IsRefusedAndLeftAlone()
    {
        using var bench = new Bench();
        bench.Begin().Close();
        using (var raw = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(bench.Folder, "study.db")};Pooling=False"))
        {
            raw.Open();
            using var command = raw.CreateCommand();
            command.CommandText = "PRAGMA user_version = 99";
            command.ExecuteNonQuery();
        }
        Assert.Equal("HF-435", Assert.Throws<StudyException>(() => StudyFolder.OpenToRead(bench.Folder)).Code);
    }

    [Fact]
    public void Entry_ChangedInPlace_IsRefusedByTheFileItself()
    {
        using var bench = new Bench();
        bench.Begin().Close();
        using var raw = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(bench.Folder, "study.db")};Pooling=False");
        raw.Open();
        using var command = raw.CreateCommand();
        command.CommandText = "UPDATE entry SET body = x'00'";
        Assert.Contains("never changed", Assert.Throws<Microsoft.Data.Sqlite.SqliteException>(() => command.ExecuteNonQuery()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Original_Kept_IsReadOnlyAndReadsBack()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        // SHA-256 of "abc": FIPS 180-2, appendix B.1.
        var name = study.KeepOriginal("abc"u8);
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", name);
        Assert.Equal("abc"u8.ToArray(), study.ReadOriginal(name));
        Assert.True(File.GetAttributes(study.Files.Original(name)).HasFlag(FileAttributes.ReadOnly));
        Assert.Equal("HF-432", Assert.Throws<StudyException>(() => study.ReadOriginal(new string('0', 64))).Code);
        Assert.Throws<ArgumentException>(() => study.ReadOriginal("../study.db"));
    }
}
