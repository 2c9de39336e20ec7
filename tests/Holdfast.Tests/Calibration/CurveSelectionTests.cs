using Holdfast.Calibration;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

// Verdicts of reference/measurement/flag-cases.csv.
public class CurveSelectionTests
{
    private static readonly CalibrationOptions Unweighted = new() { Weighting = Weighting.Equal };

    [Fact]
    public void Of_EurachemA5_RefusesTheLineAndOffersTheQuadratic()
    {
        var found = CalibrationCurve.Of(CheckedCalibration.Standards("quam-a5"), [], Unweighted);
        Assert.Equal(CurveKind.Quadratic, found.Value!.Kind);
        Assert.Equal(0.0021, found.Value.Linearity.Mandel!.P, 0.00005);
        Assert.Equal(0.024, found.Value.Linearity.LackOfFit!.P, 0.0005);
        Agree.Digits(2.5, 0.255, found.Value.Read("S", [0.0712, 0.0715]).Signed!.Value.Value);
        Assert.Contains(found.Findings, f => f.Code == "HF-442");
    }

    [Fact]
    public void Of_MadeQuadratic_ShortensOrBendsAsAsked()
    {
        var quadratic = CalibrationCurve.Of(CheckedCalibration.Standards("made-quadratic"), [], Unweighted with { WhenCurved = WhenCurved.UseQuadratic }).Value!;
        Assert.Equal(CurveKind.Quadratic, quadratic.Kind);
        Assert.Equal(5, quadratic.Top);
        var read = quadratic.Read("S", [0.2, 0.2, 0.2]);
        Agree.Digits(9, 1.956075808, read.Signed!.Value.Value);
        Agree.Digits(8, 0.01100461498, read.Signed.Value.U);
    }

    [Fact]
    public void Of_Fluorescein_KeepsTheLine_AndRefusesZero()
    {
        var found = CalibrationCurve.Of(CheckedCalibration.Standards("fluorescein"), [], new() { Curve = CurveKind.LineThroughZero });
        Assert.Equal(CurveKind.Line, found.Value!.Kind);
        Assert.Contains(found.Findings, f => f.Code == "HF-441" && f.Sentence.Contains("5.15", StringComparison.Ordinal));
        Assert.Equal(CurveKind.Line, CalibrationCurve.Of(CheckedCalibration.Standards("fluorescein"), []).Value!.Kind);
    }

    [Fact]
    public void Of_HarveyThroughZero_IsAllowed()
    {
        var found = CalibrationCurve.Of(CheckedCalibration.Standards("harvey-5.4"), [], new() { Curve = CurveKind.LineThroughZero });
        Assert.Equal(CurveKind.LineThroughZero, found.Value!.Kind);
        Agree.Digits(9, 121.2745455, found.Value.Fit.Coefficients[1]);
        Agree.Digits(9, 29.33 / 121.2745455, found.Value.Read("S", [29.33]).Signed!.Value.Value);
    }

    [Fact]
    public void Of_ProportionalScatter_Weights_AndLowSamplesKeepTheirPrecision()
    {
        var standards = CheckedCalibration.Standards("made-proportional");
        var weighted = CalibrationCurve.Of(standards, []);
        Assert.Equal(Weighting.VarianceFunction, weighted.Value!.Weights.Kind);
        Assert.Contains(weighted.Findings, f => f.Code == "HF-442" && f.Sentence.Contains("in proportion to the level", StringComparison.Ordinal));
        var plain = CalibrationCurve.Of(standards, [], Unweighted).Value!;
        Assert.True(weighted.Value.Read("S", [0.03, 0.03, 0.03]).Prediction!.U < plain.Read("S", [0.03, 0.03, 0.03]).Prediction!.U / 5);
        Assert.True(weighted.Value.Read("S", [0.5, 0.5, 0.5]).Prediction!.U > plain.Read("S", [0.5, 0.5, 0.5]).Prediction!.U);
    }

    [Fact]
    public void Of_SlopeLostInScatter_GivesNoCalibration()
    {
        var found = CalibrationCurve.Of([new(0, 1), new(1, 1.4), new(2, 0.7), new(3, 1.3), new(4, 1.1)], []);
        Assert.Null(found.Value);
        Assert.Equal("HF-444", Assert.Single(found.Findings).Code);
    }

    [Fact]
    public void Of_TwoReadings_GivesNoCalibration() => Assert.Equal("HF-444", Assert.Single(CalibrationCurve.Of([new(0, 0), new(1, 1)], []).Findings).Code);

