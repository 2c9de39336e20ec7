using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

public class CalibrationCurveTests
{
    private static readonly Outcome<CalibrationCurve> Invented
        = CalibrationCurve.Of(CheckedCalibration.InventedStandards(), CheckedCalibration.InventedBlanks(),
            new() { Run = "AAS-1", Flame = FlameLine.Of("Ni"), Weighting = Weighting.Equal });

    private static CalibrationCurve Curve => Invented.Value!;

    // The numbers outside were worked out with equal weights, so that this run is told to use them.
    // reference/design/demo-seed-1589-values.csv, INVENTED readings; a second program gives slope 0.05945 and intercept 0.00126 for levels 0..2 mg/L.
    [Fact]
    public void Of_InventedRun_TakesTheLineToTwo_AndSaysWhy()
    {
        Assert.Equal(CurveKind.Line, Curve.Kind);
        Assert.Equal(2, Curve.Top);
        Assert.Equal(15, Curve.Standards.Count);
        Assert.Equal(Weighting.Equal, Curve.Weights.Kind);
        Assert.Equal(0.05945, Curve.Fit.Coefficients[1], 0.000005);
        Assert.Equal(0.00126, Curve.Fit.Coefficients[0], 0.000005);
        Assert.Contains("46.6", Curve.Reasons[0], StringComparison.Ordinal);
        Assert.Contains(Invented.Findings, f => f.Code == "HF-441" && f.Weight == Weight.Note);
    }

    // reference/design/demo-seed-1589-verdicts.csv (scipy): to 4 mg/L F 46.6 above 8.285; to 2 mg/L F 5.745 below 9.33.
    [Theory, InlineData(4.0, 46.6, 8.285, true), InlineData(2.0, 5.745, 9.33, false)]
    public void Linearity_InventedRun_AgreesWithComputation(double top, double f, double critical, bool curved)
    {
        var l = Linearity.Of([.. CheckedCalibration.InventedStandards().Where(s => s.Level <= top)]);
        Agree.Digits(3, f, l.Mandel!.F);
        Agree.Digits(3, critical, l.Mandel.Critical(0.99));
        Assert.Equal(curved, l.Verdict == LinearityVerdict.Curved);
    }

    // Same file: 3.3 s(blank)/b = 0.03593 mg/L from ten blanks.
    [Fact]
    public void Limits_InventedRun_AgreeWithComputation()
    {
        Assert.Equal(LimitDefinition.ThreePointThreeSd, Curve.Limits.Detection.Definition);
        Agree.Digits(3.9, 0.03593, Curve.Limits.Detection.Value);
        Assert.Equal(10, Curve.Limits.Detection.N);
        Assert.True(Curve.Limits.Critical.Value < Curve.Limits.Detection.Value);
        Assert.True(Curve.Limits.Detection.Value < Curve.Limits.Quantification.Value);
    }

