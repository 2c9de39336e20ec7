using Holdfast.Fitting;
using Holdfast.Fitting.Lines;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>Lines with errors on both axes, against reference/regression/errors-in-variables-py.json.</summary>
public class LinesTests
{
    private static readonly IReadOnlyList<ReferenceRow> Pearson = ReferenceTable.Read("regression", "york.csv");
    private static readonly double[] X = [.. Pearson.Select(r => r.Number("x"))];
    private static readonly double[] Y = [.. Pearson.Select(r => r.Number("y"))];

    // Pearson's points with York's weights: slope −0.480533, intercept 5.47991 in York (1966) and York et al. (2004), from memory.
    [Fact]
    public void York_OfPearsonsPoints_AgreesWithTheReference()
    {
        var expected = RegressionData.Read("errors-in-variables-py.json").At("york");
        var line = York.Through(
            X, Y, [.. Pearson.Select(r => 1 / Math.Sqrt(r.Number("wx")))], [.. Pearson.Select(r => 1 / Math.Sqrt(r.Number("wy")))]).Value!;
        Agree.Relative(1e-11, expected.At("slope").GetDouble(), line.Slope);
        Agree.Relative(1e-11, expected.At("intercept").GetDouble(), line.Intercept);
        Agree.Relative(1e-10, expected.At("seSlope").GetDouble(), line.SlopeError!.Value);
        Agree.Relative(1e-10, expected.At("seIntercept").GetDouble(), line.InterceptError!.Value);
        Agree.Relative(1e-11, expected.At("chi2").GetDouble(), line.ChiSquare!.Value);
    }

    [Theory, InlineData("orthogonal_ratio1", 1), InlineData("ratio4", 4), InlineData("ols", double.PositiveInfinity)]
    public void Deming_AtSeveralRatios_AgreesWithTheReference(string key, double ratio)
    {
        var expected = RegressionData.Read("errors-in-variables-py.json").At("deming", key).Doubles();
        var line = Deming.Through(X, Y, ratio);
        Agree.Relative(1e-12, expected[0], line.Intercept);
        Agree.Relative(1e-12, expected[1], line.Slope);
    }

    // Law: as the error of x vanishes Deming tends to ordinary least squares, without losing digits on the way.
    [Fact]
    public void Deming_AsTheRatioGrows_TendsToOrdinaryLeastSquares()
    {
        var plain = StraightLine.Through(X, Y);
        Agree.Relative(1e-9, plain.Slope, Deming.Through(X, Y, 1e10).Slope);
        Agree.Relative(1e-13, plain.Slope, Deming.Through(X, Y, 1e16).Slope);
    }

    // Law: with errors of x that vanish York's line is weighted least squares.
    [Fact]
    public void York_WithoutErrorsOfX_IsWeightedLeastSquares()
    {
        double[] uy = [.. Pearson.Select(r => 1 / Math.Sqrt(r.Number("wy")))];
        var york = York.Through(X, Y, [.. X.Select(_ => 1e-12)], uy).Value!;
        var weighted = LinearModel.Of([[.. uy.Select(u => 1 / u)], [.. X.Select((x, i) => x / uy[i])]], [.. Y.Select((y, i) => y / uy[i])]).Value!;
        Agree.Relative(1e-9, weighted.Coefficients[1], york.Slope);
        Agree.Relative(1e-9, weighted.Coefficients[0], york.Intercept);
    }

    [Fact]
    public void York_OfACloudWithoutDirection_SaysSo()
    {
        var line = York.Through([0, 0, 1, 1], [0, 1, 0, 1], [1, 1, 1, 1], [1, 1, 1, 1]);
        Assert.True(line.Value is null || double.IsFinite(line.Value.Slope));
    }

    // stackloss (Brownlee 1965), R 4.2.2: coefficients, leverages, PRESS.
    [Fact]
    public void LinearModel_OfStackLoss_AgreesWithR()
    {
        var rows = ReferenceTable.Read("regression", "stackloss.csv");
        var expected = RegressionData.Read("linear-diagnostics-r.json").At("stackloss");
        double[][] columns = [[.. rows.Select(_ => 1.0)], .. new[] { "Air.Flow", "Water.Temp", "Acid.Conc." }.Select(c => rows.Select(r => r.Number(c)).ToArray())];
        var fit = LinearModel.Of(columns, [.. rows.Select(r => r.Number("stack.loss"))]).Value!;
        for (var j = 0; j < 4; j++)
        {
            Agree.Relative(1e-12, expected.At("coefficients").Doubles()[j], fit.Coefficients[j]);
            Agree.Relative(1e-12, expected.At("se").Doubles()[j], fit.StandardErrors[j]);
        }

        Agree.Relative(1e-12, expected.At("leverage").Doubles()[20], fit.Leverages[20]);
        Agree.Relative(1e-12, expected.At("press").GetDouble(), fit.Residuals.Select((r, i) => Math.Pow(r / (1 - fit.Leverages[i]), 2)).Sum());
    }

    [Fact]
    public void LinearModel_OfDependentTerms_HasNoValue()
    {
        var outcome = LinearModel.Of([[1, 1, 1, 1], [2, 2, 2, 2]], [1, 2, 3, 4]);
        Assert.False(outcome.HasValue);
        Assert.Equal("HF-416", outcome.Findings[0].Code);
    }
}
