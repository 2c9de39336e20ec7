using Holdfast.Studies.History;

namespace Holdfast.Studies.Tests.History;

/// <summary>Planned work, named moments and blocks of cells in the history.</summary>
public class PlanTests
{
    [Fact]
    public void Plan_PlannedDoneAndUndone_IsWhatTheHistorySays()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", new WorkPlanned("read at 240 min", "equilibrium-120", 3, ["240 min"]), new WorkPlanned("buy stoppers", null, null, []));
        Assert.Equal(["P-2", "P-3"], study.Study.Plan.Select(p => p.Id));
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.Append(3, "Ada", new WorkPlanned("buy stoppers", null, null, []))).Code);
        study.Append(3, "Ada", new WorkDone("P-3"));
        Assert.NotNull(study.Study.Plan[1].Done);
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.Append(4, "Ada", new WorkDone("P-3"))).Code);
        // Done work may be planned again.
        study.Append(4, "Ada", new WorkPlanned("buy stoppers", null, null, []));
        study.UndoLast("Ada");
        study.UndoLast("Ada");
        Assert.Null(study.Study.Plan[1].Done);
        study.Append(study.Study.Version, "Ada", new WorkWithdrawn("P-2", null));
        Assert.Equal("buy stoppers", Assert.Single(study.Study.Plan).Work);
        Assert.Equal("HF-404", Assert.Throws<StudyException>(() => study.Append(study.Study.Version, "Ada", new WorkDone("P-2"))).Code);
    }

    [Fact]
    public void Block_OverRecordedCells_AsksForAReasonAndIsUndoneWhole()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Bench.Take(study, "V-01", 50.2), Bench.Take(study, "V-02", 50.1));
        var before = study.Study;
        Fact Typed(double mass) => new("mass", mass, null, null, null, "typed", new Origin(null, "typed at the bench", null, 0, null));
        Assert.Throws<ArgumentException>(() => study.Append(3, "Ada", new BlockTyped([new TypedCell("V-01", Typed(40))], null)));
        Assert.Equal("HF-404", Assert.Throws<StudyException>(() => study.Append(3, "Ada", new BlockTyped([new TypedCell("V-01", Typed(40)), new TypedCell("V-77", Typed(41))], "read twice"))).Code);
        study.Append(3, "Ada", new BlockTyped([new TypedCell("V-01", Typed(40)), new TypedCell("V-02", Typed(41))], "read twice"));
        var mass = Property.Named("mass")!;
        Assert.Equal([40, 41], study.Study.Samples.Select(s => s.Number(mass)!.Value));
        study.UndoLast("Ada");
        Same.Study(before, study.Study);
    }

    [Fact]
    public void Mark_WithoutAName_IsRefused()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        Assert.Throws<ArgumentException>(() => study.Append(1, "Ada", new Marked(" ")));
        study.Append(1, "Ada", new Marked("sent to supervisor"));
        Assert.Equal("mark “sent to supervisor”", study.Daybook.Entries[^1].Change.Says());
    }
}