    // Same file: every measured concentration came from dilution × (mean reading − intercept)/slope in a second program.
    [Theory, InlineData("DOSE", 18), InlineData("KIN-05", 27), InlineData("KIN-20", 27), InlineData("ISO-298", 24), InlineData("TEMP-318", 10), InlineData("WATER-rinse", 3)]
    [InlineData("PH", 21)]
    public void Read_InventedSeries_GivesTheMeasuredConcentrations(string series, int vessels)
    {
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == series).ToList();
        var measured = rows.Where(r => r["quantity"] == "measured concentration mg/L").ToList();
        Assert.Equal(vessels, measured.Count);
        foreach (var v in measured)
        {
            var readings = rows.Where(r => r["level"] == v["level"] && r["replicate"] == v["replicate"] && r["quantity"].StartsWith("absorbance", StringComparison.Ordinal)).ToList();
            var dilution = double.Parse(readings[0]["quantity"].Split("dilution ")[1].TrimEnd(')'), System.Globalization.CultureInfo.InvariantCulture);
            var read = Curve.Read($"{v["level"]} {v["replicate"]}", [.. readings.Select(r => r.Number("value"))], dilution);

            // Near zero the ten printed digits of a reading leave nine of its concentration.
            Agree.Relative(series == "PH" ? 1e-8 : 1e-9, v.Number("value"), read.Signed!.Value.Value);
        }
    }

    // u of the result as the one formula of the books: (s/b) √(1/m + 1/n + (y0 − ȳ)²/(b² Sxx)), t with n − 2.
    [Fact]
    public void Read_ThreeReadings_HasTheUncertaintyOfTheFormula()
    {
        double[] readings = [0.0601, 0.0608, 0.0605];
        var read = Curve.Read("S", readings);
        double[] x = [.. Curve.Standards.Select(s => s.Level)], y = [.. Curve.Standards.Select(s => s.Signal)];
        double b = Curve.Fit.Coefficients[1], sxx = x.Sum(v => Math.Pow(v - x.Average(), 2));
        var u = Curve.Fit.ResidualSd / b * Math.Sqrt(1.0 / 3 + 1.0 / 15 + Math.Pow(readings.Average() - y.Average(), 2) / (b * b * sxx));
        Agree.Digits(12, u, read.Signed!.Value.U);
        Agree.Digits(12, 13, read.Signed.Value.DegreesOfFreedom);
        Agree.Digits(12, Math.Sqrt(Math.Pow(read.Prediction!.ReadingU, 2) + Math.Pow(read.Prediction.CurveU, 2)), u);
    }

    // What is read on one line shares the line: the mean of many samples keeps its uncertainty, a difference loses most of it.
    [Fact]
    public void Read_ManySamples_ShareTheLine()
    {
        Measured[] c = [.. Enumerable.Range(0, 20).Select(i => Curve.Read($"S{(char)('a' + i)}", [0.0605, 0.0605, 0.0605]).Signed!.Value)];
        var mean = c.Aggregate((a, b) => a + b) / 20;
        var prediction = Curve.Read("S", [0.0605, 0.0605, 0.0605]).Prediction!;
        Agree.Digits(12, Math.Sqrt(prediction.ReadingU * prediction.ReadingU / 20 + prediction.CurveU * prediction.CurveU), mean.U);
        Agree.Digits(12, Math.Sqrt(2) * prediction.ReadingU, (c[0] - c[1]).U);
    }

    [Fact]
    public void Read_DilutionAndStock_CarryTheirUncertainty()
    {
        var options = Curve.Options with { StandardScale = Measured.From(1, new Source("stock", "stock", 0.01)) };
        var curve = CalibrationCurve.Of(CheckedCalibration.InventedStandards(), [], options).Value!;
        var plain = Curve.Read("S", [0.06, 0.06]).Signed!.Value;
        var full = curve.Read("S", [0.06, 0.06], Measured.From(10, new Source("pipette", "pipette", 0.05))).Signed!.Value;
        Agree.Digits(12, 10 * plain.Value, full.Value);
        Agree.Digits(12, Math.Sqrt(Math.Pow(plain.RelativeU, 2) + 0.01 * 0.01 + 0.005 * 0.005), full.RelativeU);
    }

    // reference/measurement/flag-cases.csv: reading above the top standard.
    [Fact]
    public void Read_AboveTop_GivesNoNumber_AndTheNextDilution()
    {
        // Told to use the standards up to 2 mg/L only, there is no curve above them.
        var told = CalibrationCurve.Of(CheckedCalibration.InventedStandards(), [], Curve.Options with { Top = 2 }).Value!;
        var read = told.Read("V-12", [told.TopReading * 300 / 216]);
        Assert.Equal(ReadBackKind.AboveTop, read.Kind);
        Assert.Null(read.Signed);
        Assert.Equal(2, read.NextDilution);
        Assert.Equal("HF-403", Assert.Single(read.Findings).Code);
        Assert.Equal(20, told.Read("V-12", [told.TopReading * 300 / 216], 10).NextDilution);
        Assert.Equal(25, Curve.Read("V-12", [Curve.TopReading], 10, isSaturated: true).NextDilution);
    }

    // Roof water of the invented demo: 0.0077 to 0.0145 mg/L, all below the critical value: printed "< 0.036", kept with its sign.
    [Fact]
    public void Read_BelowCritical_IsCensored_AndKeepsTheSignedValue()
    {
        var read = Curve.Read("roof", [0.0007, 0.0008, 0.0006], 2);
        Assert.Equal(ReadBackKind.NotDetected, read.Kind);
        Assert.True(read.Below!.Signed.Value < 0);
        Assert.Equal(read.Signed, read.Below.Signed);
        Agree.Digits(12, 2 * Curve.Limits.Detection.Value, read.Below.Limit);
        Assert.Equal("HF-445", Assert.Single(read.Findings).Code);
    }

    [Fact]
    public void Read_BetweenLimitAndLowestStandard_IsANumberWithAFlag()
    {
        var read = Curve.Read("S", [0.0130, 0.0131]);
        Assert.Equal(ReadBackKind.BelowLowestStandard, read.Kind);
        Assert.Null(read.Below);
        Assert.Equal("HF-403", Assert.Single(read.Findings).Code);
    }

    [Fact]
    public void Read_ScatteringSample_UsesItsOwnScatterAndSaysSo()
    {
        double[] readings = [0.050, 0.060, 0.070];
        var read = Curve.Read("S", readings);
        Assert.Contains(read.Findings, f => f.Code == "HF-446");
        Agree.Digits(10, Summary.Of(readings).Sd!.Value / Math.Sqrt(3) / Curve.Fit.Coefficients[1], read.Prediction!.ReadingU);
        Assert.InRange(read.Prediction.DegreesOfFreedom, 2, 3);
    }

    [Fact]
    public void Read_NoReading_Throws() => Assert.Throws<ArgumentException>(() => Curve.Read("S", []));

    [Fact]
    public void Read_DilutionBelowOne_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Curve.Read("S", [0.05], 0.5));

    // The invented nickel line: 0.0044/0.05945 = 0.074 mg/L, table 0.15: nothing to flag; a slope three times lower is flagged.
    [Fact]
    public void Of_SensitivityFarFromTable_IsFlagged()
    {
        Assert.DoesNotContain(Invented.Findings, f => f.Code == "HF-447");
        StandardReading[] weak = [.. CheckedCalibration.InventedStandards().Select(s => s with { Signal = s.Signal / 5 })];
        Assert.Contains(CalibrationCurve.Of(weak, [], new() { Flame = FlameLine.Of("Ni") }).Findings, f => f.Code == "HF-447");
    }

    [Fact]
    public void Of_OneStockAndOldCurve_IsFlagged()
    {
        var found = CalibrationCurve.Of(CheckedCalibration.InventedStandards(), [], new() { Stocks = ["K-1", "K-1"], Age = TimeSpan.FromDays(3) });
        Assert.Equal(2, found.Findings.Count(f => f.Code == "HF-447"));
    }

    // Order of the standards must not matter, nor the unit of the readings.
    [Fact]
    public void Of_ShuffledAndRescaled_GivesTheSameConcentrations()
    {
        var shuffled = CheckedCalibration.InventedStandards();
        new SeededStream(7, "order").Shuffle<StandardReading>(shuffled);
        var curve = CalibrationCurve.Of([.. shuffled.Select(s => s with { Signal = 1000 * s.Signal })], [.. CheckedCalibration.InventedBlanks().Select(b => 1000 * b)], new() { Weighting = Weighting.Equal }).Value!;
        Agree.Digits(11, Curve.Read("S", [0.07, 0.071]).Signed!.Value.Value, curve.Read("S", [70, 71]).Signed!.Value.Value);
        Agree.Digits(11, Curve.Read("S", [0.07, 0.071]).Signed!.Value.U, curve.Read("S", [70, 71]).Signed!.Value.U);
        Agree.Digits(11, Curve.Limits.Detection.Value, curve.Limits.Detection.Value);
    }
}
