using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

public class SensingTests
{
    // reference/design/demo-seed-1589-verdicts.csv: slope 0.01619 L/µmol, LOD 2.354 µmol/L; K20 fixes the same formula. Invented readings of the demo.
    [Fact]
    public void OnLine_InventedBlanks_AgreesWithTheStatedLimit()
    {
        var blanks = Invented("FLUOR-BLANK").Select(r => r.Value).ToArray();
        var series = Invented("FLUOR").Where(r => r.Level <= 40).ToArray();
        var line = Linearity.Of([.. series.Select(r => new StandardReading(r.Level, blanks.Average() / r.Value))]);
        Agree.Digits(3.5, 0.01619, line.Line.SlopeAt(0));
        Agree.Digits(3.5, 0.06521, line.Mandel!.F);
        var limit = SensorLimits.OnLine(blanks, line.Line.SlopeAt(0)).Single(l => l.Definition == LimitDefinition.ThreePointThreeSd);
        Agree.Digits(3.5, 2.354, limit.Value);
        Assert.Empty(SensorLimits.Says(limit, 10, 2, "µmol/L"));
    }

    // flag-cases.csv, "LOD below lowest level": LOD 1.2, lowest level 5.
    [Fact]
    public void Says_LimitBelowEveryLevelAndFewPreparations_SaysBoth()
    {
        var limit = new DetectionLimit(LimitDefinition.ThreePointThreeSd, 1.2, null, 4);
        Assert.Equal(["HF-578", "HF-578"], SensorLimits.Says(limit, 4, 5, "µmol/L").Select(f => f.Code));
        Assert.Throws<ArgumentException>(() => SensorLimits.OnLine([1, 0], 0.02));
    }

    // The break of joined lines is known in exact data; a smooth curve yields two lines and a caveat all the same.
    [Fact]
    public void JoinedLines_ExactBreak_IsFound()
    {
        double[] x = [0, 1, 2, 3, 4, 5, 6, 7, 8];
        var lines = JoinedLines.Of(x, [.. x.Select((v, i) => 1 + 0.5 * v - 0.3 * Math.Max(0, v - 3.4) + 1e-6 * (i % 2 == 0 ? 1 : -1))]).Value!;
        Assert.Equal(3.4, lines.Break, 4);
        Assert.True(lines.BreakInterval.Contains(3.4));
        Assert.True(lines.AreShown);
    }

    [Fact]
    public void JoinedLines_AStraightLine_AreNotShown()
    {
        var series = QuenchingSeries.Named("linear-noisy");
        var outcome = JoinedLines.Of(series.Q, series.Ratios);
        Assert.False(outcome.Value!.AreShown);
        Assert.Contains("one smooth curve", Assert.Single(outcome.Findings).Sentence, StringComparison.Ordinal);
        Assert.Null(JoinedLines.Of([0, 1, 2, 3, 4], [1, 2, 3, 4, 5]).Value);
    }

    // Moving the break off its best place by its own interval raises the sum of squares by the factor 1 + F/(n − 4): the interval's definition.
    [Fact]
    public void JoinedLines_Interval_EndsWhereTheSumOfSquaresReachesTheCut()
    {
        var series = QuenchingSeries.Named("accessible-noisy");
        var lines = JoinedLines.Of(series.Q, series.Ratios).Value!;
        var dof = series.Q.Length - 4;
        var cut = lines.SumOfSquares * (1 + FisherDistribution.Quantile(0.95, 1, dof) / dof);
        foreach (var end in new[] { lines.BreakInterval.Low, lines.BreakInterval.High })
        {
            var fit = Holdfast.Fitting.Lines.LinearModel.Of(
                [[.. series.Q.Select(_ => 1.0)], series.Q, [.. series.Q.Select(v => Math.Max(0, v - end))]], series.Ratios).Value!;
            Agree.Digits(6, cut, fit.SumOfSquares);
        }
    }

    // A vessel that loses 4 % in 60 min by a first-order law (demo-scenario: drift run without nickel): rate −ln(0.96)/60.
    [Fact]
    public void DriftControl_FirstOrderLoss_IsUndone()
    {
        double[] time = [0, 10, 20, 30, 40, 50, 60];
        double[] signal = [.. time.Select((t, i) => 1000 * Math.Pow(0.96, t / 60) * (1 + 0.0004 * (i % 2 == 0 ? 1 : -1)))];
        var drift = DriftControl.Of(time, signal).Value!;
        Assert.True(drift.IsSmooth);
        Assert.Equal(0.04, drift.LossBy(60).Value, 3);
        Assert.Equal(1000, drift.Corrected(960, 60).Value, 0);
        Assert.Equal("HF-579", drift.Against(0.03, 0.006, 60)?.Code);
        Assert.Null(drift.Against(0.30, 0.02, 60));
        Assert.Null(DriftControl.Of([0, 10], [1, 2]).Value);
    }

    [Fact]
    public void DriftControl_ABend_IsNotSmooth()
    {
        double[] time = [0, 10, 20, 30, 40, 50, 60];
        var outcome = DriftControl.Of(time, [.. time.Select((t, i) => 1000 - 0.02 * t * t + 0.1 * (i % 2))]);
        Assert.False(outcome.Value!.IsSmooth);
        Assert.Equal("HF-579", Assert.Single(outcome.Findings).Code);
    }

