using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

// Verdicts of reference/measurement/flag-cases.csv; windows are common practice.
public class QualityControlTests
{
    [Fact]
    public void CheckStandard_HighByTwelvePercent_Fails()
    {
        var check = CheckStandard.Of("CS-2", 2.00, 2.23);
        Assert.Equal(111.5, check.Value!.Percent, 0.0001);
        Assert.False(check.Value.Passes);
        Assert.Equal(Weight.Stop, Assert.Single(check.Findings).Weight);
        Assert.Empty(CheckStandard.Of("CS-2", 2.00, 2.19).Findings);
    }

    [Fact]
    public void Drift_SevenPercent_IsInterpolatedAndFlagged()
    {
        var drift = Drift.Of("AAS-1", 0.0600, 0.0558);
        Assert.Equal(-0.07, drift.Value!.Relative, 1e-12);
        Assert.Equal(DriftRemedy.Interpolate, drift.Value.Remedy);
        Assert.Single(drift.Findings);
        Assert.Equal(0.0579, drift.Value.SlopeAt(0.5), 1e-12);
        Assert.Empty(Drift.Of("AAS-1", 0.0600, 0.0575).Findings);
        Assert.Equal(DriftRemedy.RefuseRun, Drift.Of("AAS-1", 0.0600, 0.0500).Value!.Remedy);
    }

    [Fact]
    public void SpikeRecovery_Usual_IsInsideTheWindow()
    {
        var r = SpikeRecovery.Of("V-3", Known("n", 1.20, 0.03), Known("s", 3.05, 0.05), 2.00);
        Assert.Equal(0.925, r.Value!.Recovery.Value, 1e-12);
        Agree.Digits(10, Math.Sqrt(0.03 * 0.03 + 0.05 * 0.05) / 2, r.Value.Recovery.U);
        Assert.Empty(r.Findings);
    }

    [Fact]
    public void SpikeRecovery_TooSmallSpike_IsRefused()
        => Assert.Null(SpikeRecovery.Of("V-3", Known("n", 10.0, 0.3), Known("s", 10.4, 0.3), 0.5).Value);

    // With volumes: 20 mL of 1.2 mg/L and 1 mL of 40 mg/L, all found again: c = (24 + 40)/21.
    [Fact]
    public void SpikeRecovery_WithVolumes_CountsAmounts()
        => Agree.Digits(12, 1, SpikeRecovery.WithVolumes("V-3", 1.2, 20, 64.0 / 21, 40, 1).Value!.Recovery.Value);

    [Fact]
    public void Duplicates_FarAndNearTheLimit_AreJudgedDifferently()
    {
        var far = Duplicates.Of("V-1", 2.10, 2.40).Value!;
        Assert.Equal(13.3, far.RelativeDifferencePercent, 0.05);
        Assert.True(far.Passes);
        var near = Duplicates.Of("V-2", 0.05, 0.09, 0.03);
        Assert.True(near.Value!.IsNearLimit);
        Assert.False(near.Value.Passes);
        Assert.Single(near.Findings);
    }

    // √(Σd²/2k): one pair gives |d|/√2, the sd of its two values.
    [Fact]
    public void PooledSd_OnePair_IsItsSd()
        => Agree.Digits(12, Summary.Of([2.1, 2.4]).Sd!.Value, Duplicates.PooledSd([new(2.1, 2.4)]));

    [Fact]
    public void MatrixEffect_LowerSlope_IsShown()
    {
        var m = MatrixEffect.Of(new("standards", 0.0600, 0.0005, 13, 15), new("additions", 0.0521, 0.0009, 5, 7));
        Assert.Equal(0.868, m.Ratio, 0.0005);
        Assert.Equal(7.7, m.Z, 0.05);
        Assert.True(m.IsShown);
        Assert.False(m.IsExcluded);
    }

    [Fact]
    public void StandardAdditions_ShortAdditions_AreFlagged()
    {
        StandardReading[] additions = [new(0, 0.30), new(2, 0.34), new(4, 0.379), new(6, 0.42), new(8, 0.461)];
        Assert.Contains(StandardAdditions.Of("V-9", additions).Findings, f => f.Code == "HF-403");
        Agree.Digits(12, 0.33, StandardAdditions.VolumeCorrected(0.3, 10, 1));
    }

    // reference/measurement/critical-values.csv, c4 and d2.
    [Fact]
    public void ControlChartConstants_EveryRow_AgreeWithComputation()
    {
        var rows = ReferenceTable.Read("measurement", "critical-values.csv").Where(r => r["table"] is "c4" or "d2").ToList();
        Assert.Equal(18, rows.Count);
        foreach (var r in rows)
        {
            var n = (int)r.Number("n");
            Agree.Digits(9, r.Number("value"), r["table"] == "c4" ? ControlChartConstants.C4(n) : ControlChartConstants.D2(n), r["table"]);
        }
    }

    [Fact]
    public void ControlChart_EachRule_IsSeen()
    {
        double[] quiet = [.. Enumerable.Range(0, 20).Select(i => i % 2 == 0 ? 0.5 : -0.5)];
        Assert.Empty(ControlChart.Against(quiet, 0, 1).Signals);
        Assert.Equal(ControlRule.OneBeyondThree, Assert.Single(ControlChart.Against([.. quiet, 3.2], 0, 1).Signals).Rule);
        Assert.Equal(ControlRule.TwoOfThreeBeyondTwo, ControlChart.Against([.. quiet, 2.2, -0.5, 2.3], 0, 1).Signals[0].Rule);
        Assert.Equal(ControlRule.EightOnOneSide, ControlChart.Against([.. quiet, 1, 1, 1, 1, 1, 1, 1, 1], 0, 1).Signals[0].Rule);
    }

    [Fact]
    public void ControlChart_FewRuns_IsShownNotJudged()
    {
        var chart = ControlChart.Of([2.0, 2.1, 1.9, 2.0, 2.9]);
        Assert.False(chart.Value!.IsJudged);
        Assert.Empty(chart.Findings);
    }

    [Fact]
    public void CarryOver_BlankAboveLimit_IsFlagged()
    {
        Assert.Equal("HF-448", CarryOver.AfterHighest("B-9", 0.05, 0.036)!.Code);
        Assert.Null(CarryOver.AfterHighest("B-9", 0.01, 0.036));
        Assert.Equal(Weight.Stop, CarryOver.Contamination("B-9", 0.05, 0.036)!.Weight);
    }

    [Fact]
    public void DilutionCheck_OneCurve_ComparesWithoutWhatIsShared()
    {
        var curve = CalibrationCurve.Of(CheckedCalibration.InventedStandards(), CheckedCalibration.InventedBlanks()).Value!;
        var first = curve.Read("S a", [0.0605, 0.0606, 0.0604], 10).Signed!.Value;
        Assert.True(DilutionCheck.Of("S", first, curve.Read("S b", [0.0309, 0.0310, 0.0308], 20).Signed!.Value).Value!.Agree);
        Assert.Single(DilutionCheck.Of("S", first, curve.Read("S b", [0.0409, 0.0410, 0.0408], 20).Signed!.Value).Findings);
    }

    private static Measured Known(string id, double value, double u) => Measured.From(value, new Source(id, id, u));
}
