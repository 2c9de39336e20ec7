using Holdfast.Claims.Analyses;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests;

/// <summary>
/// The later series of the invented study, from their files through the whole chain. What must come out is the truth that samples/demo/README.md states, within
/// its uncertainty, and what follows from it on paper.
/// </summary>
public class LaterDemoTests
{
    private static readonly double Held = 14.0 * Math.Pow(0.35 * 20, 0.90) / (1 + Math.Pow(0.35 * 20, 0.90));

    // README: activation energy 30 kJ/mol for both parts; 95 % interval with 2 degrees of freedom, t = 4.303 (t table).
    [Fact]
    public void Rates_AtFourTemperatures_GiveTheirActivationEnergyWithTwoDegreesOfFreedom()
    {
        var family = Assert.Single(RateStudy.Of(DemoStudy.Dossier.Evidence).Families);
        Assert.Equal(["KIN-05-288", "KIN-05", "KIN-05-308", "KIN-05-318"], family.Series.Select(s => s.Name));
        var energy = Assert.Single(family.Energies);
        var found = energy.Line.ActivationEnergy;
        Assert.Equal(2, found.DegreesOfFreedom);
        Assert.Equal(4.303 * found.StandardError, found.Interval().Half, 2);
        Assert.InRange(30, energy.Line.WiderActivationEnergy.Interval().Low, energy.Line.WiderActivationEnergy.Interval().High);
        Assert.True(energy.Line.WiderActivationEnergy.Interval().Half >= found.Interval().Half);
    }

    // Mass balance: what the isotherm holds at 20 mg/L is the capacity of a bed; ∫(1 − C/C0)dt of a logistic from 0 on is τ + ln(1 + e^(−kτ))/k.
    [Fact]
    public void Beds_RunToTheEnd_HoldWhatTheIsothermHoldsAtTheInlet()
    {
        var study = ColumnStudy.Of(DemoStudy.Dossier.Evidence);
        Assert.Equal(["BED-2", "BED-4a", "BED-4b", "BED-6"], study.Runs.Select(r => r.Name));
        foreach (var run in study.Runs.Where(r => r.Name != "BED-6"))
        {
            var half = (Held * run.Mass!.Value + 20 * run.Held / 1000) / 0.040;
            var whole = half + Math.Log(1 + Math.Exp(-0.02 * half)) / 0.02;
            Agree.Relative(0.015, whole, run.TotalTime.Value, run.Name);
            Assert.InRange(whole, run.TotalTime.Value - 3 * run.TotalTime.U, run.TotalTime.Value + 3 * run.TotalTime.U);
            Assert.InRange(Held, run.Capacity!.Value.Value - 3 * run.Capacity.Value.U, run.Capacity.Value.Value + 3 * run.Capacity.Value.U);
        }

        Assert.Contains(study.Findings, f => f.Code == "HF-661" && f.Sentence.Contains("BED-6", StringComparison.Ordinal));
    }

    // The break lies ln 19/k before the middle; a depth that the line loses at once is ln 19·Z/(k·τ) when the held liquid goes with the depth.
    [Fact]
    public void Beds_OfThreeDepths_GiveTheDepthServiceLine()
    {
        var study = ColumnStudy.Of(DemoStudy.Dossier.Evidence);
        foreach (var run in study.Runs)
        {
            var half = (Held * run.Mass!.Value + 20 * run.Held / 1000) / 0.040;
            Agree.Relative(0.02, half - Math.Log(19) / 0.02, run.BreakTime!.Value.Value, run.Name);
        }

        var line = study.ServiceTime!;
        Assert.Equal(2, line.Capacity.DegreesOfFreedom);
        Assert.InRange(0.0010, line.Rate.Interval().Low, line.Rate.Interval().High);
        Assert.InRange(Math.Log(19) / 0.02 / (Held * 0.95 / 2 / 0.040), line.CriticalDepth.Interval().Low, line.CriticalDepth.Interval().High);
    }

    // README: 7.2 at both levels of salt.
    [Fact]
    public void Drift_AtTwoLevelsOfSalt_FallsThroughZeroOnceAtTheSamePh()
    {
        var tests = DriftStudy.Of(DemoStudy.Dossier.Evidence).Tests;
        Assert.Equal([0.01, 0.1], tests.Select(t => t.Salt!.Value));
        Assert.All(tests, t => Assert.InRange(7.2, t.ZeroCharge!.Ph - 2 * t.ZeroCharge.U, t.ZeroCharge.Ph + 2 * t.ZeroCharge.U));
        Assert.All(tests, t => Assert.Empty(t.Findings));
    }

    // What the README says of the three sentences: two beds agree, one bed cannot, five uses were not shown.
    [Theory]
    [InlineData("bed-of-4-cm", Ruling.Holds)]
    [InlineData("bed-of-6-cm", Ruling.NotShownYet)]
    [InlineData("low-cost-rinse-water", Ruling.NotShownYet)]
    public void Claims_OfTreatment_AreJudged(string id, Ruling ruling)
        => Assert.Equal(ruling, DemoStudy.Dossier.Verdicts.Single(v => v.Claim.Id == id).Ruling);

    // The time until the outlet is at 2.38 of 20 mg/L is τ − ln(20/2.38 − 1)/k of the logistic: the mean of the two beds of 4 cm.
    [Fact]
    public void Claim_OfTheBedOf4Cm_TellsTheTimeOfTheLogistic()
    {
        var time = DemoStudy.Dossier.Verdicts.Single(v => v.Claim.Id == "bed-of-4-cm").Numbers[0];
        Agree.Relative(0.01, (Held * 1.91 + 20 * 0.0027) / 0.040 - Math.Log(20 / 2.38 - 1) / 0.02, time.Value);
    }
}
