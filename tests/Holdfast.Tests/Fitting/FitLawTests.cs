using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>What must hold for every fit, whatever the data.</summary>
public class FitLawTests
{
    private static readonly FitOptions Plain = new() { Profiles = false };

    public static TheoryData<string> Curves() => [.. RegressionData.Curves.Keys];

    // A change of units changes the parameters' units and nothing else.
    [Theory, InlineData(1e6, 1), InlineData(1, 1e-9), InlineData(1e-5, 1e7)]
    public void Rescaling_OfBothAxes_ChangesNothingButUnits(double ofX, double ofY)
    {
        var points = RegressionData.Points("sips");
        var plain = Fit.Of<Sips>(points);
        var scaled = Fit.Of<Sips>(new([.. points.X.Select(x => x * ofX)], [.. points.Y.Select(y => y * ofY)]));
        double[] factor = [ofY, 1 / ofX, 1];
        Assert.Equal(plain.Stop, scaled.Stop);
        for (var j = 0; j < 3; j++)
        {
            Agree.Relative(1e-9, plain.Parameters[j].Value * factor[j], scaled.Parameters[j].Value);
            Agree.Relative(1e-8, plain.Parameters[j].StandardError!.Value * factor[j], scaled.Parameters[j].StandardError!.Value);
            Agree.Relative(1e-8, plain.Parameters[j].Profile!.Upper.Value!.Value * factor[j], scaled.Parameters[j].Profile!.Upper.Value!.Value);
        }

        Agree.Relative(1e-9, plain.Identifiability!.Condition, scaled.Identifiability!.Condition);
        Agree.Relative(1e-9, plain.DescriptiveRSquared!.Value, scaled.DescriptiveRSquared!.Value);
    }

    [Theory, MemberData(nameof(Curves))]
    public void Shuffling_OfTheRows_ChangesNothingBeyondRounding(string curve)
    {
        var points = RegressionData.Points(curve);
        var order = Enumerable.Range(0, points.Count).ToArray();
        new SeededStream(3, curve).Shuffle<int>(order);
        var plain = RegressionData.Curves[curve].Fit(points, Plain);
        var shuffled = RegressionData.Curves[curve].Fit(new([.. order.Select(i => points.X[i])], [.. order.Select(i => points.Y[i])]), Plain);
        for (var j = 0; j < plain.P; j++)
        {
            Agree.Relative(1e-10, plain.Parameters[j].Value, shuffled.Parameters[j].Value);
            Agree.Relative(1e-9, plain.Parameters[j].StandardError!.Value, shuffled.Parameters[j].StandardError!.Value);
        }
    }

    [Fact]
    public void DuplicatedRows_AreDoubledWeights()
    {
        var points = RegressionData.Points("toth");
        var twice = Fit.Of<Toth>(new([.. points.X, .. points.X], [.. points.Y, .. points.Y]), Plain);
        var doubled = Fit.Of<Toth>(new(points.X, points.Y, weights: [.. points.X.Select(_ => 2.0)]), Plain);
        for (var j = 0; j < 3; j++)
        {
            Agree.Relative(1e-9, twice.Parameters[j].Value, doubled.Parameters[j].Value);

            // The same curve and sum of squares, but 13 instead of 5 degrees of freedom.
            Agree.Relative(1e-8, twice.Parameters[j].StandardError!.Value, doubled.Parameters[j].StandardError!.Value * Math.Sqrt(5.0 / 13));
        }

        Agree.Relative(1e-10, twice.SumOfSquares, doubled.SumOfSquares);
    }

    // Scaling relative weights leaves estimates and errors; scaling known uncertainties scales the errors.
    [Fact]
    public void ScalingOfWeights_LeavesTheFit()
    {
        var points = RegressionData.Points("langmuir");
        double[] w = [.. points.Y.Select(y => 1 / y)];
        var one = Fit.Of<Langmuir>(new(points.X, points.Y, weights: w), Plain);
        var other = Fit.Of<Langmuir>(new(points.X, points.Y, weights: [.. w.Select(v => 1e8 * v)]), Plain);
        Agree.Relative(1e-10, one["K"].Value, other["K"].Value);
        Agree.Relative(1e-9, one["K"].StandardError!.Value, other["K"].StandardError!.Value);
        var known = Fit.Of<Langmuir>(new(points.X, points.Y, u: [.. points.Y.Select(_ => 0.8)]), Plain);
        Assert.Equal(ScatterModel.Known, known.Scatter);
        Agree.Relative(1e-9, Fit.Of<Langmuir>(points, Plain)["qm"].StandardError!.Value * 0.8 / 0.723412701947039, known["qm"].StandardError!.Value);
    }

