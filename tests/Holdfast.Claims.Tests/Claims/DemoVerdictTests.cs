using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// Verdicts and deciding numbers of the invented study, from its files through the whole chain, against reference/design/demo-seed-1589-verdicts.csv (numpy 1.24.2, scipy 1.10.1; four figures).
/// </summary>
public sealed class DemoVerdictTests
{
    private const double FourFigures = 5e-4;

    private static Verdict Judged(string rule, params (string, string?)[] parameters)
        => Defence.RuleNamed(rule)!.Judge(Made.Claim(rule, parameters), DemoStudy.Textbook);

    private static Deciding Number(Verdict verdict, string name, int skip = 0)
        => verdict.Numbers.Where(n => n.Name.Contains(name, StringComparison.Ordinal)).Skip(skip).FirstOrDefault()
            ?? throw new InvalidOperationException($"No number '{name}' among {string.Join("; ", verdict.Numbers.Select(n => n.Name))}");

    [Fact]
    public void LinearCalibration_ToFour_IsContradicted()
    {
        var verdict = Judged("linear-calibration", ("run", "aas-run1"), ("to", "4 mg/L"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        Agree.Relative(FourFigures, 46.6, Number(verdict, "Mandel F").Value);
        Agree.Relative(FourFigures, 8.285, Number(verdict, "critical F").Value);
    }

    [Fact]
    public void LinearCalibration_ToTwo_Holds()
    {
        var verdict = Judged("linear-calibration", ("run", "aas-run1"), ("to", "2 mg/L"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Agree.Relative(FourFigures, 5.745, Number(verdict, "Mandel F").Value);
        Agree.Relative(FourFigures, 9.33, Number(verdict, "critical F").Value);
    }

    [Fact]
    public void DetectionLimit_AtTheDrinkingWaterValue_IsContradicted()
    {
        var verdict = Judged("detection-limit", ("run", "aas-run1"), ("limit", "0.020 mg/L"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        Agree.Relative(FourFigures, 0.03593, Number(verdict, "detection limit").Value);
    }

    [Fact]
    public void OptimumDose_ThreeGramsPerLitre_IsNotShownYet()
    {
        var verdict = Judged("optimum-dose", ("series", "DOSE"), ("dose", "3 g/L"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        double[] means = [27.66, 51.25, 70.18, 79.17, 87.17, 86.76];
        for (var i = 0; i < means.Length; i++)
            Agree.Relative(FourFigures, means[i], verdict.Numbers[i].Value);
        Agree.Relative(FourFigures, 0.9824, Number(verdict, "Tukey p against 4 g/L").Value);
        Agree.Relative(0.05, 2.1e-07, Number(verdict, "Tukey p against 2 g/L").Value);
    }

    [Fact]
    public void SmallestSufficientDose_ThreeGramsPerLitre_Holds()
        => Assert.Equal(Ruling.Holds, Judged("smallest-sufficient-dose", ("series", "DOSE"), ("dose", "3 g/L")).Ruling);

    // The steps are those of reference/design/demo-seed-1589-verdicts.csv; the intervals were computed apart from the program with the scatter of the times near the plateau (14 and 8 degrees
    // of freedom), where the table pools over all times.
    [Theory]
    [InlineData("KIN-05", Ruling.Holds, 0.009015, -0.018269, 0.036299, -0.024209, 0.042239)]
    [InlineData("KIN-20", Ruling.NotShownYet, 0.05969, 0.044996, 0.074377, 0.041469, 0.077903)]
    public void EquilibriumReached_By120Min_AsThePooledStepSays(string series, Ruling ruling, double step, double low90, double high90, double low95, double high95)
    {
        var verdict = Judged("equilibrium-reached", ("series", series), ("time", "120 min"));
        Assert.Equal(ruling, verdict.Ruling);
        var ninety = Number(verdict, "step from 120 min to 180 min");
        var ninetyFive = Number(verdict, "step from 120 min to 180 min", skip: 1);
        Agree.Relative(FourFigures, step, ninety.Value);
        Agree.Relative(FourFigures * 2, low90, ninety.Low!.Value);
        Agree.Relative(FourFigures, high90, ninety.High!.Value);
        Agree.Relative(FourFigures, low95, ninetyFive.Low!.Value);
        Agree.Relative(FourFigures, high95, ninetyFive.High!.Value);
    }

    [Fact]
    public void BestKineticModel_SecondOrderInEverySeries_IsContradicted()
    {
        var verdict = Judged("best-kinetic-model", ("model", "pseudo-second-order"), ("rival", "pseudo-first-order"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        Agree.Relative(FourFigures, -34.39, Number(verdict, "KIN-05: AICc(Pseudo-first-order)").Value);
        Agree.Relative(FourFigures, 51.63, Number(verdict, "KIN-20: AICc(Pseudo-first-order)").Value);
        Agree.Relative(0.05, 2.2e-6, Number(verdict, "KIN-05: lack of fit").Value);
        Agree.Relative(0.05, 0.00018, Number(verdict, "KIN-20: lack of fit").Value);
    }

    [Fact]
    public void BestKineticModel_SecondOrderAt20_IsNotShownYet()
        => Assert.Equal(Ruling.NotShownYet, Judged("best-kinetic-model", ("series", "KIN-20"), ("model", "Pseudo-second-order"), ("rival", "Pseudo-first-order")).Ruling);

    [Fact]
    public void BestIsotherm_LangmuirAgainstFreundlich_Holds()
    {
        var verdict = Judged("best-isotherm", ("series", "ISO-298"), ("model", "Langmuir"), ("rival", "Freundlich"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Agree.Relative(FourFigures, 41.59, Number(verdict, "AICc(Freundlich)").Value);
    }

    [Fact]
    public void Monolayer_IsNotShownYet()
    {
        var verdict = Judged("monolayer", ("series", "ISO-298"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Agree.Relative(FourFigures, -0.1482, Number(verdict, "AICc(Langmuir)").Value);
        Agree.Relative(FourFigures, 0.1248, Number(verdict, "extra parameter").Value);
        Agree.Relative(FourFigures, 0.8882, Number(verdict, "Sips exponent").Value);
    }

    [Fact]
    public void Capacity_AsStated_Holds()
    {
        var verdict = Judged("capacity", ("series", "ISO-298"), ("model", "Langmuir"), ("capacity", "13.5 mg/g"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Agree.Relative(FourFigures, 13.4999, Number(verdict, "capacity").Value);
        Agree.Relative(FourFigures, 0.2587, Number(verdict, "standard error").Value);
        Agree.Relative(FourFigures, 0.9283, Number(verdict, "highest coverage").Value);
    }

    [Fact]
    public void MassBalance_Closes()
    {
        var verdict = Judged("mass-balance", ("series", "DIGEST"), ("against", "ISO-298"), ("c0", "20 mg/L"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        var ratio = Number(verdict, "uptake in the solid");
        Agree.Relative(FourFigures, 0.9416, ratio.Value);
        Agree.Relative(FourFigures, 0.9111, ratio.Low!.Value);
        Agree.Relative(FourFigures, 0.972, ratio.High!.Value);
    }

    [Theory]
    [InlineData("WATER-rinse", "2.38 mg/L", Ruling.Holds, 0.6361, 0.5366, 0.7355)]
    [InlineData("WATER-rinse", "0.020 mg/L", Ruling.Contradicted, 0.6361, 0.5366, 0.7355)]
    [InlineData("WATER-roof", "0.020 mg/L", Ruling.NotShownYet, 0.01107677, null, null)]
    [InlineData("WATER-roof", "2.38 mg/L", Ruling.Holds, 0.01107677, null, null)]
    public void MeetsLimit_TreatedWater_AsTheBoundsSay(string series, string limit, Ruling ruling, double mean, double? low, double? high)
    {
        var verdict = Judged("meets-limit", ("series", series), ("limit", limit));
        Assert.Equal(ruling, verdict.Ruling);
        var found = Number(verdict, "mean of treated water");
        Agree.Relative(FourFigures, mean, found.Value);
        if (low is not null)
        {
            Agree.Relative(FourFigures, low.Value, found.Low!.Value);
            Agree.Relative(FourFigures, high!.Value, found.High!.Value);
        }
    }

    [Theory]
    [InlineData("6", Ruling.Holds, -4.206, -1.011)]
    [InlineData("8", Ruling.NotShownYet, -0.2063, 1.225)]
    [InlineData("9", Ruling.Contradicted, 1.794, 71.06)]
    public void NotPrecipitation_AtEachPh_AsIndexAndControlsSay(string ph, Ruling ruling, double index, double loss)
    {
        var verdict = Judged("not-precipitation", ("series", "PH"), ("ph", ph), ("ksp", "5.48e-16"));
        Assert.Equal(ruling, verdict.Ruling);
        Agree.Relative(FourFigures, index, Number(verdict, "at the start pH").Value);
        Agree.Relative(FourFigures, loss, Number(verdict, "loss in controls").Value);
    }

    // The student's claims in her order, as they come out after what they stand on: demo-seed-1589-verdicts.csv and the scenario's own table. One is judged more
    // strictly than there: the step of KIN-20 after 120 min, 6.0 % (90 % interval 4.5 to 7.4 %), may lie inside the margin of 5 %, so that it contradicts nothing.
    [Fact]
    public void Dossier_StatedClaims_ComeOutAsTheScenarioSays()
    {
        (string Rule, Ruling Ruling)[] expected =
        [
            ("linear-calibration", Ruling.Contradicted), ("linear-calibration", Ruling.Holds), ("detection-limit", Ruling.Contradicted),
            ("optimum-dose", Ruling.NotShownYet), ("smallest-sufficient-dose", Ruling.Holds),
            ("equilibrium-reached", Ruling.Holds), ("equilibrium-reached", Ruling.NotShownYet), ("removal-falls-with-concentration", Ruling.Holds),
            ("capacity", Ruling.NotShownYet), ("best-kinetic-model", Ruling.Contradicted), ("best-kinetic-model", Ruling.Contradicted),
            ("chemisorption", Ruling.NotShownYet), ("best-isotherm", Ruling.Holds), ("monolayer", Ruling.NotShownYet), ("favourable", Ruling.Holds),
            ("not-precipitation", Ruling.Holds), ("not-precipitation", Ruling.NotShownYet), ("not-precipitation", Ruling.Contradicted),
            ("mass-balance", Ruling.Holds), ("meets-limit", Ruling.Holds), ("meets-limit", Ruling.Contradicted), ("meets-limit", Ruling.NotShownYet),
            ("reproducible", Ruling.NotShownYet), ("better-than-published", Ruling.NotShownYet),
        ];
        var rules = expected.Select(e => e.Rule).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(expected, DemoStudy.Dossier.Verdicts.Where(v => v.Claim.Stated && rules.Contains(v.Claim.Rule)).Select(v => (v.Claim.Rule, v.Ruling)));
    }

    [Fact]
    public void Dossier_CapacityThatHolds_NamesItsScopeAndWhatItStandsOn()
    {
        // The scenario's own claim (13.5 mg/g in ISO-298) is not shown yet since the one error model: BET in liquid is not told apart there and goes on rising.
        var capacity = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Rule == "capacity" && v.Ruling == Ruling.Holds);
        Assert.Contains("start pH 6", capacity.Scope, StringComparison.Ordinal);
        Assert.Contains("batch B1", capacity.Scope, StringComparison.Ordinal);
        Assert.Contains("10 vessels", capacity.Scope, StringComparison.Ordinal);
        Assert.Contains(capacity.Warnings, w => w.Contains("Equilibrium was reached by 1440 min", StringComparison.Ordinal));
        Assert.DoesNotContain(capacity.Warnings, w => w.Contains("Controls without sorbent of ISO-298", StringComparison.Ordinal)); // those of the pH series speak at 20 mg/L and pH 6
    }

    [Fact]
    public void Dossier_TwoRuns_GiveTheSameWords()
        => Assert.Equal(
            DemoStudy.Dossier.Verdicts.Select(v => (v.Claim.Id, v.Ruling, v.Reason)),
            Dossier.Of(DemoStudy.Study).Verdicts.Select(v => (v.Claim.Id, v.Ruling, v.Reason)));

    [Theory]
    [InlineData("removal-falls-with-concentration", Ruling.Holds)]
    [InlineData("favourable", Ruling.Holds)]
    [InlineData("chemisorption", Ruling.NotShownYet)]
    [InlineData("reproducible", Ruling.NotShownYet)]
    public void Others_AsTheScenarioSays(string rule, Ruling ruling)
        => Assert.Equal(ruling, Judged(rule, ("series", "ISO-298")).Ruling);
}
