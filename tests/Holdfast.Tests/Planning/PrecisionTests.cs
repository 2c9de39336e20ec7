using System.Globalization;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Planning;
using Holdfast.Testing;

namespace Holdfast.Tests.Planning;

public class PrecisionTests
{
    // reference/sorption/reach.csv: capacity 1, sd 2 % of the highest uptake, range to 1.
    [Fact]
    public void Covariance_AgainstReach_AgreesWithTheTable()
    {
        foreach (var row in ReferenceTable.Read("sorption", "reach.csv"))
        {
            var top = row.Number("highest_fraction_of_capacity");
            top = Math.Abs(top - 1.0 / 3) < 1e-9 ? 1.0 / 3 : Math.Abs(top - 2.0 / 3) < 1e-9 ? 2.0 / 3 : top;
            var k = row["curve"] == "pseudo_first" ? -Math.Log(1 - top) : top / (1 - top);
            var octaves = row["layout"].EndsWith("32-fold", StringComparison.Ordinal) ? 5 : 6;
            double[] levels = row["layout"] == "8 equally spaced"
                ? [.. Enumerable.Range(1, 8).Select(i => i / 8.0)]
                : [.. Enumerable.Range(0, 8).Select(i => Math.Pow(2, -octaves + octaves * i / 7.0))];
            Holds(row["curve"], [1, k], levels, 0.02 * top, row.Number("rel_se_capacity_percent"), row.Number("rel_se_rate_or_affinity_percent"), row.Number("correlation"), 0, 0);
        }
    }

    // reference/design/langmuir-coverage.csv and kinetics-coverage.csv: sd 2 % of the capacity itself.
    [Theory, InlineData("langmuir-coverage.csv"), InlineData("kinetics-coverage.csv")]
    public void Covariance_AgainstCoverage_AgreesWithTheTable(string file)
    {
        foreach (var row in ReferenceTable.Read("design", file))
        {
            var isotherm = file[0] == 'l';
            var curve = isotherm ? "langmuir" : row["model"] == "pfo" ? "pseudo_first" : "pseudo_second";
            var k = row.Number(isotherm ? "K_times_Cmax" : "rate_times_Tmax");
            var fold = isotherm ? 32.0 : 64.0;
            var (first, second) = curve == "pseudo_first" ? OptimalLevels.PseudoFirstOrder(k, 0, 1) : OptimalLevels.Langmuir(k, 0, 1);
            double[] levels = row["layout"][..3] switch
            {
                "8 e" => [.. Enumerable.Range(1, 8).Select(i => i / 8.0)],
                "8 g" => [.. Enumerable.Range(0, 8).Select(i => Math.Pow(fold, i / 7.0 - 1))],
                _ => [first, first, first, first, second, second, second, second],
            };
            Holds(curve, [1, k], levels, 0.02, row.Number(isotherm ? "rel_se_qmax_percent" : "rel_se_qe_percent"), row.Number(isotherm ? "rel_se_K_percent" : "rel_se_k_percent"), row.Number("correlation"), 5.01e-4, 5.01e-5);
        }
    }

    // reference/design/langmuir-batch-c0.csv: levels are starting concentrations, Ce follows from the mass balance, three laws of error.
    [Fact]
    public void Search_OverStartingConcentration_AgreesWithTheTable()
    {
        foreach (var row in ReferenceTable.Read("design", "langmuir-batch-c0.csv"))
        {
            double[] p = [row.Number("q_max_mg_g"), row.Number("K_L_per_mg")];
            var dose = row.Number("dose_g_per_L");
            Func<double, double, double> sd = row["error_model"] switch
            {
                "constant sd of Ce = 0.2 mg/L" => (_, _) => 0.2,
                "constant CV of Ce = 3 %" => (_, ce) => 0.03 * ce,
                _ => BenchError,
            };
            double[] Slope(double c0) => BatchRow(c0, dose, p, sd);
            var design = OptimalDesign.Search(Slope, row.Number("C0_low"), row.Number("C0_high"));
            var expected = row["support_C0_mg_L"].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray();
            Agree.Relative(1e-4, expected[0], design.Levels[0], row["error_model"]);
            Agree.Relative(1e-4, expected[1], design.Levels[1], row["error_model"]);
            var eight = Information.Of(Enumerable.Range(0, 8).Select(i => Slope(design.Levels[i % 2])));
            var covariance = eight.Covariance()!;
            Assert.Equal(row.Number("rel_se_qmax_percent_8_vessels"), 100 * Math.Sqrt(covariance[0, 0]) / p[0], 3);
            Assert.Equal(row.Number("rel_se_K_percent_8_vessels"), 100 * Math.Sqrt(covariance[1, 1]) / p[1], 3);

            // Usual layouts: eight equally spaced up to the upper end, eight geometric over 32-fold below it.
            var high = row.Number("C0_high");
            var equal = Information.Of(Enumerable.Range(0, 8).Select(i => Slope(high * (i + 1) / 8)));
            var geometric = Information.Of(Enumerable.Range(0, 8).Select(i => Slope(high * Math.Pow(32, i / 7.0 - 1))));
            Assert.Equal(row.Number("efficiency_8_equally_spaced"), equal.EfficiencyAgainst(eight), 0.0001);
            Assert.Equal(row.Number("efficiency_8_geometric_32fold"), geometric.EfficiencyAgainst(eight), 0.0001);
            Assert.Equal(row.Number("rel_se_qmax_percent_equal"), 100 * Math.Sqrt(equal.Covariance()![0, 0]) / p[0], 0.0006);
            Assert.Equal(row.Number("rel_se_K_percent_equal"), 100 * Math.Sqrt(equal.Covariance()![1, 1]) / p[1], 0.0006);
        }
    }

