using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Scaleup;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Scaleup;

public class BreakthroughTests
{
    private const double C0 = 50, Flow = 0.010, Mass = 5, Depth = 10, Velocity = 0.2;
    private static readonly IReadOnlyList<ReferenceRow> Data = ReferenceTable.Read("sorption", "breakthrough-data.csv");
    private static readonly IReadOnlyList<ReferenceRow> Expected = ReferenceTable.Read("sorption", "breakthrough-expected.csv");

    // reference/sorption/breakthrough-data.csv: the two curves at every time.
    [Fact]
    public void Curves_AtEveryTime_AgreeWithTheTable()
    {
        foreach (var row in Data)
        {
            Agree.Digits(11, row.Number("ratio_exact_logistic"), BreakthroughLogistic.Value<Number>(row.Number("t_min"), [0.02, 400]).Value);
            Agree.Digits(11, row.Number("ratio_full_bohart_adams"), BohartAdams.Value<Number>(row.Number("t_min"), [0.02, 400]).Value);
        }
    }

    // reference/sorption/breakthrough-expected.csv: every row.
    [Fact]
    public void Logistic_OfTheObservedRun_AgreesInEveryRow()
    {
        var fit = ColumnRun.Fit<BreakthroughLogistic>(Points("ratio_observed"));
        Assert.True(fit.IsFit);
        Check("logistic", "kYN_per_min", fit["k"].Value, fit["k"].StandardError);
        Check("logistic", "tau_min", fit["τ"].Value, fit["τ"].StandardError);
        var rate = fit.Derived(p => BedConstants.Rate(p[0], C0))!.Value;
        Check("thomas", "kTh_L_mg_min", rate.Value, rate.U);
        var capacity = fit.Derived(p => BedConstants.Capacity(p[1], C0, Flow, Mass))!.Value;
        Check("thomas", "q0_mg_g", capacity.Value, capacity.U);
        var perBed = fit.Derived(p => BedConstants.CapacityPerBed(p[1], C0, Velocity, Depth))!.Value;
        Check("bohart-adams logistic", "N0_mg_per_L_bed", perBed.Value, perBed.U);
        Check("logistic", "t_at_5_percent", fit.Derived(p => BedConstants.TimeAt(0.05, p[0], p[1]))!.Value.Value, null);
        Check("bed", "empty_bed_contact_min", BedConstants.EmptyBedContact<Number>(Depth, Velocity).Value, null);
        double[] t = [.. Data.Select(r => r.Number("t_min"))];
        Number[] ratio = [.. Data.Select(r => (Number)r.Number("ratio_observed"))];
        Check("integral", "q_dynamic_mg_g_trapezium_to_800_min",
            BreakthroughIntegral.Capacity<Number>(BreakthroughIntegral.TotalTime<Number>(t, ratio), C0, Flow, Mass, 0).Value, null);
        Check("edge: kTh 0.00008", "ratio_at_t0_of_the_logistic", BedConstants.AtStart(0.004, 400), null);
        Check("edge: kTh 0.00008", "t_at_5_percent", BedConstants.TimeAt<Number>(0.05, 0.004, 400).Value, null);
    }

    [Fact]
    public void DepthServiceTime_OfThreeDepths_AgreesInEveryRow()
    {
        double[] depths = [5, 10, 15], times = [.. depths.Select(z => Row("depth-service time", FormattableString.Invariant($"t5_at_{z}_cm")).Number("value"))];
        var line = BedDepthServiceTime.Of(depths, times, 0.05, C0, Velocity).Value!;
        Check("depth-service time", "N0_mg_per_L_bed", line.Capacity.Value, null);
        Check("depth-service time", "k_L_mg_min", line.Rate.Value, null);
        Check("depth-service time", "critical_depth_cm", line.CriticalDepth.Value, null);
        Agree.Digits(9, times[1], line.ServiceTime(10).Value);
        Agree.Digits(9, 2 * line.ServiceTimeAt(10, Velocity) - line.ServiceTimeAt(20, Velocity), line.ServiceTimeAt(0, 1));

        // A slow front (k = 0.00008) at the same capacity: the three service times of the formula give its critical depth.
        double[] slow = [.. depths.Select(z => 400 * z / (C0 * Velocity) - Math.Log(19) / (0.00008 * C0))];
        Check("edge: kTh 0.00008", "critical_depth_cm", BedDepthServiceTime.Of(depths, slow, 0.05, C0, Velocity).Value!.CriticalDepth.Value, null);
        Assert.Equal("HF-644", Assert.Single(BedDepthServiceTime.Of([5, 10], [50, 250], 0.05, C0, Velocity).Findings).Code);
        Assert.Equal("HF-645", Assert.Single(BedDepthServiceTime.Of([5, 10, 15], [50, 40, 31], 0.05, C0, Velocity).Findings).Code);
    }

    // The critical depth's uncertainty takes the covariance of slope and intercept along: by a shift of every service time it moves as it should.
    [Fact]
    public void CriticalDepth_WithScatter_HasTheUncertaintyOfItsLine()
    {
        double[] depths = [5, 8, 10, 12, 15], times = [52, 174, 252, 331, 453];
        var line = BedDepthServiceTime.Of(depths, times, 0.05, C0, Velocity).Value!;
        var atCritical = line.ServiceTime(line.CriticalDepth.Value);
        Assert.Equal(0, atCritical.Value, 9);
        var slope = line.Capacity.Value / (C0 * Velocity);
        Agree.Digits(8, atCritical.StandardError / slope, line.CriticalDepth.StandardError);
    }

