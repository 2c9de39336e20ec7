using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

public class ComparisonTests
{
    private static readonly FitOptions Plain = new() { Profiles = false };

    // reference/regression/criteria-py.json: four isotherms on the Langmuir set of 8 points.
    [Fact]
    public void Comparison_OfFourIsotherms_AgreesWithTheReference()
    {
        var points = RegressionData.Points("langmuir");
        var fits = new[] { "langmuir", "sips", "redlich", "toth" }.ToDictionary(k => k, k => RegressionData.Curves[k].Fit(points, Plain), StringComparer.Ordinal);
        var comparison = CurveComparison.Of([.. fits.Values]);
        var file = RegressionData.Read("criteria-py.json");
        foreach (var expected in file.At("models").EnumerateArray())
        {
            var fit = fits[expected.At("model").GetString()!];
            Agree.Relative(1e-9, expected.At("rss").GetDouble(), fit.SumOfSquares);
            Agree.Relative(1e-8, expected.At("AIC").GetDouble(), fit.Criteria!.Aic);
            Agree.Relative(1e-8, expected.At("AICc").GetDouble(), fit.Aicc!.Value);
            Agree.Relative(1e-8, expected.At("BIC").GetDouble(), fit.Criteria.Bic);
            Agree.Relative(1e-8, expected.At("akaikeWeight").GetDouble(), comparison.Ranked.Single(r => r.Fit == fit).AkaikeWeight);
        }

        Assert.Equal("Langmuir", Assert.Single(comparison.Survivors).Fit.Card.Name);
        var nested = FTest.Nested(fits["langmuir"], fits["sips"]);
        Agree.Relative(1e-8, file.At("nestedF_langmuir_in_sips", "F").GetDouble(), nested.F);
        Agree.Relative(1e-8, file.At("nestedF_langmuir_in_sips", "p").GetDouble(), nested.P);
    }

    // reference/regression/r2-trap-py.json: first-order data on whose t/q line R² is 0.996; direct fits tell the curves apart.
    [Fact]
    public void Comparison_OfFirstAndSecondOrder_NamesTheCurveThatMadeTheData()
    {
        var points = RegressionData.Points("pfo");
        var comparison = CurveComparison.Of([Fit.Of<PseudoSecondOrder>(points, Plain), Fit.Of<PseudoFirstOrder>(points, Plain)]);
        Assert.Equal("Pseudo-first-order", comparison.Ranked[0].Fit.Card.Name);
        Agree.Relative(1e-8, RegressionData.Read("r2-trap-py.json").At("firstOrderDataLookSecondOrder", "deltaAICc_second_minus_first").GetDouble(), comparison.Ranked[1].Delta);
        var (x, deviations) = CurveComparison.WhereTheyDiffer(comparison.Ranked[0].Fit, comparison.Ranked[1].Fit, 1, 400)!.Value;
        Assert.InRange(x, 1, 400);
        Assert.True(deviations > 5);
    }

    // The flat series of r2-trap.csv: uptake does not depend on time (correlation 0.03), yet its t/q line has R² 0.997.
    [Theory, InlineData(typeof(PseudoFirstOrder)), InlineData(typeof(PseudoSecondOrder)), InlineData(typeof(Elovich)), InlineData(typeof(GeneralOrder))]
    public void FlatUptake_WithEveryKineticCurve_IsRefusedOrLeftOpen(Type curve)
    {
        var model = Model.AllIn("Holdfast.Kinetics").Single(m => m.Curve == curve);
        var fit = model.Fit(RegressionData.Table("r2-trap.csv", "t", "q"));
        Assert.True(!fit.IsFit || fit.Parameters.Skip(1).Any(p => !p.Profile!.IsClosed), fit.Stop.ToString());
        Assert.Contains(fit.Findings, f => f.Code is "HF-415" or "HF-416" or "HF-417");
    }

    // A third parameter needs n ≥ 6: at n ≤ K + 1 AICc is not defined and AIC is no stand-in.
    [Theory, InlineData(5, true), InlineData(6, false)]
    public void Comparison_WithTooFewPoints_RefusesTheCurveInsteadOfFallingBack(int n, bool refused)
    {
        var whole = RegressionData.Points("langmuir");
        var points = new Points([.. whole.X.Take(n)], [.. whole.Y.Take(n)]);
        var sips = Fit.Of<Sips>(points, Plain);
        Assert.True(sips.IsFit);
        Assert.Equal(refused, sips.Aicc is null);
        var comparison = CurveComparison.Of([sips, Fit.Of<Langmuir>(points, Plain)]);
        Assert.Equal(refused ? 1 : 2, comparison.Ranked.Count);
        Assert.Equal(refused, comparison.Findings.Any(f => f.Code == "HF-429"));
    }

    [Fact]
    public void Comparison_OfDifferentData_IsAnError()
    {
        var points = RegressionData.Points("langmuir");
        Assert.Throws<ArgumentException>(() => CurveComparison.Of([Fit.Of<Langmuir>(points, Plain), Fit.Of<Langmuir>(points.Without(2), Plain)]));
    }

    // Points computed from q = 10x/(3 + x): the curve with fewest parameters that runs through them comes first, as 10 and 1/3, without a ±.
    [Fact]
    public void NotToldApart_ComputedPoints_IsTheirCurveAlone()
    {
        double[] x = [1, 2, 4, 8, 16, 32, 64];
        var fits = Holdfast.Isotherms.Isotherm.All.Select(m => m.Fit(new(x, [.. x.Select(v => 10 * v / (3 + v))]))).ToArray();
        var only = Assert.Single(CurveComparison.NotToldApart(fits));
        Assert.Equal("Langmuir", only.Card.Name);
        Assert.Equal(10.0, only["qm"].Value);
        Assert.Null(only["qm"].StandardError);
    }
}
