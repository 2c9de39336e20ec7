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
