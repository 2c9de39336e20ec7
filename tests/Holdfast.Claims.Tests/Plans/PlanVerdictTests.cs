using Holdfast.Claims.Plans;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Claims.Tests.Plans;

/// <summary>The rules that read a plan, on a study that was begun with one: kept, frozen, then done as planned or not (defence.md G1 to G8, common practice).</summary>
public class PlanVerdictTests
{
    private static readonly PlanDesign Plan = PlanWarningsTests.Plan(["equilibrium-reached", "smallest-sufficient-dose"], ("scatter", "1"), ("per-day", "24"));
    private static readonly string[] OfThePlan = ["blocks-complete", "margins-fixed-before", "order-randomised", "replicates-as-planned"];

    [Fact]
    public void Of_StudyDoneAsPlanned_AllHold()
    {
        var verdicts = Verdicts(Done(s => s));
        Assert.Equal(OfThePlan, verdicts.Select(v => v.Claim.Rule).Distinct().Order(StringComparer.Ordinal));
        Assert.All(verdicts, v => Assert.True(v.Ruling == Ruling.Holds, v.Reason));
        Assert.All(verdicts, v => Assert.NotNull(v.Scope));
        Assert.DoesNotContain(verdicts.Where(v => v.Claim.Rule == "margins-fixed-before"), v => v.Warnings.Any());
    }

    // A plan of which nothing was read is no evidence, and asks nothing.
    [Fact]
    public void Of_PlanAlone_NothingIsRaised() => Assert.Empty(Verdicts(Begun().Study));

    [Fact]
    public void Of_VesselsReadByRisingDose_OrderIsContradicted()
    {
        var rising = Plan.Vessels.OrderBy(v => v.Series).ThenBy(v => v.Mass).ThenBy(v => v.ContactTime).Select((v, i) => (v.Code, i)).ToDictionary(v => v.Code, v => v.i);
        var verdicts = Verdicts(Done(s => s with { Readings = [.. s.Readings.Select(r => rising.TryGetValue(r.Sample, out var place) ? r with { Order = 1000 + place } : r)] }));
        Assert.All(verdicts.Where(v => v.Claim.Rule == "order-randomised"), v => Assert.Equal(Ruling.Contradicted, v.Ruling));
        Assert.Contains(verdicts, v => v.Warnings.Any(w => w.Contains("another place than planned", StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_VesselsStruckAndUnread_BlocksAndReplicatesSaySo()
    {
        var block = Plan.Vessels.Where(v => v.Series == "DOSE" && v.Role == SampleRole.Vessel && v.Block == 1).GroupBy(v => v.Mass).First().Select(v => v.Code).ToArray();
        var struck = Verdicts(Done(s => s with { Strikes = [.. block.Select(c => new Strike(c, "spilled", 90, default, "Ada"))] }));
        // With what was struck both would hold: such a ruling is open (G8), and its reason says both.
        Assert.All(new[] { "replicates-as-planned", "blocks-complete" }, rule => Assert.Equal(Ruling.NotShownYet, Of(struck, rule, "DOSE").Ruling));
        Assert.Contains("1 level fell short", Of(struck, "replicates-as-planned", "DOSE").Reason, StringComparison.Ordinal);
        Assert.Contains("none is left to be read there", Of(struck, "blocks-complete", "DOSE").Reason, StringComparison.Ordinal);
        Assert.Equal(Ruling.Holds, Of(struck, "replicates-as-planned", "KIN").Ruling);

        var unread = Verdicts(Done(s => s with { Readings = [.. s.Readings.Where(r => !block.Contains(r.Sample))] }));
        Assert.Equal(Ruling.NotShownYet, Of(unread, "replicates-as-planned", "DOSE").Ruling);
        Assert.Equal(Ruling.NotShownYet, Of(unread, "blocks-complete", "DOSE").Ruling);
    }

    // A margin that is changed after the first file counts as fixed then, amendment or not.
    [Fact]
    public void Of_MarginChangedAfterTheData_IsContradicted()
    {
        var verdicts = Verdicts(Done(s => s with { Margins = [.. s.Margins.Select(m => m.Name == "removal" ? m with { Entry = 40 } : m)] }));
        Assert.Equal(Ruling.Contradicted, Of(verdicts, "margins-fixed-before", null).Ruling);
        Assert.Equal(Ruling.NotShownYet, Of(Verdicts(Done(s => s with { Margins = [] })), "margins-fixed-before", null).Ruling);
    }

    private static Verdict Of(IEnumerable<Verdict> verdicts, string rule, string? series) => verdicts.Single(v => v.Claim.Rule == rule && v.Claim.Words("series") == series);

    private static Verdict[] Verdicts(Study study) => [.. Dossier.Of(study).Verdicts.Where(v => OfThePlan.Contains(v.Claim.Rule))];

    private static Daybook Begun()
    {
        var begun = new Daybook([]).With(DateTimeOffset.UnixEpoch, "Ada", new StudyBegun("invented", "Ni", true)).With(DateTimeOffset.UnixEpoch, "Ada", Plan.Entry(Plan.Warnings.ToDictionary(w => w.Name, _ => "as it is")));
        foreach (var change in PlanFreezing.Of(begun.Study, new Dictionary<string, string>()))
            begun = begun.With(DateTimeOffset.UnixEpoch, "Ada", change);
        return begun;
    }

    // Both series as an invented study that follows the plan would have them, in the samples that the plan put there.
    private static Study Done(Func<Study, Study> otherwise)
    {
        var begun = Begun().Study;
        var (doses, times) = (PlanTrial.Study(Plan, Plan.Claims.Single(c => c.Question == PlanQuestion.SufficientDose).Question, 3), PlanTrial.Study(Plan, PlanQuestion.Equilibrium, 3));
        var run = doses.Runs[0] with { Id = "second run" };
        var second = times.Readings.Where(r => times.Sample(r.Sample) is { Series: "KIN" } || times.Sample(r.Sample)!.Series is null).Select(r => r with { Id = "S" + r.Id, Run = run.Id });
        var first = doses.Readings.Where(r => doses.Sample(r.Sample) is not { Series: "KIN" });
        return otherwise(begun with
        {
            Samples = [.. begun.Samples.Select(s => (s.Series == "KIN" ? times : doses).Sample(s.Code) ?? s), .. doses.Samples.Where(s => s.Series is null)],
            Readings = [.. first, .. second],
            Runs = [.. doses.Runs, run],
            Originals = [new Original("00", "invented.csv", 1, 20, default)],
        });
    }
}
