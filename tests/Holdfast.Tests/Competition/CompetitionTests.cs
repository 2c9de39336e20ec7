using Holdfast.Amounts;
using Holdfast.Competition;
using Holdfast.Testing;

namespace Holdfast.Tests.Competition;

public class CompetitionTests
{
    // reference/sorption/competition.csv (scipy 1.10.1, bracketed root): every row and column.
    [Fact]
    public void Mixtures_OfTwoSolutes_AgreeInEveryRow()
    {
        foreach (var row in ReferenceTable.Read("sorption", "competition.csv"))
        {
            double q1 = row.Number("qm1_mmol_g"), k1 = row.Number("K1_L_mmol"), q2 = row.Number("qm2_mmol_g"), k2 = row.Number("K2_L_mmol");
            double c1 = row.Number("C1_mmol_L"), c2 = row.Number("C2_mmol_L");
            Agree.Digits(9, row.Number("q1_extended_langmuir"), ExtendedLangmuir.Uptake<Number>(q1, k1, c1, k2, c2).Value);
            Agree.Digits(9, row.Number("q2_extended_langmuir"), ExtendedLangmuir.Uptake<Number>(q2, k2, c2, k1, c1).Value);
            var both = IdealAdsorbedSolution.Uptakes<Number>(q1, k1, c1, q2, k2, c2);
            Agree.Digits(9, row.Number("q1_iast"), both.First.Value);
            Agree.Digits(9, row.Number("q2_iast"), both.Second.Value);
            Agree.Digits(9, row.Number("reduced_spreading_pressure_mmol_g"), both.SpreadingPressure.Value);
        }
    }

    // With equal capacities the two descriptions are one.
    [Theory, InlineData(1, 5, 0.5, 1, 0.5), InlineData(0.4, 30, 0.02, 3, 4), InlineData(2, 0.1, 10, 50, 0.001)]
    public void IdealSolution_OfEqualCapacities_IsExtendedLangmuir(double q, double k1, double c1, double k2, double c2)
        => Agree.Digits(11, ExtendedLangmuir.Uptake<Number>(q, k1, c1, k2, c2).Value, IdealAdsorbedSolution.Uptakes<Number>(q, k1, c1, q, k2, c2).First.Value);

    // The slope that the Newton step carries is the slope of the answer.
    [Fact]
    public void IdealSolution_ReadWithSlopes_AgreesWithDifferences()
    {
        const double h = 1e-6;
        var slopes = IdealAdsorbedSolution.Uptakes<Slopes>(Slopes.Parameter(1, 0), Slopes.Parameter(5, 1), 0.5, 2, 1, 0.5).First;
        Agree.Digits(6, (First(1 + h, 5) - First(1 - h, 5)) / (2 * h), slopes[0]);
        Agree.Digits(6, (First(1, 5 + h) - First(1, 5 - h)) / (2 * h), slopes[1]);

        static double First(double q1, double k1) => IdealAdsorbedSolution.Uptakes<Number>(q1, k1, 0.5, 2, 1, 0.5).First.Value;
    }

    // A weak rival of small capacity drives the exponent to where e^x is infinite: the answer stays finite and near the single solute.
    [Fact]
    public void IdealSolution_OfVeryUnequalCapacities_StaysFinite()
    {
        var both = IdealAdsorbedSolution.Uptakes<Number>(10, 100, 10, 0.001, 1, 1);
        Agree.Relative(1e-6, 10 * 1000 / 1001.0, both.First.Value);
        Assert.InRange(both.Second.Value, 0, 1e-6);
    }

    // reference/design/decision-check.csv, K19: mean 6.16862, lower 4.57966 against a factor of 3.
    [Fact]
    public void Selectivity_OfThreeVessels_AgreesWithTheDecisionTable()
    {
        var alpha = Selectivity.Mean((IReadOnlyList<double>)[6.1, 5.2, 7.4]).Value!;
        Agree.Digits(5, 6.16862, alpha.Value);
        Agree.Digits(5, 4.57966, alpha.LowerBound());
    }

    // Vessels that agree by chance do not make a mean better known than their own uncertainties allow: three at 6 % leave 6/√3 %.
    [Fact]
    public void Selectivity_OfVesselsThatAgreeByChance_KeepsTheirUncertainty()
    {
        var mean = Selectivity.Mean([.. new[] { 6.10, 6.11, 6.12 }.Select((v, i) => Measured.From(v, new Source($"{i}", "vessel", 0.06 * v)))])!;
        Agree.Digits(3, 0.06 / Math.Sqrt(3), mean.StandardError);
        Assert.True(double.IsPositiveInfinity(mean.DegreesOfFreedom));
        Assert.Null(Selectivity.Mean(Array.Empty<Measured>()));
    }

    // α of A over B is one over α of B over A, and equal shares left give 1.
    [Fact]
    public void SelectivityCoefficient_Turned_IsItsReciprocal()
    {
        var ab = Selectivity.Coefficient<Number>(0.34, 0.10, 0.34, 0.25).Value;
        Agree.Digits(14, 1 / ab, Selectivity.Coefficient<Number>(0.34, 0.25, 0.34, 0.10).Value);
        Agree.Digits(14, 1, Selectivity.Coefficient<Number>(0.34, 0.17, 0.2, 0.1).Value);
    }

    // Single charges at equal fractions: K is the ratio of activities; charge 2 against 1 by hand: 0.25¹·0.02²/(0.5²·0.01¹) = 0.04.
    [Fact]
    public void GainesThomas_ByHand_Agrees()
    {
        Assert.Equal(2, GainesThomas.Constant<Number>(0.5, 0.01, 1, 0.5, 0.02, 1).Value, 12);
        Assert.Equal(0.04, GainesThomas.Constant<Number>(0.25, 0.01, 2, 0.5, 0.02, 1).Value, 12);
    }

    // Pearson's data with York's weights: slope −0.48053, intercept 5.4799 (D. York 1966, as quoted by York and co-workers 2004; from memory).
    [Fact]
    public void ExchangeRatio_OfPearsonsData_IsYorksLine()
    {
        double[] x = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4], y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
        double[] wx = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1], wy = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
        var ratio = ExchangeRatio.Of(x, y, [.. wx.Select(w => 1 / Math.Sqrt(w))], [.. wy.Select(w => 1 / Math.Sqrt(w))]).Value!;
        Assert.Equal(-0.48053, ratio.Slope.Value, 5);
        Assert.Equal(5.4799, ratio.Intercept, 4);
        Assert.Equal(8, ratio.Slope.DegreesOfFreedom);
        Assert.Equal("HF-634", Assert.Single(ExchangeRatio.Of([1, 1, 1], [1, 1.1, 0.9], [0.1, 0.1, 0.1], [0.1, 0.1, 0.1]).Findings).Code);
    }
}
