using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Studies;

namespace Holdfast.Claims.Tests.Plans;

/// <summary>
/// Power promised is power obtained, through readings, calibration, work-up, fits and ground: a small seeded version of <c>bench/Holdfast.Power</c>, whose page docs/power.md has the sharp numbers. Here a
/// plan that cannot show its claim, or a promise that is off by more than a few studies of chance, is caught.
/// </summary>
public class PlanTrialTests
{
    // Tolerance: 3 points and three binomial standard errors of so many studies.
    [Theory]
    [InlineData("capacity", 24, "equilibrium-reached", "", 0)]
    [InlineData("best-isotherm", 24, "equilibrium-reached", "", 0)]
    [InlineData("removal-falls-with-concentration", 20, "equilibrium-reached", "", 0)]
    [InlineData("equilibrium-reached", 40, null, "", 0)]
    [InlineData("best-kinetic-model", 40, null, "", 0)]
    [InlineData("smallest-sufficient-dose", 300, null, "scatter=1", 0)]
    [InlineData("optimum-dose", 40, null, "", 5)]
    [InlineData("optimum-ph", 30, "equilibrium-reached", "ph=5", 5)]
    [InlineData("not-precipitation", 300, null, "", 0)]
    [InlineData("spontaneous-and-endothermic", 16, "equilibrium-reached", "", 0)]
    [InlineData("reproducible", 300, null, "", 0)]
    public void Of_StudiesThatFollowThePlan_HoldAsOftenAsPromised(string rule, int studies, string? ground, string supposed, double margin)
    {
        var study = new Study { Title = "invented", Invented = true, Analyte = "Ni", Margins = margin > 0 ? [new("removal", -margin, margin, "percentage points", 1)] : [] };
        var basis = PlanBasis.Of(Evidence.Of(study), supposed.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToDictionary(w => w.Split('=')[0], w => w.Split('=')[1])).Basis!;
        var plan = PlanDesign.Of(study, PlanQuestion.Read(ground is null ? [rule] : [rule, ground]).Questions, basis, 1589, 2026);
        var claim = plan.Claims.Single(c => c.Question.Rule == rule);
        var promised = claim.Power.Power!.Value;
        var obtained = Enumerable.Range(0, studies).Count(seed => PlanTrial.Of(plan, claim.Question, (ulong)seed) == Ruling.Holds) / (double)studies;
        Assert.Equal(promised, obtained, 0.03 + 3 * Math.Sqrt(promised * (1 - promised) / studies));
    }

    // A study that follows the plan has each of its vessels once, in the order of reading, with what the plan says of it.
    [Fact]
    public void Study_OfAPlan_HasItsVessels()
    {
        var plan = PlanWarningsTests.Plan(["smallest-sufficient-dose"]);
        var study = PlanTrial.Study(plan, plan.Claims[0].Question, 7);
        Assert.All(plan.Vessels, v => Assert.Equal(v.InitialConcentration, study.Sample(v.Code)!.Number(Studies.Properties.BatchProperties.InitialConcentration)));
        Assert.Equal(plan.Vessels.Length, study.Samples.Count(s => s.Role is SampleRole.Vessel or SampleRole.Control or SampleRole.SorbentBlank));
        Assert.Equal(study.Readings, PlanTrial.Study(plan, plan.Claims[0].Question, 7).Readings);
        Assert.NotEqual(study.Readings, PlanTrial.Study(plan, plan.Claims[0].Question, 8).Readings);
    }
}