    [Fact]
    public void Of_ThreeLevels_SaysThatLinearityIsNotTestable()
    {
        var found = CalibrationCurve.Of([new(0, 0.001), new(0, 0.002), new(1, 0.1), new(1, 0.101), new(2, 0.2), new(2, 0.203)], []);
        Assert.Contains(found.Findings, f => f.Code == "HF-440");
        Assert.Equal(LinearityVerdict.NotTestable, found.Value!.Linearity.Verdict);
    }

    [Fact]
    public void Of_TypedZero_IsFlagged()
        => Assert.Contains(CalibrationCurve.Of([new(0, 0), new(1, 0.1), new(2, 0.2), new(3, 0.301), new(4, 0.399)], []).Findings, f => f.Code == "HF-443" && f.Sentence.Contains("exactly 0", StringComparison.Ordinal));

    [Fact]
    public void Of_OneBadStandard_NamesItAndTheSlopeWithoutIt()
    {
        StandardReading[] standards = [.. from level in new[] { 0.0, 1, 2, 3, 4, 5 } from i in new[] { -1, 0, 1 } select new StandardReading(level, 0.1 * level + 0.0004 * i, $"{(char)('0' + (int)level)}/{(char)('b' + i)}")];
        standards[10] = standards[10] with { Signal = 0.2 };
        var found = CalibrationCurve.Of(standards, [], new() { Curve = CurveKind.Line });
        var off = Assert.Single(found.Findings, f => f.Code == "HF-443");
        Assert.Equal(standards[10].Id, Assert.Single(off.Concerns));
    }

    [Fact]
    public void Of_FallingCurve_ReadsAsWellAsARisingOne()
    {
        var falling = CalibrationCurve.Of([.. CheckedCalibration.Standards("harvey-5.4").Select(s => s with { Signal = 100 - s.Signal })], []).Value!;
        var rising = CalibrationCurve.Of(CheckedCalibration.Standards("harvey-5.4"), []).Value!;
        Agree.Digits(10, rising.Read("S", [29.33]).Signed!.Value.Value, falling.Read("S", [100 - 29.33]).Signed!.Value.Value);
        Agree.Digits(10, rising.Read("S", [29.33]).Signed!.Value.U, falling.Read("S", [100 - 29.33]).Signed!.Value.U);
        Assert.Equal(ReadBackKind.AboveTop, falling.Read("S", [20]).Kind);
    }

    // 3 blanks: known to a factor of 0.52 to 6.28 (chi-square); one or equal blanks say nothing; a blank far above the intercept is contaminated.
    [Fact]
    public void Of_BlanksThatAreFewFlatOrHigh_IsFlagged()
    {
        var standards = CheckedCalibration.InventedStandards();
        Assert.Contains(CalibrationCurve.Of(standards, [0.001, 0.0012, 0.0009]).Findings, f => f.Code == "HF-445" && f.Sentence.Contains("6.28", StringComparison.Ordinal));
        var flat = CalibrationCurve.Of(standards, [0.001]);
        Assert.Contains(flat.Findings, f => f.Code == "HF-445");
        Assert.Equal(LimitDefinition.DetectionOfLine, flat.Value!.Limits.Detection.Definition);
        Assert.Contains(CalibrationCurve.Of(standards, [.. CheckedCalibration.InventedBlanks().Select(b => b + 0.02)]).Findings, f => f.Code == "HF-448");
    }

    [Fact]
    public void Of_NegativeLevel_Throws() => Assert.Throws<ArgumentException>(() => CalibrationCurve.Of([new(-1, 0), new(0, 0), new(1, 1)], []));

    // Every sentence a chemist may get is at most 25 words long.
    [Fact]
    public void Findings_OfAllTheseRuns_AreShort()
    {
        string[] sets = ["fluorescein", "quam-a5", "harvey-5.4", "made-quadratic", "made-proportional"];
        CalibrationOptions[] ways = [new(), new() { Curve = CurveKind.Line }, new() { Curve = CurveKind.LineThroughZero, Weighting = Weighting.Equal }];
        var findings = sets.SelectMany(s => ways.SelectMany(w => CalibrationCurve.Of(CheckedCalibration.Standards(s), [0.001, 0.002, 0.0015], w).Findings)).ToList();
        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.True(f.Sentence.Split(' ').Length <= 25, f.Sentence));
    }
}
