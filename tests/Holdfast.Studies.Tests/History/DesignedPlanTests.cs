using Holdfast.Studies.History;

namespace Holdfast.Studies.Tests.History;

/// <summary>Designed vessels, the freeze and amendments in the history.</summary>
public class DesignedPlanTests
{
    private static PlannedVessel Row(string code) => new(code, "ISO", SampleRole.Vessel, 1, 1, 1, 2)
    {
        InitialConcentration = 20,
        Volume = 25,
        Mass = 50,
        ContactTime = 1440,
        StartsAt = 0,
        Expected = 4,
        Dilution = 1,
    };

    private static SeriesDesigned Plan(params string[] codes) => new(
        [new("capacity", ["ISO"], "capacity", "qm within 8 %.")], "1589", System.Collections.Immutable.ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal),
        [.. codes.Select(Row)], [new("coverage", "The top level fills 70 % of the sites.", null)]);

    [Fact]
    public void Designed_OneEntry_MakesSamplesThatAreNoEvidenceYetAndIsUndoneWhole()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        study.Append(1, "Ada", Plan("A-1", "A-2"));
        Assert.Equal("D-2", Assert.Single(study.Study.Designs).Id);
        Assert.Equal(["A-1", "A-2"], study.Study.Samples.Select(s => s.Code));
        Assert.All(study.Study.Samples, s => Assert.True(study.Study.IsOnlyPlanned(s)));
        Assert.Equal("ISO", study.Study.Samples[0].Series);
        Assert.Equal(50, study.Study.Planned("A-1")!.Mass);

        // What is taken in arrives on its planned row.
        study.Append(2, "Ada", Bench.Take(study, "A-1", 50.2));
        Assert.Equal(2, study.Study.Samples.Length);
        Assert.False(study.Study.IsOnlyPlanned(study.Study.Samples[0]));
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.Append(3, "Ada", Plan("A-2", "A-3"))).Code);
        study.UndoLast("Ada");
        study.UndoLast("Ada");
        Assert.Empty(study.Study.Designs);
        Assert.Empty(study.Study.Samples);
    }

    [Fact]
    public void Freeze_WithOpenWarning_IsRefusedAndWithAnAnswerHolds()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.Append(1, "Ada", new PlanFrozen("ab", []))).Code);
        study.Append(1, "Ada", Plan("A-1"));
        Assert.Equal("HF-452", Assert.Throws<StudyException>(() => study.Append(2, "Ada", new PlanFrozen("ab", []))).Code);
        study.Append(2, "Ada", new MarginFixed("capacity", -10, 10, "%"), new PlanFrozen("ab", [new("coverage", "", "the powder is dear")]));
        Assert.Equal("the powder is dear", study.Study.Designs[0].Warnings[0].Answer);
        Assert.Equal("ab", study.Study.PlanFrozen!.Sha256);

        // Margins and rows change only with a reason from here on, and an undo is no way round.
        Assert.Equal("HF-452", Assert.Throws<StudyException>(() => study.Append(4, "Ada", new MarginFixed("capacity", -20, 20, "%"))).Code);
        Assert.Equal("HF-452", Assert.Throws<StudyException>(() => study.Append(4, "Ada", Plan("A-9"))).Code);
        Assert.Equal("HF-452", Assert.Throws<StudyException>(() => study.UndoLast("Ada")).Code);
        Assert.Equal("HF-425", Assert.Throws<StudyException>(() => study.Append(4, "Ada", new PlanFrozen("ab", []))).Code);
        study.Append(4, "Ada", new Amended("the stock was short"), new MarginFixed("capacity", -20, 20, "%"));
        var amendment = Assert.Single(study.Study.PlanAmendments);
        Assert.Equal(("the stock was short", "fix margin capacity"), (amendment.Reason, amendment.What));

        // Readings are no change of the plan.
        study.Append(6, "Ada", Bench.Take(study, "A-1", 50.2));
    }
}
