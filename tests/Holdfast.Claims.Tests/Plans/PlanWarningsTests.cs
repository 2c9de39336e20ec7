using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Planning;
using Holdfast.Studies;

namespace Holdfast.Claims.Tests.Plans;

/// <summary>Every warning has a plan that raises it and one beside it, on the other side of its limit, that does not (the list: planning.md 13, common practice).</summary>
public class PlanWarningsTests
{
    internal static PlanDesign Plan(string[] show, params (string Setting, string Value)[] supposed) => Plan("Ni", show, supposed);

    internal static PlanDesign Plan(string? metal, string[] show, params (string Setting, string Value)[] supposed)
    {
        var study = new Study { Title = "invented", Analyte = metal };
        var (basis, refusal) = PlanBasis.Of(Evidence.Of(study), supposed.ToDictionary(s => s.Setting, s => s.Value));
        Assert.Null(refusal);
        var (questions, none) = PlanQuestion.Read(show);
        Assert.Null(none);
        return PlanDesign.Of(study, questions, basis!, 1589, 2026);
    }

    private static bool Warns(PlanDesign plan, string name) => plan.Warnings.Any(w => w.Name.StartsWith(name, StringComparison.Ordinal));

    [Theory]
    [InlineData("power-equilibrium-reached", "equilibrium-reached", "scatter=3", "scatter=8")]
    [InlineData("power-smallest-sufficient-dose", "smallest-sufficient-dose", "scatter=1", "scatter=6")]
    [InlineData("removal-DOSE", "smallest-sufficient-dose", "affinity=0.1", "affinity=5")]
    [InlineData("reading-ISO", "capacity", "top-standard=4", "top-standard=0.02")]
    [InlineData("coverage-ISO", "capacity", "highest=150", "highest=40")]
    [InlineData("fraction-KIN", "equilibrium-reached", "half-time=15", "half-time=90")]
    [InlineData("early-KIN", "best-kinetic-model", "half-time=15", "half-time=0.5")]
    [InlineData("solid-PH", "not-precipitation", "ph=4", "ph=9")]
    [InlineData("batches", "reproducible", "batches=3", "batches=2")]
    [InlineData("night-KIN", "equilibrium-reached", "begin=9", "begin=18")]
    [InlineData("vessels", "capacity", "vessels=30", "vessels=10")]
    [InlineData("sorbent", "capacity", "sorbent=4", "sorbent=1")]
    public void Of_PlanOnEitherSideOfALimit_WarnsOnOneOnly(string name, string claim, string good, string bad)
    {
        static (string, string) Pair(string s) => (s.Split('=')[0], s.Split('=')[1]);
        Assert.False(Warns(Plan([claim], Pair(good)), name), $"{name} with {good}");
        Assert.True(Warns(Plan([claim], Pair(bad)), name), $"{name} with {bad}");
    }

    // What a claim stands on must be tested by the plan, or by the study already.
    [Fact]
    public void Of_GroundThatNothingTests_Warns()
    {
        Assert.True(Warns(Plan(["capacity"]), "ground-equilibrium"));
        Assert.False(Warns(Plan(["capacity", "best-kinetic-model"]), "ground-equilibrium"));
        Assert.False(Warns(Plan(["smallest-sufficient-dose", "reproducible"]), "ground"));
        Assert.True(Warns(Plan(["optimum-ph", "equilibrium-reached"]), "ground-stability"));
        Assert.False(Warns(Plan(["optimum-ph", "equilibrium-reached"]) with { TestsStability = true }, "ground"));
    }

    [Fact]
    public void Of_RowsTakenAway_WarnsOfControlsLevelsTimesBlocksAndTemperatures()
    {
        var plan = Plan(["capacity", "equilibrium-reached", "spontaneous-and-endothermic"]);
        Assert.False(Warns(plan, "controls") || Warns(plan, "levels") || Warns(plan, "later") || Warns(plan, "blocks") || Warns(plan, "temperatures") || Warns(plan, "hands") || Warns(plan, "order"));
        Assert.True(Warns(plan with { Vessels = [.. plan.Vessels.Where(v => v.Role != SampleRole.Control)] }, "controls-ISO"));
        Assert.True(Warns(plan with { Vessels = [.. plan.Vessels.Where(v => v.Role != SampleRole.SorbentBlank)] }, "controls-KIN"));
        PlanDesign Keeping(Func<SeriesDraft, PlannedLevel, bool> keep) => plan with { Series = [.. plan.Series.Select(s => s with { Levels = [.. s.Levels.Where(l => keep(s, l))] })] };
        Assert.True(Warns(Keeping((s, l) => s.Kind != SeriesKind.Isotherm || l.Start > 20), "levels-ISO"));
        Assert.True(Warns(Keeping((_, l) => l.Time <= 120), "later-KIN"));
        Assert.True(Warns(plan with { Vessels = [.. plan.Vessels.Where(v => v.Series != "ISO" || v.Block != 2 || v.InitialConcentration != 82)] }, "blocks-ISO"));
        Assert.True(Warns(plan with { Series = [.. plan.Series.Where(s => s.Name != "TEMP288")] }, "temperatures"));
        Assert.True(Warns(plan with { Vessels = [.. plan.Vessels.Select(v => v with { StartsAt = 0 })] }, "hands-ISO-1"));
        Assert.True(Warns(plan with { Clocks = [plan.Clocks[0] with { ReadCorrelation = RunOrder.LargestCorrelation }] }, "order-ISO"));
    }
}
