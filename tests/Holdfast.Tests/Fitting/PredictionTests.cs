using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>What fitted curves predict: closed forms of the trade, refusals, and simulated series with a hidden truth.</summary>
public class PredictionTests
{
    private const int Studies = 300;
    private static readonly double[] Starts = [5, 10, 20, 30, 45, 60, 80, 100];
    private static readonly double[] Times = [3, 6, 12, 20, 35, 60, 120, 240];

    // Henry, q = K·Ce: Ce = C0/(1 + D·K), and to first order u(Ce) = C0·D/(1 + D·K)²·u(K) (by hand).
    [Fact]
    public void PredictVessel_Henry_IsTheClosedForm()
    {
        double[] off = [1.01, 0.99, 1.02, 0.98, 1.0, 1.01, 0.99, 1.0];
        var fit = Isotherm<Henry>([2], off, 0);
        double k = fit["Kd"].Value, left = 40 / (1 + 1.5 * k), u = 40 * 1.5 / Math.Pow(1 + 1.5 * k, 2) * fit["Kd"].StandardError!.Value;
        var found = fit.PredictVessel(40, 1.5, PredictionOf.Mean).Value!;
        Agree.Digits(9, left, found.Left.Value);
        Agree.Digits(6, u, found.Left.StandardError);
        Agree.Digits(9, (40 - left) / 1.5, found.Uptake.Value);
        Agree.Digits(9, 100 * (40 - left) / 40, found.Removal.Value);
        // Limits on ln Ce/(C0 − Ce), with t for the one parameter: as wide as those of K itself, which is the same to first order.
        var profile = fit["Kd"].Profile!;
        Assert.Equal(40 / (1 + 1.5 * profile.Upper.Value!.Value), found.Left.Lower, 0.02 * u);
        Assert.Equal(40 / (1 + 1.5 * profile.Lower.Value!.Value), found.Left.Upper, 0.02 * u);
        Assert.True(fit.PredictVessel(40, 1.5, PredictionOf.OneVessel).Value!.Left.StandardError > found.Left.StandardError);
    }

    // First order reaches the share s at −ln(1 − s)/k, second order at s/((1 − s)·k·qe) (textbook forms).
    [Fact]
    public void PredictTimeTo_ClosedForms_Agree()
    {
        var first = Kinetics<PseudoFirstOrder>([8, 0.05], new SeededStream(1, "first"), 0.02);
        var found = first.PredictTimeTo(0.9).Value!;
        Agree.Digits(9, -Math.Log(0.1) / first["k1"].Value, found.Value);
        Agree.Digits(6, first["k1"].StandardError!.Value / first["k1"].Value, found.StandardError / found.Value);
        var second = Kinetics<PseudoSecondOrder>([8, 0.02], new SeededStream(1, "second"), 0.02);
        Agree.Digits(7, 0.75 / (0.25 * second["k2"].Value * second["qe"].Value), second.PredictTimeTo(0.75).Value!.Value);
    }

    [Fact]
    public void Predict_OutsideWhatWasMeasured_IsWithheldWithTheReason()
    {
        var isotherm = Isotherm<Langmuir>([20, 0.2], [1.01, 0.99, 1.02, 0.98, 1.0, 1.01, 0.99, 1.0], 0);
        Assert.Contains("outside the", Reason(isotherm.PredictVessel(500, 1, PredictionOf.Mean)), StringComparison.Ordinal);
        Assert.Contains("outside the", Reason(isotherm.PredictVessel(20, 400, PredictionOf.OneVessel)), StringComparison.Ordinal);
        var first = Kinetics<PseudoFirstOrder>([8, 0.05], new SeededStream(1, "first"), 0.02);
        Assert.Contains("outside the 3 to 240 min", Reason(first.PredictTimeTo(0.01)), StringComparison.Ordinal);
        Assert.Contains("outside the 3 to 240 min", Reason(first.PredictTimeTo(0.999999)), StringComparison.Ordinal);
        Assert.Contains("no plateau", Reason(Kinetics<Elovich>([2, 0.8], new SeededStream(1, "elovich"), 0.02).PredictTimeTo(0.5)), StringComparison.Ordinal);

        static string Reason<T>(Outcome<T> outcome) where T : class
        {
            Assert.Null(outcome.Value);
            var finding = Assert.Single(outcome.Findings);
            Assert.Equal("HF-459", finding.Code);
            return finding.Sentence;
        }
    }