    // C. J. Geankoplis, Transport Processes and Unit Operations, example 12.3-1: break 3.65 h, total 5.16 h, unused 4.1 cm of 14 (print from memory).
    [Fact]
    public void Run_OfGeankoplis_AgreesWithThePrintAndTheTable()
    {
        var rows = ReferenceTable.Read("sorption", "published", "geankoplis-breakthrough.csv");
        var expected = ReferenceTable.Read("sorption", "published-expected.csv").Where(r => r["dataset"] == "geankoplis-breakthrough").ToDictionary(r => r["quantity"]);
        double[] t = [.. rows.Select(r => r.Number("t_h"))];
        Number[] ratio = [.. rows.Select(r => (Number)r.Number("C_over_C0"))];
        var total = BreakthroughIntegral.TotalTime<Number>(t, ratio);
        var used = BreakthroughIntegral.UsedTime<Number>(t, ratio, 0.01)!.Value;
        var end = BreakthroughIntegral.BreakTime<Number>(t, ratio, 0.01)!.Value;
        var unused = BreakthroughIntegral.UnusedLength(14, used, total);
        Agree.Digits(8, expected["t_total_h"].Number("computed_here"), total.Value);
        Agree.Digits(8, expected["t_used_h"].Number("computed_here"), used.Value);
        Agree.Digits(8, expected["t_break_1_percent_h"].Number("computed_here"), end.Value);
        Agree.Digits(8, expected["unused_length_cm"].Number("computed_here"), unused.Value);
        Assert.True(used.Value <= end.Value);
        Agree.Relative(0.01, 5.16, total.Value);
        Agree.Relative(0.01, 3.65, used.Value);
        Agree.Relative(0.02, 4.1, unused.Value);
        var fit = ColumnRun.Fit<BreakthroughLogistic>(new([.. t.Skip(1)], [.. ratio.Skip(1).Select(r => r.Value)], "h", ""));
        Agree.Digits(7, expected["k_per_h"].Number("computed_here"), fit["k"].Value);
        Agree.Digits(6, expected["k_per_h"].Number("se"), fit["k"].StandardError!.Value);
        Agree.Digits(7, expected["tau_h"].Number("computed_here"), fit["τ"].Value);
        Agree.Digits(6, expected["tau_h"].Number("se"), fit["τ"].StandardError!.Value);
    }

    // An outlet with an uncertainty gives times with one: every ratio raised by the same amount takes it off the total, times the run.
    [Fact]
    public void TotalTime_WithACommonError_IsOffByTheRun()
    {
        var shared = new Source("zero", "zero of the detector", 0.01);
        Measured[] ratio = [.. new[] { 0, 0.1, 0.5, 0.9, 1 }.Select(r => Measured.From(r, shared))];
        Assert.Equal(0.01 * 40, BreakthroughIntegral.TotalTime<Measured>([0, 10, 20, 30, 40], ratio).U, 12);
        Assert.Null(BreakthroughIntegral.BreakTime<Measured>([0, 10], [ratio[0], ratio[0]], 0.05));
    }

    // Scan alone, without the start that the run gives, finds the same fit; and the full curve differs by nothing that matters.
    [Fact]
    public void Fits_OfBothCurves_AgreeWhereTheFrontIsSharp()
    {
        FitResult scanned = Fit.Of<BreakthroughLogistic>(Points("ratio_observed")), full = ColumnRun.Fit<BohartAdams>(Points("ratio_observed"));
        Agree.Digits(7, 400.171029863, scanned["τ"].Value);
        Agree.Relative(1e-3, scanned["τ"].Value, full["τ"].Value);
        Assert.Equal(["Bohart-Adams, full", "Breakthrough logistic"], ColumnRun.Curves.Select(m => m.Card.Name));
        Assert.Contains("Thomas", BreakthroughLogistic.Card.Aliases);
    }

    [Fact]
    public void Rules_OfColumns_FollowTheCases()
    {
        FlagCase.Check("E3", c => BedConstants.Determined(c["logistic_ratio_at_t0"]));
        Assert.Equal(Ruling.NotShownYet, BedConstants.Determined(0.001, lastRatio: 0.7));
        Assert.Equal("HF-643", Assert.Single(BreakthroughLogistic.Admissibility([0.004, 400], 0, 800)).Code);
    }

    private static Points Points(string column) => new([.. Data.Select(r => r.Number("t_min"))], [.. Data.Select(r => r.Number(column))], "min", "");

    private static ReferenceRow Row(string model, string quantity) => Expected.Single(r => r["model"] == model && r["quantity"] == quantity);

    private static void Check(string model, string quantity, double value, double? se)
    {
        var row = Row(model, quantity);
        Agree.Digits(7, row.Number("value"), value, quantity);
        if (row.Has("se"))
            Agree.Digits(6, row.Number("se"), se!.Value, quantity);
    }
}
