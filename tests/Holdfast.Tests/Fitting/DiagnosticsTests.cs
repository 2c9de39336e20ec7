using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Isotherms;
using Holdfast.Testing;
using MathNet.Numerics.LinearAlgebra;

namespace Holdfast.Tests.Fitting;

/// <summary>Residual diagnostics against R 4.2.2 and scipy 1.10.1 (reference/regression).</summary>
public class DiagnosticsTests
{
    public static TheoryData<string> Curves() => [.. RegressionData.Curves.Keys];

    private static readonly FitOptions Plain = new() { Profiles = false };

    // R's nls stops at a relative offset of 1e-8, so what follows from its estimates agrees to about as many digits.
    [Theory, MemberData(nameof(Curves))]
    public void Residuals_OfTheEightCurves_AgreeWithR(string curve)
    {
        var fit = RegressionData.Curves[curve].Fit(RegressionData.Points(curve), Plain);
        var r = RegressionData.Read("synthetic-curves-r.json").At("fits", curve);
        var d = r.At("diagnostics");
        for (var i = 0; i < fit.N; i++)
        {
            Assert.Equal(d.At("residuals").Doubles()[i], fit.Residuals[i], 1e-5);
            Agree.Relative(1e-4, d.At("leverage").Doubles()[i], fit.Leverages[i], curve + " leverage");
            Assert.Equal(d.At("standardised").Doubles()[i], fit.StandardisedResiduals[i], 1e-5);
        }

        Agree.Relative(1e-5, d.At("durbinWatson").GetDouble(), DurbinWatson.Of(fit)!.Statistic);
        Agree.Relative(1e-4, d.At("press").GetDouble(), Influence.Of(fit)!.TangentPress);
        Assert.Equal(d.At("signsRuns").GetInt32(), RunsTest.Of(fit)!.Runs);
        Agree.Relative(1e-9, r.At("criteria", "AIC_short").GetDouble(), fit.Criteria!.Aic);
        Agree.Relative(1e-9, r.At("criteria", "AICc_short").GetDouble(), fit.Criteria.Aicc!.Value);
        Agree.Relative(1e-9, r.At("criteria", "BIC_short").GetDouble(), fit.Criteria.Bic);
        var curvature = Curvature.Of(fit)!;
        Agree.Relative(1e-4, r.At("curvature", "parameterEffects_times_sqrtF").GetDouble(), curvature.ParameterEffects, curve + " parameter effects");
        Agree.Relative(1e-4, r.At("curvature", "intrinsic_times_sqrtF").GetDouble(), curvature.Intrinsic, curve + " intrinsic");
    }

    [Theory, InlineData("langmuir"), InlineData("sips"), InlineData("pso")]
    public void Influence_ByRealRefits_AgreesWithTheReference(string curve)
    {
        var influence = Influence.Of(RegressionData.Curves[curve].Fit(RegressionData.Points(curve), Plain))!;
        var expected = RegressionData.Read("leave-one-out-py.json").At("sets", curve);

        // The file's refits are good to about 1e-8 of a parameter: 2e-8 of PRESS, 2e-5 of the smallest of Cook's distances.
        Agree.Relative(2e-8, expected.At("pressExact").GetDouble(), influence.Press);
        Agree.Relative(1e-8, expected.At("pressTangent").GetDouble(), influence.TangentPress);
        for (var i = 0; i < influence.Points.Count; i++)
        {
            var point = influence.Points[i];
            Agree.Relative(1e-7, expected.At("exactDeletionResiduals").Doubles()[i], point.DeletionResidual);
            Agree.Relative(1e-7, expected.At("leverage").Doubles()[i], point.Leverage);
            Agree.Relative(2e-5, expected.At("cooksExact").Doubles()[i], point.Cook);
            Agree.Relative(1e-6, expected.At("cooksTangent").Doubles()[i], point.TangentCook);
        }

        // Sips: the last point decides by a real refit (2.15); the finding names it. PRESS again by Gauss-Newton in 50-digit arithmetic.
        if (curve == "sips")
            Agree.Digits(12, 8.0083558976622390729502698989, influence.Press);
        if (curve == "sips")
            Assert.Contains(influence.Findings, f => f.Code == "HF-419" && f.Concerns.Contains("point 8"));
    }

    [Fact]
    public void RunsTest_OfTheCases_AgreesWithTheReference()
    {
        foreach (var c in RegressionData.Read("runs-test-py.json").At("cases").EnumerateArray())
        {
            var test = RunsTest.Of(c.At("n1").GetInt32(), c.At("n2").GetInt32(), c.At("runs").GetInt32());
            Agree.Digits(13, c.At("pLower").GetDouble(), test.TooFew);
            Agree.Digits(13, c.At("pUpper").GetDouble(), test.TooMany);
        }

        Assert.Null(RunsTest.Of([1, 2, 3]));
        Assert.Equal(3, RunsTest.Of([1, 2, -1, 0, -4, 5])!.Runs);
    }

