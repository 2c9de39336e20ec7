using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

public class FitTests
{
    private static readonly double[] Levels = [1, 2, 5, 10, 20, 50];

    public static TheoryData<string, double[], double[]> Hopeless() => new()
    {
        { "fewer points than parameters", [1, 2], [3, 5] },
        { "all zero", Levels, [0, 0, 0, 0, 0, 0] },
        { "flat", Levels, [7, 7, 7, 7, 7, 7] },
        { "one x", [4, 4, 4, 4, 4, 4], [7, 7.1, 6.9, 7, 7.2, 6.8] },
        { "two x for three parameters", [4, 4, 4, 8, 8, 8], [7, 7.1, 6.9, 9, 9.2, 8.8] },
    };

    [Theory, MemberData(nameof(Hopeless))]
    public void Fit_OfDataThatCannotBeFitted_IsRefusedWithAReasonAndNoNumber(string what, double[] x, double[] y)
    {
        foreach (var fit in new[] { Fit.Of<Sips>(new(x, y)), Fit.Of<Toth>(new(x, y)), Fit.Of<GeneralOrder>(new(x, y)) })
        {
            Assert.Equal(StopReason.Refused, fit.Stop);
            Assert.Empty(fit.Parameters);
            Assert.Null(fit.Criteria);
            Assert.Null(fit.Covariance);
            Assert.True(fit.Findings.Any(f => f is { Weight: Weight.Stop, Code: "HF-410" or "HF-413" }), what);
        }
    }

    [Fact]
    public void Fit_OfAStraightLineWithLangmuir_SaysThatOnlyTheProductIsDetermined()
    {
        var fit = Fit.Of<Langmuir>(new(Levels, [.. Levels.Select(c => 0.5 * c)]));
        Assert.False(fit.IsFit);
        Assert.Empty(fit.Parameters);
        Assert.Contains(fit.Findings, f => f.Weight == Weight.Stop);
    }

    // reference/sorption/batch-fit-expected.csv (scipy 1.10.1): three ways of treating one set of batch vessels; truth qm 85, K 0.065.
    [Fact]
    public void Fit_OfBatchVessels_AgreesWithTheReferenceInAllThreeWays()
    {
        var rows = ReferenceTable.Read("sorption", "batch-fit-data.csv");
        var vessels = new BatchPoints(
            [.. rows.Select(r => r.Number("C0_mg_L"))], [.. rows.Select(r => r.Number("m_mg") / r.Number("V_mL"))],
            [.. rows.Select(r => r.Number("Ce_mg_L"))], [.. rows.Select(r => r.Number("u_Ce_mg_L"))]);
        var loadings = vessels.AsLoadings();
        Check("q on Ce, unweighted", Fit.Of<Langmuir>(new(loadings.X, loadings.Y, "mg/L", "mg/g")));
        Check("q on Ce, effective variance with correlated axes", Fit.Of<Langmuir>(loadings));
        var balance = Fit.Batch<Langmuir>(vessels);
        Check("Ce predicted by the mass balance, weights 1/u^2", balance);
        Assert.Equal(ScatterModel.Known, balance.Scatter);
        Assert.Equal("mg/g", balance["qm"].Unit);
        Assert.Equal("L/mg", balance["K"].Unit);
    }

    // reference/regression/errors-in-variables-py.json: the Langmuir set with 4 % on x and 2 % on y, independent errors.
    [Fact]
    public void Fit_WithErrorsOfX_WeighsByTheEffectiveVariance()
    {
        var points = RegressionData.Points("langmuir");
        double[] uy = [.. points.Y.Select(y => 0.02 * y)];
        var expected = RegressionData.Read("errors-in-variables-py.json").At("langmuirErrorsInX");
        var fit = Fit.Of<Langmuir>(new(points.X, points.Y, u: uy, xU: [.. points.X.Select(x => 0.04 * x)]));
        var plain = Fit.Of<Langmuir>(new(points.X, points.Y, u: uy));
        for (var j = 0; j < 2; j++)
        {
            Agree.Relative(1e-8, expected.At("effectiveVarianceIRLS").Doubles()[j], fit.Parameters[j].Value);
            Agree.Relative(1e-8, expected.At("yOnlyWeighted").Doubles()[j], plain.Parameters[j].Value);
        }

        Agree.Relative(1e-8, expected.At("effectiveVarianceChi2").GetDouble(), fit.SumOfSquares);
    }

