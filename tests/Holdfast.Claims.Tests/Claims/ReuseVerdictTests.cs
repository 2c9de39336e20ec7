using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Testing;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// Rules on temperature, rivals, exchange and reuse: against reference/design/decision-check.csv (five figures), flag-cases.csv, and through the whole
/// chain of the invented study against demo-seed-1589-verdicts.csv (four figures).
/// </summary>
public sealed class ReuseVerdictTests
{
    private const double FourFigures = 5e-4;
    private const double FiveFigures = 5e-5;

    // decision-check.csv, K13 and K14.
    [Theory]
    [InlineData(new[] { 298.15, 308.15, 318.15 }, new[] { 9.93, 10.13, 10.25 }, Ruling.NotShownYet, 12.6486, -7.48308, 32.7802)]
    [InlineData(new[] { 288.15, 298.15, 308.15, 318.15, 328.15 }, new[] { 9.70, 9.93, 10.13, 10.25, 10.44 }, Ruling.Holds, 14.1812, 12.1577, 16.2046)]
    public void Endothermic_K13AndK14_AsPrinted(double[] temperatures, double[] logarithms, Ruling ruling, double enthalpy, double low, double high)
    {
        var decision = Endothermic.Decide(VantHoff.OfLogarithms(temperatures, [.. logarithms.Select(l => (Measured)l)]).Value!, ConstantChoice.Molar, false, [5, 5, 5]);
        Assert.Equal(ruling, decision.Gated);
        Agree.Relative(FiveFigures, enthalpy, decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, low, decision.Numbers[0].Low!.Value);
        Agree.Relative(FiveFigures, high, decision.Numbers[0].High!.Value);
    }

    // decision-check.csv, K19.
    [Fact]
    public void Selective_K19_HoldsAtThree()
    {
        var decision = Selective.Decide([("B", [6.1, 5.2, 7.4])], 3);
        Assert.Equal(Ruling.Holds, decision.Gated);
        Agree.Relative(FiveFigures, 6.16862, decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, 4.57966, decision.Numbers[0].Low!.Value);
    }

    // decision-check.csv, K28. The row measured two cycles only, which leaves the gate on cycles (flag R1) to forbid what its ratio shows.
    [Fact]
    public void Reusable_K28_ItsRatioHoldsAndTwoCyclesDoNot()
    {
        var decision = Reusable.Decide([new(1, [8.02, 7.95, 8.10]), new(5, [6.72, 6.60, 6.81])], 5, 0.80, massIsKnown: true);
        Assert.Equal(Ruling.Holds, decision.Ruling);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Agree.Relative(FiveFigures, 0.836311, decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, 0.817497, decision.Numbers[1].Value);
        Agree.Relative(FiveFigures, 0.855124, decision.Numbers[2].Value);
    }

    // decision-check.csv, K29.
    [Fact]
    public void RegeneratedBetter_K29_IsNotShown()
    {
        var decision = RegeneratedBetter.Decide(RegeneratedBetter.Paired([8.02, 7.95, 8.10], [8.35, 8.21, 8.18]), massIsKnown: true, 0);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Agree.Relative(FiveFigures, 0.223333, decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, -0.0970466, decision.Numbers[0].Low!.Value);
        Agree.Relative(FiveFigures, 0.543713, decision.Numbers[0].High!.Value);
    }