    // A 95 % interval holds the truth in 95 of 100 series, for the mean of many vessels and for one new vessel alike; in more where there is no scatter at all,
    // since six degrees of freedom have to show that. Binomial sd of 300: 0.013.
    [Theory, InlineData(0.0), InlineData(0.03)]
    public void PredictVessel_SimulatedSeries_HoldsTheTruth(double scatter)
    {
        double[] truth = [20, 0.2];
        var stream = new SeededStream(21, "predicted vessels");
        int mean = 0, one = 0;
        for (var study = 0; study < Studies; study++)
        {
            var fit = Isotherm<Langmuir>(truth, [.. Starts.Select(_ => 1 + scatter * stream.Normal())], 0.02, stream);
            mean += Holds(fit.PredictVessel(40, 2, PredictionOf.Mean).Value!, Left<Langmuir>(40, 2, 1, truth)) ? 1 : 0;
            one += Holds(fit.PredictVessel(40, 2, PredictionOf.OneVessel).Value!, Left<Langmuir>(40, 2, 1 + scatter * stream.Normal(), truth)) ? 1 : 0;
        }

        Assert.InRange(mean / (double)Studies, 0.91, scatter > 0 ? 0.99 : 1);
        Assert.InRange(one / (double)Studies, 0.91, scatter > 0 ? 0.99 : 1);

        static bool Holds(VesselPrediction found, double left)
        {
            Assert.True(found.Removal.Lower > 0 && found.Removal.Upper < 100);
            Assert.Equal(found.Left.Lower <= left && left <= found.Left.Upper, found.Uptake.Lower <= (40 - left) / 2 && (40 - left) / 2 <= found.Uptake.Upper);
            return found.Left.Lower <= left && left <= found.Left.Upper;
        }
    }

    [Theory, InlineData(0.9), InlineData(0.5)]
    public void PredictTimeTo_SimulatedSeries_HoldsTheTruth(double share)
    {
        var stream = new SeededStream(22, "predicted times");
        int held = 0, given = 0;
        for (var study = 0; study < Studies; study++)
        {
            if (Kinetics<PseudoSecondOrder>([8, 0.01], stream, 0.03).PredictTimeTo(share).Value is not { } found)
                continue;
            given++;
            var truth = share / ((1 - share) * 0.01 * 8);
            held += found.Lower <= truth && truth <= found.Upper ? 1 : 0;
        }

        Assert.True(given > 0.95 * Studies, $"given in {given}");
        Assert.InRange(held / (double)given, 0.91, 0.99);
    }

    // Vessels that come to an equilibrium of their own, each read with a relative error that is stated.
    private static FitResult Isotherm<TCurve>(double[] truth, double[] off, double reading, SeededStream? stream = null) where TCurve : struct, ICurve<TCurve>
    {
        double[] left = [.. Starts.Select((c, i) => Left<TCurve>(c, 2, off[i], truth) * (1 + reading * (stream?.Normal() ?? 0)))];
        return Fit.Series<TCurve>(SeriesPoints.OfVessels(
            [.. Starts.Select(c => (Measured)c)], [.. Starts.Select(_ => (Measured)2)],
            [.. left.Select((c, i) => reading == 0 ? c : Measured.From(c, new Source(FormattableString.Invariant($"read {i}"), "reading", reading * c)))]));
    }

    private static FitResult Kinetics<TCurve>(double[] truth, SeededStream stream, double scatter) where TCurve : struct, ICurve<TCurve>
        => Fit.Series<TCurve>(new(Times, [.. Times.Select(t => (Measured)(Model.Of<TCurve>().Value(t, truth) * (1 + scatter * stream.Normal())))], "min", "mg/g"));

    private static double Left<TCurve>(double start, double dose, double factor, double[] truth) where TCurve : struct, ICurve<TCurve>
        => Model.Of<TCurve>().ConcentrationLeft(start, dose * factor, truth, new double[truth.Length]);
}
