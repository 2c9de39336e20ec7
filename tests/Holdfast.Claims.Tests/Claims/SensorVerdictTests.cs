using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// The sensor of the invented study, from its files through the whole chain, against reference/design/demo-seed-1589-verdicts.csv (numpy 1.24.2, scipy 1.10.1; four figures).
/// </summary>
public sealed class SensorVerdictTests
{
    private const double FourFigures = 5e-4;

    private static Sensing Sensing => Analyses.Sensing.Of(DemoStudy.Dossier.Evidence);

    private static Verdict Judged(string rule, params (string, string?)[] parameters)
        => Defence.RuleNamed(rule)!.Judge(Made.Claim(rule, parameters), DemoStudy.Dossier.Evidence);

    private static Deciding Number(Verdict verdict, string name, int skip = 0)
        => verdict.Numbers.Where(n => n.Name.Contains(name, StringComparison.Ordinal)).Skip(skip).First();

    [Theory]
    [InlineData("40 µmol/L", Ruling.Holds, 0.06521, 8.017)]
    [InlineData("80 µmol/L", Ruling.Contradicted, 12.07, 7.677)]
    public void SensorLinear_ByMandel_AsTheTableSays(string to, Ruling ruling, double f, double critical)
    {
        var verdict = Judged("sensor-linear", ("series", "FLUOR"), ("to", to));
        Assert.Equal(ruling, verdict.Ruling);
        Agree.Relative(FourFigures, f, Number(verdict, "Mandel F").Value);
        Agree.Relative(FourFigures, critical, Number(verdict, "critical F").Value);
    }

    [Fact]
    public void SensorLinear_BeyondTheLevels_SaysThatNothingIsKnown()
        => Assert.Contains("nothing is known up to 200 µmol/L", Judged("sensor-linear", ("series", "FLUOR"), ("to", "200 µmol/L")).Reason, StringComparison.Ordinal);