    // demo-seed-1589-verdicts.csv, D18: 12.51, se 1.592, half-width 20.23 with 1 degree of freedom, propagated 6.049 kJ/mol.
    [Fact]
    public void Endothermic_OfThreeTemperatures_IsNotShown()
    {
        var verdict = Judged("spontaneous-and-endothermic", ("series", "TEMP-298, TEMP-308, TEMP-318"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Agree.Relative(FourFigures, 12.51, Number(verdict, "ΔH° by the scatter about the line"));
        Agree.Relative(FourFigures, 1.592, Number(verdict, "standard error of ΔH°"));
        Agree.Relative(FourFigures, 20.23, Number(verdict, "half-width"));
        Agree.Relative(FourFigures, 6.049, Number(verdict, "propagated from each ln K"));
        Assert.Equal("TEMP-298, TEMP-308, TEMP-318", Assert.Single(TemperatureStudy.Of(DemoStudy.Textbook).Families).Name);
    }

    // demo-seed-1589-verdicts.csv, D27.
    [Fact]
    public void Reusable_FiveCycles_IsNotShown()
    {
        var verdict = Judged("reusable", ("series", "REUSE"), ("cycles", "5"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Agree.Relative(FourFigures, 0.8601, Number(verdict, "uptake of cycle 5 over cycle 1"));
        Agree.Relative(FourFigures, 0.793, Number(verdict, "lower bound"));
        Agree.Relative(FourFigures, 0.9273, Number(verdict, "upper bound"));
        Assert.Contains(verdict.Gates, g => g is { Name: "mass present", Passed: false });
    }

    // demo-seed-1589-verdicts.csv, D28.
    [Fact]
    public void RegeneratedBetter_SecondCycle_IsNotShown()
    {
        var verdict = Judged("regenerated-better", ("series", "REUSE"), ("cycle", "2"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Agree.Relative(FourFigures, 0.4715, verdict.Numbers[0].Value);
        Agree.Relative(FourFigures, -0.253, verdict.Numbers[0].Low!.Value);
        Agree.Relative(FourFigures, 1.196, verdict.Numbers[0].High!.Value);
        Agree.Relative(FourFigures, 0.1552, verdict.Numbers[1].Value);
        Assert.Contains(verdict.Gates, g => g is { Name: "mass present", Passed: false });
    }

    // The invented truth of the scenario: Kd(Ni)/Kd(B) 90, 41, 22, 3.4, 2.6, 0.92, 1.3, 0.11.
    [Theory]
    [InlineData(null, Ruling.Contradicted), InlineData("Pb", Ruling.Contradicted), InlineData("Zn", Ruling.NotShownYet), InlineData("Na, Mg, Ca, Mn, Co, Cd", Ruling.Holds)]
    public void Selective_OverEachRival_AsTheScenarioSays(string? over, Ruling ruling) => Assert.Equal(ruling, Judged("selective", ("over", over)).Ruling);

    [Theory]
    [InlineData("Na", 90), InlineData("Mg", 41), InlineData("Ca", 22), InlineData("Mn", 3.4), InlineData("Co", 2.6), InlineData("Zn", 0.92), InlineData("Cd", 1.3), InlineData("Pb", 0.11)]
    public void Preference_OfEachRival_LiesByTheInventedTruth(string metal, double truth)
    {
        var rival = MixtureStudy.Of(DemoStudy.Dossier.Evidence).Rivals.Single(r => r.Metal == metal);
        Assert.Equal(3, rival.Vessels.Length);
        Assert.True(rival.Preference!.Interval(0.99).Contains(truth));
    }

    // The scenario's truth is 0.87 calcium for each nickel: the interval holds it, and not one for one.
    [Fact]
    public void IonExchange_OneForOne_IsContradictedAndTheTruthLiesInside()
    {
        var verdict = Judged("ion-exchange", ("ion", "Ca"), ("ratio", "1"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        var ratio = Assert.Single(ExchangeStudy.Of(DemoStudy.Dossier.Evidence).Ions);
        Assert.Equal(4, ratio.Loadings);
        Assert.Equal(2, ratio.Control.Length);
        Assert.True(ratio.Ratio!.Slope.Interval().Contains(0.87));
        Assert.Equal(Ruling.NotShownYet, Judged("ion-exchange", ("ion", "Ca"), ("ratio", "0.87")).Ruling);
        Assert.Equal(Ruling.NotShownYet, Judged("ion-exchange", ("ion", "Na")).Ruling);
    }

    [Fact]
    public void OutletOfOneStage_InAnotherWater_IsNotShown()
    {
        var verdict = Judged("outlet-meets-limit", ("series", "WATER-rinse"), ("dose", "2 g/L"), ("limit", "2.38 mg/L"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains(verdict.Gates, g => g is { Name: "same water", Passed: false });
        Assert.Equal(Ruling.Contradicted, Judged("outlet-meets-limit", ("c0", "20 mg/L"), ("dose", "1 g/L"), ("limit", "2 mg/L")).Ruling);
    }

    // The vessels themselves: 20 mg/L with 2 g/L left about 3.9 mg/L, so that a limit of 5 holds in their own water and 3 does not.
    [Theory, InlineData("5 mg/L", Ruling.Holds), InlineData("3 mg/L", Ruling.Contradicted), InlineData("0.01 mg/L", Ruling.Contradicted)]
    public void OutletOfOneStage_InTheIsothermsWater_IsJudged(string limit, Ruling ruling)
        => Assert.Equal(ruling, Judged("outlet-meets-limit", ("water", "0.01 mol/L NaNO3"), ("c0", "20 mg/L"), ("dose", "2 g/L"), ("limit", limit)).Ruling);

    // A limit by its name, 40 CFR 433.15 nickel, monthly mean 2.38 mg/L (reference/measurement/water-limits.csv), is judged as by its number; so are a time and a dose that cannot be read.
    [Fact]
    public void OutletOfOneStage_AgainstANamedLimit_IsJudgedAsByItsNumber()
    {
        (string, string?)[] stage = [("water", "0.01 mol/L NaNO3"), ("c0", "6.8 mg/L"), ("dose", "2 g/L")];
        Assert.Equal(Ruling.Holds, Judged("outlet-meets-limit", [.. stage, ("limit", "US metal finishing monthly average")]).Ruling);
        Assert.Contains("fits several", Judged("outlet-meets-limit", [.. stage, ("limit", "drinking water")]).Reason, StringComparison.Ordinal);
        Assert.Contains("cannot be read as the time", Judged("outlet-meets-limit", ("limit", "2 mg/L"), ("time", "abc")).Reason, StringComparison.Ordinal);
        Assert.Contains("cannot be read as the dose", Judged("outlet-meets-limit", ("limit", "2 mg/L"), ("dose", "2 mg")).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void LowCost_OfTheDemo_JudgesRangesAndAsksForCyclesShown()
    {
        (string, string?)[] water = [("c0", "6.8 mg/L"), ("limit", "2.38 mg/L"), ("price", "40 to 60"), ("disposal", "1..3"), ("energy", "0.01"), ("labour", "0.02"), ("currency", "EUR 2026")];
        Assert.Equal(Ruling.Holds, Judged("low-cost", [.. water, ("rival", "40 to 50")]).Ruling);
        Assert.Equal(Ruling.Contradicted, Judged("low-cost", [.. water, ("rival", "0.1 to 0.2")]).Ruling);
        var hoped = Judged("low-cost", [.. water, ("rival", "40 to 50"), ("uses", "10")]);
        Assert.Equal(Ruling.NotShownYet, hoped.Ruling);
        Assert.Contains(hoped.Questions, q => q.Code == "Q64");
        Assert.Contains("EUR 2026 per g", hoped.Reason, StringComparison.Ordinal);
        Assert.Contains(Judged("low-cost", [.. water[..^1], ("rival", "40 to 50")]).Gates, g => g is { Name: "currency", Passed: false });
        Assert.Contains("c0", Judged("low-cost", ("rival", "40 to 50")).Reason, StringComparison.Ordinal);
    }

    // What a claim names wrongly, or what a study does not hold, is said and never thrown.
    [Theory]
    [InlineData("spontaneous-and-endothermic"), InlineData("selective"), InlineData("reusable"), InlineData("regenerated-better"), InlineData("ion-exchange")]
    [InlineData("outlet-meets-limit"), InlineData("low-cost")]
    public void Rules_OfAnEmptyStudy_SayWhatIsMissing(string rule)
    {
        var empty = Evidence.Of(new Studies.Study { Title = "empty" });
        Assert.Equal(Ruling.NotShownYet, Defence.RuleNamed(rule)!.Judge(Made.Claim(rule), empty).Ruling);
        Assert.Equal(Ruling.NotShownYet, Defence.RuleNamed(rule)!.Judge(Made.Claim(rule, ("series", "nothing"), ("limit", "abc"), ("ratio", "x"), ("cycles", "0"), ("factor", "-1")), empty).Ruling);
        Assert.Empty(Defence.RuleNamed(rule)!.Invited(empty));
    }

    // The student's sentences in her order, as the dossier judges them after what they stand on.
    [Fact]
    public void Dossier_ReuseClaims_ComeOutAsTheScenarioSays()
    {
        (string Rule, Ruling Ruling)[] expected =
        [
            ("spontaneous-and-endothermic", Ruling.NotShownYet), ("selective", Ruling.Contradicted), ("selective", Ruling.NotShownYet), ("selective", Ruling.Holds),
            ("ion-exchange", Ruling.Contradicted), ("regenerated-better", Ruling.NotShownYet), ("reusable", Ruling.NotShownYet), ("outlet-meets-limit", Ruling.NotShownYet),
        ];
        var rules = expected.Select(e => e.Rule).ToHashSet(StringComparer.Ordinal);

        // Those of beds name their run and stand in a sheet of their own.
        Assert.Equal(expected, DemoStudy.Dossier.Verdicts.Where(v => v.Claim.Stated && rules.Contains(v.Claim.Rule) && v.Claim.Words("run") is null).Select(v => (v.Claim.Rule, v.Ruling)));
    }

    private static Verdict Judged(string rule, params (string, string?)[] parameters)
        => Defence.RuleNamed(rule)!.Judge(Made.Claim(rule, parameters), DemoStudy.Textbook);

    private static double Number(Verdict verdict, string name)
        => verdict.Numbers.FirstOrDefault(n => n.Name.Contains(name, StringComparison.Ordinal))?.Value
            ?? throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"No number '{name}' among {string.Join("; ", verdict.Numbers.Select(n => n.Name))}"));
}