    // The same vessels by the closed root for Langmuir (quadratic) and by the bracketed root for any isotherm.
    [Fact]
    public void BatchPrediction_OfLangmuir_IsTheClosedRoot()
    {
        var prediction = new BatchPrediction<Langmuir>([5, 50, 160], [0.5, 1, 0.2]);
        for (var i = 0; i < 3; i++)
        {
            var (c0, s) = (new[] { 5.0, 50, 160 }[i], new[] { 0.5, 1, 0.2 }[i]);
            var closed = BatchEquilibrium.Langmuir<Slopes>(c0, s, Slopes.Parameter(85, 0), Slopes.Parameter(0.065, 1));
            var general = prediction.At<Slopes>(i, [Slopes.Parameter(85, 0), Slopes.Parameter(0.065, 1)]);
            Agree.Digits(13, closed.Value, general.Value);
            Agree.Digits(12, closed[0], general[0]);
            Agree.Digits(12, closed[1], general[1]);
        }
    }

    // R 4.2.2, nested fits of both Puromycin states: common K against separate F(1, 19) 1.718, nothing separate F(1, 20) 44.94.
    [Fact]
    public void NestedFits_OfBothPuromycinStates_AgreeWithR()
    {
        var rows = ReferenceTable.Read("regression", "puromycin.csv");
        var points = new Points([.. rows.Select(r => r.Number("conc"))], [.. rows.Select(r => r.Number("rate"))]);
        double[] treated = [.. rows.Select(r => r["state"] == "treated" ? 1.0 : 0)];
        var expected = RegressionData.Read("puromycin-r.json").At("nested");
        var separate = States(4, [160, 50, 0.05, 0.01]);
        var common = States(3, [160, 50, 0.05]);
        var pooled = Fit.Of<MichaelisMenten>(points);
        Agree.Relative(1e-6, expected.At("separate").Doubles()[3], separate.Parameters[3].Value);
        Agree.Relative(1e-6, expected.At("commonKSE").Doubles()[2], common.Parameters[2].StandardError!.Value);
        Assert.Equal(expected.At("commonK_vs_separate", "F").GetDouble(), FTest.Nested(common, separate).F, 1e-8);
        Assert.Equal(expected.At("commonK_vs_separate", "p").GetDouble(), FTest.Nested(common, separate).P, 1e-8);
        Agree.Relative(1e-7, expected.At("pooled_vs_commonK", "F").GetDouble(), FTest.Nested(pooled, common).F);
        Agree.Relative(1e-6, expected.At("pooled_vs_commonK", "p").GetDouble(), FTest.Nested(pooled, common).P);

        FitResult States(int parameters, double[] start)
            => Fit.Of(new TwoStates([.. points.X], treated), new("two states", "", [.. new[] { "Vm", "dV", "K", "dK" }.Take(parameters)
                .Select(s => new Parameter(s, Kind.Other, "", ""))], "", ""), points, new() { Starts = [start] });
    }

    private readonly struct TwoStates(double[] x, double[] treated) : IPrediction
    {
        public int Count => x.Length;

        public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T>
            => (p[0] + treated[i] * p[1]) * x[i] / (p[2] + (p.Length > 3 ? treated[i] * p[3] : 0) + x[i]);
    }

    private static void Check(string method, FitResult fit)
    {
        Assert.True(fit.IsFit, method + ": " + fit.Stop);
        foreach (var row in ReferenceTable.Read("sorption", "batch-fit-expected.csv").Where(r => r["method"] == method))
        {
            if (row["quantity"] == "chi2")
            {
                Agree.Relative(1e-9, row.Number("value"), fit.SumOfSquares, method);
                continue;
            }

            var parameter = fit[row["quantity"]];
            Agree.Relative(1e-8, row.Number("value"), parameter.Value, $"{method}: {parameter.Symbol}");
            Agree.Relative(1e-6, row.Number("se_from_known_u_or_residual"), parameter.StandardError!.Value, $"{method}: error of {parameter.Symbol}");
        }
    }
}