    // Chi-square decides whether stated uncertainties can be believed; they are never mixed with the scatter in silence.
    [Theory, InlineData(0.05, ScatterModel.KnownButExceeded, true), InlineData(0.7, ScatterModel.Known, false), InlineData(20, ScatterModel.Known, true)]
    public void StatedUncertainties_AreHeldAgainstTheScatter(double u, ScatterModel scatter, bool said)
    {
        var points = RegressionData.Points("langmuir");
        var fit = Fit.Of<Langmuir>(new(points.X, points.Y, u: [.. points.Y.Select(_ => u)]), Plain);
        Assert.Equal(scatter, fit.Scatter);
        Assert.Equal(said, fit.Findings.Any(f => f.Code == "HF-418"));
    }

    [Theory, MemberData(nameof(Curves))]
    public void ExactData_GiveTheTruthAndSayThatTheyWereComputed(string curve)
    {
        var model = RegressionData.Curves[curve];
        var truth = RegressionData.Read("synthetic-curves.json").At(curve, "truth").Doubles();
        double[] x = [.. RegressionData.Points(curve).X];
        var fit = model.Fit(new(x, [.. x.Select(v => model.Value(v, truth))]));
        Assert.True(fit.IsFit, fit.Stop.ToString());
        for (var j = 0; j < fit.P; j++)
            Agree.Digits(10, truth[j], fit.Parameters[j].Value);
        Assert.Null(fit.Criteria);
        Assert.Contains(fit.Findings, f => f.Code == "HF-428");
    }

    [Fact]
    public void SipsData_ThatAreLangmuir_GiveAnExponentOfOne()
    {
        double[] x = [0.8, 2.5, 6, 12, 22, 38, 60, 95];
        var fit = Fit.Of<Sips>(new(x, [.. x.Select(c => 85 * 0.065 * c / (1 + 0.065 * c))]));
        Agree.Digits(10, 1, fit["n"].Value);
        var noisy = Fit.Of<Sips>(RegressionData.Points("langmuir"));
        var interval = noisy["n"].Profile!;
        Assert.InRange(1, interval.Lower.Value!.Value, interval.Upper.Value!.Value);
    }

    [Fact]
    public void AsManyPointsAsParameters_GiveTheCurveAndNothingElse()
    {
        var fit = Fit.Of<Langmuir>(new([5, 40], [20, 60]));
        Assert.True(fit.IsFit);
        Agree.Digits(9, 60, fit.ValueAt(40));
        Assert.Null(fit.Covariance);
        Assert.Null(fit.ResidualSd);
        Assert.Null(fit.Criteria);
        Assert.All(fit.Parameters, p => Assert.True(p is { StandardError: null, Wald: null, Profile: null }));
        Assert.Contains(fit.Findings, f => f is { Code: "HF-410", Weight: Weight.Stop });
        Assert.Empty(fit.MeasuredParameters("F-1"));
        Assert.Null(fit.ConfidenceBand(10));
    }

    [Fact]
    public void OnePointMoreThanParameters_GivesIntervalsAndSaysHowWideTheyAre()
    {
        var fit = Fit.Of<Langmuir>(new([5, 15, 40], [20, 39, 60]));
        Assert.Equal(12.706, fit.Quantile!.Value, 1e-3);
        Assert.Null(fit.Aicc);
        Assert.Contains(fit.Findings, f => f.Code == "HF-410" && f.Sentence.Contains("12.7", StringComparison.Ordinal));
        Assert.Contains(fit.Findings, f => f.Code == "HF-429");
    }