    // LOD 2.354 µmol/L = 0.1381 mg/L at slope 0.01619 L/µmol; the drinking-water value lies far below.
    [Fact]
    public void SensorDetectionLimit_AtTheDrinkingWaterValue_IsContradicted()
    {
        var verdict = Judged("sensor-detection-limit", ("series", "FLUOR"), ("to", "40 µmol/L"), ("limit", "0.020 mg/L"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        Agree.Relative(FourFigures, 2.354, Number(verdict, "detection limit").Value);
        Assert.Contains(verdict.Warnings, w => w.Contains("0.1381 mg/L", StringComparison.Ordinal));
        Assert.Equal(Ruling.Holds, Judged("sensor-detection-limit", ("series", "FLUOR"), ("limit", "5 µmol/L")).Ruling);
        Assert.Equal(Ruling.NotShownYet, Judged("sensor-detection-limit", ("series", "FLUOR"), ("limit", "2.5 µmol/L")).Ruling);
    }

    // The scenario: tau0/tau follows F0/F (true constants 0.0175 and 0.0190 with 8 % out of reach), kq about 2e7 decides nothing.
    [Fact]
    public void QuenchingMechanism_Static_IsContradictedByTheLifetimes()
    {
        var verdict = Judged("quenching-mechanism", ("series", "FLUOR"), ("mechanism", "static"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        var ratio = Number(verdict, "lifetime constant over signal constant");
        Assert.True(ratio.Low < 1 && ratio.High > 1, ratio.ToString());
        Assert.InRange(Number(verdict, "kq").Value, 1e7, 3e7);
        Assert.Contains(verdict.Warnings, w => w.Contains("decides nothing", StringComparison.Ordinal));
        Assert.Equal(Ruling.Holds, Judged("quenching-mechanism", ("series", "FLUOR"), ("mechanism", "dynamic")).Ruling);
        Assert.Contains("cannot be read as the mechanism", Judged("quenching-mechanism", ("series", "FLUOR"), ("mechanism", "magnetic")).Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SPIKE-roof", 0.9784, 0.9395, 1.017, false)]
    [InlineData("SPIKE-rinse", 0.8287, 0.7974, 0.8601, true)]
    public void WorksInWater_BySlope_HoldsForTheWindowAndNamesTheMatrix(string water, double slope, double low, double high, bool matrix)
    {
        var verdict = Judged("works-in-water", ("series", water));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        var found = Number(verdict, "slope of found on added");
        Agree.Relative(FourFigures, slope, found.Value);
        Agree.Relative(FourFigures, low, found.Low!.Value);
        Agree.Relative(FourFigures, high, found.High!.Value);
        Assert.Equal(matrix, verdict.Reason.Contains("a matrix effect is shown", StringComparison.Ordinal));
        Assert.Equal(matrix, verdict.Questions.Any(q => q.Code == "Q69"));
    }

    // Rising order, a drift of 4 % beside it: the response at 5 µmol/L is larger; the powder takes most of the nickel up, so that the axis is not the free one.
    [Fact]
    public void SensorResponds_OfTheInventedSensor_HoldsWithItsCaveats()
    {
        var verdict = Judged("sensor-responds", ("series", "FLUOR"));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Equal(4, Number(verdict, "drift").Value, 0);
        Assert.Contains(verdict.Warnings, w => w.Contains("rising order", StringComparison.Ordinal));
        Assert.Contains(verdict.Questions, q => q.Code == "Q44");
    }

    // Truths of the scenario: Pb 0.93, Co 0.86, Fe 0.71 after the inner filter matter; Na, K, Mg, Ca do not; iron's factor is 1.148 (K27).
    [Fact]
    public void NoInterference_OfTheInventedIons_IsContradictedByThreeOfThem()
    {
        var verdict = Judged("no-interference", ("series", "INTERFERENCE"));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        var ions = Sensing.Interferences[0].Ions;
        Assert.Equal(10, ions.Length);
        Assert.Equal(["Pb", "Co", "Fe"], ions.Where(i => i.Found.IsShown).Select(i => i.Ion));
        Agree.Relative(FourFigures, 1.14815, ions.Single(i => i.Ion == "Fe").Factor!.Value);
        Assert.InRange(ions.Single(i => i.Ion == "Fe").Found.Effect.Value, 0.69, 0.74);
        Assert.Contains(verdict.Questions, q => q.Code == "Q41");
    }

    // The truth is the accessible fraction (0.92, 0.0190 L/µmol); it is ranked first or not told from the best.
    [Fact]
    public void Laws_OfTheInventedSensor_KeepTheTruthAmongTheSurvivors()
    {
        var series = Assert.Single(Sensing.Series);
        Assert.Equal(4, series.Fits.Length);
        var truth = series.Ranking!.Ranked.Single(r => r.Fit.Card.Name == "Accessible fraction");
        Assert.True(truth.Delta < CurveComparison.NotDistinguished);
        Assert.Equal(60, series.Range!.Longest!.Top);
        Assert.Contains(series.Findings, f => f.Code == "HF-583");
        Assert.DoesNotContain(series.Findings, f => f.Code == "HF-584");
    }

    // The student's claims on the sensor in her order, as they come out after what they stand on.
    [Fact]
    public void Dossier_StatedSensorClaims_ComeOutAsTheScenarioSays()
        => Assert.Equal(
            [
                ("sensor-linear", Ruling.Holds), ("sensor-linear", Ruling.Contradicted), ("sensor-detection-limit", Ruling.Contradicted),
                ("quenching-mechanism", Ruling.Contradicted), ("works-in-water", Ruling.Holds), ("works-in-water", Ruling.Holds),
            ],
            DemoStudy.Dossier.Verdicts
                .Where(v => v.Claim.Stated && v.Claim.Rule is ("sensor-linear" or "sensor-detection-limit" or "quenching-mechanism" or "works-in-water")).Select(v => (v.Claim.Rule, v.Ruling)));

    // No sensing sample becomes a sorption vessel.
    [Fact]
    public void Vessels_OfSorption_HoldNoSensingSample()
        => Assert.DoesNotContain(DemoStudy.Dossier.Evidence.Vessels, v => v.Sample.Series is { } s && (s.StartsWith("FLUOR", StringComparison.Ordinal) || s.StartsWith("SPIKE", StringComparison.Ordinal) || s is "LIFETIME" or "INTERFERENCE"));
}