    // reference/design/sequential-langmuir.csv: six levels run once, then one at a time where the prediction is least known, grid 2 to 60 by 0.5.
    [Fact]
    public void NextLevel_OneAtATime_AgreesWithTheTable()
    {
        double[] p = [12, 0.35];
        double[] Slope(double c0) => BatchRow(c0, 2, p, BenchError);
        var known = Information.Of(new[] { 2.0, 5, 10, 15, 20, 25 }.Select(Slope));
        foreach (var row in ReferenceTable.Read("design", "sequential-langmuir.csv"))
        {
            Assert.Equal(row.Number("rel_se_qmax_percent_before"), 100 * Math.Sqrt(known.Covariance()![0, 0]) / p[0], 3);
            var next = NextLevel.Of(known, Enumerable.Range(0, 117).Select(i => 2 + 0.5 * i), Slope)!.Value;
            Assert.Equal(row.Number("next_C0_mg_L"), next.Level);
            Agree.Relative(1e-4, row.Number("prediction_variance_ratio_d"), next.Ratio, "d");
            Agree.Relative(1e-4, row.Number("log_det_gain"), next.Gain, "gain");
            known.Add(Slope(next.Level));
            Assert.Equal(row.Number("rel_se_K_percent_after"), 100 * Math.Sqrt(known.Covariance()![1, 1]) / p[1], 3);
        }
    }

    [Fact]
    public void Information_OfTooFewReadings_IsSingularAndSaysNothing()
    {
        var one = Information.Of([[1.0, 2.0]]);
        Assert.True(one.IsSingular);
        Assert.Equal(0, one.Determinant);
        Assert.Null(one.Covariance());
        Assert.Null(one.Variance([1, 0]));
        Assert.Null(NextLevel.Of(one, [1, 2], x => [x, 1]));
    }

    // Seven or more times: three between 10 and 80 % of first-order uptake, three at 95 % and beyond, and none before separation allows.
    [Fact]
    public void Propose_ContactTimes_CoverRiseAndPlateau()
    {
        foreach (var count in new[] { 7, 8, 10, 14 })
        {
            var times = ContactTimes.Propose(12, 0, count);
            Assert.Equal(count, times.Count);
            double F(double t) => 1 - Math.Pow(2, -t / 12);
            Assert.True(times.Count(t => F(t) is > 0.1 and < 0.8) >= 3);
            Assert.True(times.Count(t => F(t) >= 0.95) >= 3);
            Assert.Equal(times.Order(), times);
        }

        Assert.Equal(10, ContactTimes.Propose(12, 2, 8)[0], 12);
        Assert.True(ContactTimes.SeparationIsTooSlow(5, 2));
        Assert.False(ContactTimes.SeparationIsTooSlow(12, 2));
    }

    private static double BenchError(double c0, double ce) => Math.Sqrt(0.05 * 0.05 + 0.02 * ce * 0.02 * ce + 0.01 * c0 * 0.01 * c0);

    private static double[] BatchRow(double c0, double dose, double[] p, Func<double, double, double> sd)
        => SlopeRow.OfBatch(Isotherm.Named("Langmuir")!, p, dose, sd)(c0);

    private static void Holds(string curve, double[] p, double[] levels, double sd, double capacity, double rate, double correlation, double rounding, double roundingOfCorrelation)
    {
        var model = Isotherm.Named(curve) ?? Kinetic.Named(curve.Replace('_', '-') + "-order")!;
        var covariance = Information.Of(levels.Select(SlopeRow.OfCurve(model, p, _ => sd))).Covariance()!;
        void Near(double expected, double actual, double rounded) => Assert.True(
            Math.Abs(expected - actual) <= rounded + 1e-9 * Math.Abs(expected), FormattableString.Invariant($"{curve}: expected {expected}, got {actual}"));
        Near(capacity, 100 * Math.Sqrt(covariance[0, 0]) / p[0], rounding);
        Near(rate, 100 * Math.Sqrt(covariance[1, 1]) / p[1], rounding);
        Near(correlation, covariance[0, 1] / Math.Sqrt(covariance[0, 0] * covariance[1, 1]), roundingOfCorrelation);
    }
}