    // cars (Ezekiel 1930) and stackloss (Brownlee 1965) with lmtest 0.9-40: exact p of Durbin–Watson, Breusch–Pagan in Koenker's form.
    [Fact]
    public void DurbinWatsonAndBreuschPagan_OfCars_AgreeWithR()
    {
        var cars = RegressionData.Table("cars.csv", "speed", "dist");
        var expected = RegressionData.Read("linear-diagnostics-r.json").At("cars");
        var line = StraightLine.Through([.. cars.X], [.. cars.Y]);
        double[] residuals = [.. cars.Y.Select((y, i) => y - line.At(cars.X[i]))];
        var watson = DurbinWatson.Of(residuals, Matrix<double>.Build.Dense(cars.Count, 2, (i, j) => j == 0 ? 1 : cars.X[i]))!;
        Agree.Relative(1e-12, expected.At("durbinWatson").GetDouble(), watson.Statistic);
        Agree.Relative(1e-6, expected.At("dwP_greater").GetDouble(), watson.PositiveP);
        var pagan = BreuschPagan.Of(residuals, [.. cars.X])!;
        Agree.Relative(1e-11, expected.At("breuschPagan").GetDouble(), pagan.Statistic);
        Agree.Relative(1e-11, expected.At("breuschPaganP").GetDouble(), pagan.P);
    }

    [Fact]
    public void StackLoss_DurbinWatsonAndHuber_AgreeWithR()
    {
        var rows = ReferenceTable.Read("regression", "stackloss.csv");
        double[][] columns = [[.. rows.Select(_ => 1.0)], .. new[] { "Air.Flow", "Water.Temp", "Acid.Conc." }.Select(c => rows.Select(r => r.Number(c)).ToArray())];
        var points = new Points([.. rows.Select((_, i) => (double)i)], [.. rows.Select(r => r.Number("stack.loss"))]);
        var card = new ModelCard("plane", "", [.. Enumerable.Range(0, 4).Select(j => new Parameter(FormattableString.Invariant($"b{j}"), Kind.Other, "", ""))], "", "");
        var fit = Fit.Of(new Plane(columns), card, points, new FitOptions { Starts = [[0, 0, 0, 0]] });
        var expected = RegressionData.Read("linear-diagnostics-r.json").At("stackloss");
        Assert.True(fit.IsFit);
        Agree.Relative(1e-10, expected.At("durbinWatson").GetDouble(), DurbinWatson.Of(fit)!.Statistic);
        Agree.Relative(1e-6, expected.At("dwP_greater").GetDouble(), DurbinWatson.Of(fit)!.PositiveP);

        // For a linear model the shortcuts are exact.
        var influence = Influence.Of(fit)!;
        Agree.Relative(1e-9, expected.At("press").GetDouble(), influence.Press);
        Agree.Relative(1e-9, expected.At("cooks").Doubles()[20], influence.Points[20].Cook);
        var huber = RobustFit.Of(fit)!;
        Agree.Relative(1e-4, expected.At("huber_rlm", "scale").GetDouble(), huber.Scale);
        for (var j = 0; j < 4; j++)
            Agree.Relative(1e-4, expected.At("huber_rlm", "coefficients").Doubles()[j], huber.Values[j]);
    }

    // Langmuir set with its sixth y times 1.3, scipy's Huber loss with f_scale 1 (reference/regression/robust-langmuir-py.json).
    [Fact]
    public void RobustFit_WithOneWildPoint_AgreesWithTheReferenceAndRaisesTheAlarm()
    {
        var data = RegressionData.Read("robust-langmuir-py.json");
        var fit = Fit.Of<Langmuir>(new(data.At("x").Doubles(), data.At("y").Doubles()), Plain);
        var plain = data.At("losses", "linear", "estimate").Doubles();
        Agree.Relative(1e-7, plain[0], fit["qm"].Value);
        var huber = RobustFit.Of(fit, RobustLoss.Huber, threshold: 1, fixedScale: 1)!;
        Assert.True(huber.Settled);
        Agree.Relative(1e-7, data.At("losses", "huber", "estimate").Doubles()[0], huber.Values[0]);
        Agree.Relative(1e-7, data.At("losses", "huber", "estimate").Doubles()[1], huber.Values[1]);
        Assert.Equal(huber.PointWeights.Min(), huber.PointWeights[5]);
        var alarm = Assert.Single(RobustFit.Of(fit, RobustLoss.Bisquare)!.Findings);
        Assert.Equal("HF-426", alarm.Code);
        Assert.Equal(["point 6"], alarm.Concerns);
        Assert.Empty(RobustFit.Of(Fit.Of<Langmuir>(RegressionData.Points("langmuir"), Plain))!.Findings);
    }