    // Holm by hand: the smallest of k p-values is multiplied by k. Margins and rules as in the equivalence of two means.
    [Fact]
    public void Interference_SeveralIons_AreJudgedInsideTheMarginWithHolm()
    {
        double[] without = [0.998, 1.002, 1.000, 1.003, 0.997];
        var (ions, findings) = Interference.Of(without, [("Na", 50, [0.999, 1.001, 1.002]), ("Pb", 1, [0.90, 0.91, 0.92]), ("Mn", 1, [0.93, 0.97, 1.01]), ("Zn", 1, [0.98])]);
        Assert.Equal(["Na", "Pb", "Mn"], ions.Select(i => i.Ion));
        Assert.True(ions[0].IsExcluded && !ions[0].IsShown);
        Assert.True(ions[1].IsShown && !ions[1].IsExcluded);
        Assert.True(!ions[2].IsShown && !ions[2].IsExcluded);
        Assert.Equal("HF-580", Assert.Single(findings).Code);
        Agree.Digits(12, Math.Min(1, 3 * ions.Min(i => i.Equivalence.P)), ions.Min(i => i.AdjustedP));
    }

    [Fact]
    public void ToleranceRatio_OfRisingExcess_StopsAtTheFirstThatIsNotShown()
    {
        double[] without = [0.998, 1.002, 1.000, 1.003, 0.997];
        var (ions, _) = Interference.Of(without, [("Ca", 10, [0.999, 1.001, 1.0]), ("Ca", 100, [1.004, 0.998, 1.001]), ("Ca", 1000, [0.9, 0.92, 0.91])]);
        Assert.Equal(100, Interference.ToleranceRatio(ions));
        Assert.Null(Interference.ToleranceRatio(ions.Skip(2)));
    }

    // reference/design/demo-seed-1589-verdicts.csv, D35: recoveries and slopes with 95 % intervals. Invented readings of the demo.
    [Theory]
    [InlineData("roof", 0.9784, 0.9395, 1.017, 100.9, 98.7, 98.0, false)]
    [InlineData("rinse", 0.8287, 0.7974, 0.8601, 87.4, 81.7, 83.7, true)]
    public void SpikedWater_InventedWaters_AgreeWithTheStatedVerdicts(
        string water, double slope, double low, double high, double first, double second, double third, bool effect)
    {
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == "SPIKE" && r["level"].StartsWith(water, StringComparison.Ordinal)).ToArray();
        var found = SpikedWater.Of(
            Array.ConvertAll(rows, r => double.Parse(r["level"].Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture)), Array.ConvertAll(rows, r => r.Number("value")));
        Agree.Digits(3.5, slope, found.Value!.Slope.Value);
        Agree.Digits(3.3, low, found.Value.Slope.Interval(0.95).Low);
        Agree.Digits(3.3, high, found.Value.Slope.Interval(0.95).High);
        Assert.All(found.Value.Levels.Zip([first, second, third]), p => Assert.Equal(p.Second, 100 * p.First.Recovery, 1));
        Assert.Equal(effect, found.Value.MatrixEffectIsShown);
        Assert.Equal(effect, found.Findings.Any(f => f.Code == "HF-585"));
    }

    [Fact]
    public void SpikedWater_WithoutTheWaterItself_HasNoRecovery() => Assert.Null(SpikedWater.Of([5, 10, 20, 30], [5, 10, 20, 30]).Value);

    // One exponential with k = 0.5: 95 % of the change at ln(20)/0.5 = 5.99 (derived); within 5 % from the next reading on.
    [Fact]
    public void ResponseTime_OneExponential_IsItsTimeToNinetyFivePercent()
    {
        double[] time = [.. Enumerable.Range(0, 31)];
        var response = ResponseTime.Of(time, [.. time.Select(t => 1000 - 400 * (1 - Math.Exp(-0.5 * t)))], "min").Value!;
        Assert.Equal(Math.Log(20) / 0.5, response.ByExponential!.Value, 4);
        Assert.Equal(6, response.Reached);
        Assert.Equal(5, response.ReadingsBefore);
    }

    [Fact]
    public void ResponseTime_StillMoving_HasNone()
        => Assert.Equal("HF-581", Assert.Single(ResponseTime.Of([0, 1, 2, 3, 4, 5, 6, 7], [100, 90, 80, 70, 60, 50, 40, 30], "min").Findings).Code);

    [Fact]
    public void ResponseTime_FasterThanTheReadings_IsSaid()
        => Assert.Contains(ResponseTime.Of([0, 5, 10, 15, 20, 25, 30, 35], [100, 60, 60.1, 59.9, 60, 60.1, 59.9, 60], "min").Findings, f => f.Code == "HF-581");

    // The uncertainty of E counts F0 once: E = 1 − F/F0 (definition), u by first order.
    [Fact]
    public void Efficiency_WithUncertainF0_CarriesIt()
    {
        var f0 = Measured.From(1000, new Source("f0", "signal without quencher", 10));
        var e = QuenchingEfficiency.Of(Measured.From(750, new Source("f", "signal", 6)), f0);
        Agree.Digits(12, 0.25, e.Value);
        Agree.Digits(12, Math.Sqrt(Math.Pow(6 / 1000.0, 2) + Math.Pow(0.75 * 10 / 1000, 2)), e.U);
        Assert.Equal(0, QuenchingEfficiency.Of(f0, f0).U);
    }

    private static IEnumerable<(double Level, double Value)> Invented(string series)
        => ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == series)
            .Select(r => (double.Parse(r["level"].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), r.Number("value")));
}