    [Theory, MemberData(nameof(Curves))]
    public void APointAtZero_WithEveryCurve_LeavesTheFitFinite(string curve)
    {
        var points = RegressionData.Points(curve);
        var fit = RegressionData.Curves[curve].Fit(new([0, .. points.X], [0, .. points.Y]), Plain);
        Assert.True(fit.IsFit, fit.Stop.ToString());
        Assert.All(fit.Parameters, p => Assert.True(double.IsFinite(p.Value) && double.IsFinite(p.StandardError!.Value)));
    }

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity)]
    public void APointThatIsNoNumber_IsTheCallersError(double bad)
    {
        Assert.Throws<ArgumentException>(() => new Points([1, 2, bad], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => new Points([1, 2, 3], [1, bad, 3]));
        Assert.Throws<ArgumentException>(() => new Points([1, 2, 3], [1, 2, 3], u: [1, bad, 1]));
        Assert.Throws<ArgumentException>(() => new BatchPoints([5, 10], [1, bad], [1, 2]));
    }

    [Fact]
    public void NegativeReadings_AreData()
    {
        var points = RegressionData.Points("langmuir");
        double[] y = [.. points.Y.Select((v, i) => i == 0 ? -1.5 : v)];
        var fit = Fit.Of<Langmuir>(new(points.X, y), Plain);
        Assert.True(fit.IsFit);
        Assert.Equal(8, fit.N);
        Assert.Equal(-1.5 - fit.Fitted[0], fit.Residuals[0], 1e-12);
    }

    [Fact]
    public void NegativeAbscissas_UnderAPower_AreRefusedWithAReason()
    {
        var fit = Fit.Of<Freundlich>(new([-3, 1, 4, 9, 20], [2, 3, 4, 6, 9]));
        Assert.Equal(StopReason.Refused, fit.Stop);
        Assert.Contains(fit.Findings, f => f.Code == "HF-413");
    }

    // A thousand noisy series: the profile holds the estimate, and where it is closed the sum of squares at its ends is the cut.
    [Fact]
    public void Profile_OfRandomSeries_HoldsTheEstimateAndEndsAtTheCut()
    {
        var stream = new SeededStream(11, "profile law");
        for (var set = 0; set < 300; set++)
        {
            double[] x = [.. Enumerable.Range(0, 5 + stream.Below(6)).Select(_ => Math.Exp(4 * stream.Uniform()))];
            var (qm, k, sd) = (50 + 50 * stream.Uniform(), Math.Exp(-4 * stream.Uniform()), 0.5 + 8 * stream.Uniform());
            var fit = Fit.Of<Langmuir>(new(x, [.. x.Select(c => qm * k * c / (1 + k * c) + sd * stream.Normal())]));
            foreach (var p in fit.Parameters.Where(p => p.Profile is not null))
            {
                var (low, high) = (p.Profile!.Lower, p.Profile.Upper);
                Assert.True(low.Value is null || low.Value < p.Value, "lower end");
                Assert.True(high.Value is null || high.Value > p.Value, "upper end");
                foreach (var end in new[] { low, high })
                    Assert.True(end.Kind == LimitKind.Closed ? Math.Abs(end.Tau / fit.Quantile!.Value - 1) < 1e-9 : end.Tau < fit.Quantile, end.ToString());
            }
        }
    }

    [Theory, MemberData(nameof(Curves))]
    public void Leverages_OfEveryCurve_SumToTheNumberOfParameters(string curve)
    {
        var fit = RegressionData.Curves[curve].Fit(RegressionData.Points(curve), Plain);
        Agree.Digits(12, fit.P, fit.Leverages.Sum());
    }

    // Exact slopes by hand for three curves: what forward differentiation gives must be the same to rounding.
    [Fact]
    public void Slopes_OfThreeCurves_AgreeWithDerivativesByHand()
    {
        foreach (var x in new[] { 0.3, 2.0, 17.5, 140 })
        {
            Check<Langmuir>(x, [85, 0.065], (p, s) =>
            {
                var q = 1 + p[1] * x;
                (s[0], s[1]) = (p[1] * x / q, p[0] * x / (q * q));
            });
            Check<PseudoFirstOrder>(x, [41, 0.055], (p, s) => (s[0], s[1]) = (1 - Math.Exp(-p[1] * x), p[0] * x * Math.Exp(-p[1] * x)));
            Check<Sips>(x, [92, 0.055, 0.8], (p, s) =>
            {
                var u = Math.Pow(p[1] * x, p[2]);
                var q = (1 + u) * (1 + u);
                (s[0], s[1], s[2]) = (u / (1 + u), p[0] * p[2] * u / p[1] / q, p[0] * u * Math.Log(p[1] * x) / q);
            });
        }

        static void Check<TCurve>(double x, double[] p, Action<double[], double[]> byHand) where TCurve : struct, ICurve<TCurve>
        {
            double[] expected = new double[p.Length], actual = new double[p.Length];
            byHand(p, expected);
            Model.Of<TCurve>().Value(x, p, actual);
            for (var j = 0; j < p.Length; j++)
                Agree.Digits(12.5, expected[j], actual[j]);
        }
    }

    // Parameters carried on as measured numbers have the covariance of the fit, and the band is the delta method on the curve.
    [Fact]
    public void MeasuredParameters_CarryTheCovarianceOfTheFit()
    {
        var fit = Fit.Of<Sips>(RegressionData.Points("sips"), Plain);
        var p = fit.MeasuredParameters("F-7");
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                Agree.Relative(1e-9, fit.Covariance![i, j], Measured.Covariance(p[i], p[j]));
            Assert.Equal(5, p[i].DegreesOfFreedom, 1e-9);
        }

        var at = Model.Of<Sips>().Value(30, [.. p]);
        var band = fit.ConfidenceBand(30)!.Value;
        Agree.Relative(1e-12, band.Value, at.Value);
        Agree.Relative(1e-9, band.StandardError, at.U);
        Agree.Relative(1e-9, Math.Sqrt(at.Variance + fit.SumOfSquares / fit.Nu), fit.PredictionBand(30)!.Value.StandardError);
        Agree.Relative(1e-9, at.U, fit.Derived(q => Model.Of<Sips>().Value(30, [.. q]))!.Value.U);
    }
}