    // Puromycin, treated (Treloar 1974, in Bates and Watts 1988: 212.7 and 0.0641); DNase run 1: R² 0.9991, yet rejected by its replicates.
    [Fact]
    public void LackOfFit_OfPuromycinAndDnase_AgreesWithR()
    {
        var treated = Puromycin("treated");
        var expected = RegressionData.Read("puromycin-r.json").At("treated", "lackOfFit");
        Agree.Relative(1e-10, expected.At("F").GetDouble(), treated.LackOfFit!.Test.F);
        Agree.Relative(1e-9, expected.At("p").GetDouble(), treated.LackOfFit.Test.P);
        var dnase = Fit.Of(new CurvePrediction<Logistic>([.. Dnase.X]), Logistic.Card, Dnase, new FitOptions { Starts = [[2.3, 1.5, 1]] });
        Agree.Relative(1e-8, 2.3451792973823538, dnase["A"].Value);
        Agree.Relative(1e-7, RegressionData.Read("dnase-r.json").At("fit", "lackOfFit", "F").GetDouble(), dnase.LackOfFit!.Test.F);
        Agree.Relative(1e-6, RegressionData.Read("dnase-r.json").At("fit", "lackOfFit", "p").GetDouble(), dnase.LackOfFit.Test.P);
        Assert.True(dnase.DescriptiveRSquared > 0.999);
        Assert.Contains(dnase.Findings, f => f.Code == "HF-423");
        Assert.DoesNotContain(treated.Findings, f => f.Code == "HF-423");
    }

    [Fact]
    public void Puromycin_InBothStates_AgreesWithTheReference()
    {
        foreach (var state in new[] { "treated", "untreated" })
        {
            var fit = Puromycin(state);
            var expected = RegressionData.Read("profile-likelihood-py.json").At("fits", "puromycin-" + state);
            var limits = expected.At("profile", "level0.95", "limits").EnumerateArray().Select(l => l.Doubles()).ToArray();
            for (var j = 0; j < 2; j++)
            {
                Agree.Relative(1e-8, expected.At("estimate").Doubles()[j], fit.Parameters[j].Value);
                Agree.Relative(1e-7, limits[j][0], fit.Parameters[j].Profile!.Lower.Value!.Value);
                Agree.Relative(1e-7, limits[j][1], fit.Parameters[j].Profile!.Upper.Value!.Value);
            }

            var r = RegressionData.Read("puromycin-r.json").At(state);
            Agree.Relative(1e-7, r.At("correlation")[0][1].GetDouble(), fit.Correlation(0, 1)!.Value);
            Agree.Relative(1e-6, r.At("wald95")[0][0].GetDouble(), fit.Parameters[0].Wald!.Value.Low);
            Agree.Relative(1e-6, r.At("curvature", "parameterEffects_times_sqrtF").GetDouble(), Curvature.Of(fit)!.ParameterEffects);
        }
    }

    // Weights 1/y² as R was given them; and weights 1/f², which must belong to the curve that they lead to.
    [Fact]
    public void Puromycin_WithRelativeWeights_AgreesWithR()
    {
        var plain = Puromycin("treated").Points;
        var weighted = Fit.Of<MichaelisMenten>(new(plain.X, plain.Y, weights: [.. plain.Y.Select(y => 1 / (y * y))]));
        var expected = RegressionData.Read("puromycin-r.json").At("treatedWeighted");
        Agree.Relative(1e-6, expected.At("estimate").Doubles()[0], weighted["Vm"].Value);
        Agree.Relative(1e-6, expected.At("standardError").Doubles()[1], weighted["K"].StandardError!.Value);
        var fitted = Fit.Of<MichaelisMenten>(plain, new() { Weighting = Weighting.RelativeToFit });
        Assert.True(fitted.IsFit);
        for (var i = 0; i < plain.Count; i++)
            Agree.Relative(1e-9, 1 / (fitted.Fitted[i] * fitted.Fitted[i]), fitted.Weights[i]);
    }

    private static Points Dnase => RegressionData.Table("dnase-run1.csv", "conc", "density", null, Math.Log);

    private static FitResult Puromycin(string state)
        => Fit.Of<MichaelisMenten>(RegressionData.Table("puromycin.csv", "conc", "rate", r => r["state"] == state));

    private readonly struct Plane(double[][] columns) : IPrediction
    {
        public int Count => columns[0].Length;

        public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T>
        {
            T sum = 0;
            for (var j = 0; j < p.Length; j++)
                sum += columns[j][i] * p[j];
            return sum;
        }
    }

    private readonly struct Logistic : ICurve<Logistic>
    {
        public static ModelCard Card { get; } = new("logistic", "", [new("A", Kind.Response, "{y}", ""), new("m", Kind.X, "{x}", ""), new("s", Kind.X, "{x}", "")], "", "");

        public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] / (1 + T.Exp((p[1] - x) / p[2]));
    }
}

/// <summary>Enzyme rate against substrate, for the Puromycin data.</summary>
public readonly struct MichaelisMenten : ICurve<MichaelisMenten>
{
    public static ModelCard Card { get; } = new(
        "Michaelis-Menten", "v = Vm·S/(K + S)",
        [new("Vm", Kind.Response, "{y}", "highest rate", Above: 0), new("K", Kind.X, "{x}", "half-saturation", Above: 0)], "", "");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * x / (p[1] + x);
}
