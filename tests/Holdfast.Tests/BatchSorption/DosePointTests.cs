using CsCheck;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.BatchSorption;

public class DosePointTests
{
    private static readonly Measured[] Langmuir60 = [60, 0.15];

    // reference/sorption/dose-predicted.csv (own computation): Langmuir qm 60 mg/g, K 0.15 L/mg, C0 40 mg/L.
    [Fact]
    public void Predict_TheReferenceCurve_AgreesInEveryColumn()
    {
        foreach (var row in ReferenceTable.Read("sorption", "dose-predicted.csv"))
        {
            var point = DosePoint.Predict<Langmuir>(40, row.Number("dose_g_L"), Langmuir60);
            Agree.Digits(8, row.Number("Ce_mg_L"), point.Ce.Value);
            Agree.Digits(8, row.Number("removal_percent"), point.Removal.Value);
            Agree.Digits(8, row.Number("q_mg_g"), point.Uptake.Value);
            Agree.Digits(8, row.Number("dCe_per_dose"), point.SlopeOfCe);
        }
    }

    // reference/sorption/dose-measured.csv and dose-expected.csv (own computation): one series agrees, one shows a solids effect.
    [Fact]
    public void Compare_TheReferenceSeries_TellsTheSolidsEffectApart()
    {
        foreach (var expected in ReferenceTable.Read("sorption", "dose-expected.csv"))
        {
            var rows = ReferenceTable.Read("sorption", "dose-measured.csv").Where(r => r["case"] == expected["case"]).ToArray();
            Measured[] measured = [.. rows.Select(r => BatchQuantitiesTests.M(r.Number("Ce_mg_L"), r.Number("u_Ce"), "Ce " + r["dose_g_L"]))];
            DosePoint[] predicted = [.. rows.Select(r => DosePoint.Predict<Langmuir>(40, r.Number("dose_g_L"), Langmuir60))];
            var agreement = DosePoint.Compare(measured, predicted);
            Agree.Digits(8, expected.Number("chi2"), agreement.ChiSquare, expected["case"]);
            Assert.Equal(expected.Number("degrees"), agreement.DegreesOfFreedom);
            Assert.Equal(expected.Number("p"), agreement.P, 8);
            Assert.Equal(expected["isotherm_predicts_dose_series"] == "holds" ? Ruling.Holds : Ruling.Contradicted, DosePoint.Explains(agreement.P));
        }
    }

    // The band comes from the covariance of the parameters: compared with the same derivative taken by finite differences.
    [Fact]
    public void Predict_WithUncertainParameters_CarriesTheirCovarianceIntoTheBand()
    {
        double[] covariance = [4, -0.03, -0.03, 0.0009];
        var parameters = CorrelatedInputs.Of([60, 0.15], covariance, "fit", "isotherm").ToArray();
        var ce = DosePoint.Predict<Langmuir>(40, 0.8, parameters).Ce;

        const double H = 1e-5;
        double Ce(double qm, double k) => DosePoint.Predict<Langmuir>(40, 0.8, [qm, k]).Ce.Value;
        var dq = (Ce(60 + H, 0.15) - Ce(60 - H, 0.15)) / (2 * H);
        var dk = (Ce(60, 0.15 + H) - Ce(60, 0.15 - H)) / (2 * H);
        Agree.Digits(7, Math.Sqrt(dq * dq * 4 + dk * dk * 0.0009 - 2 * dq * dk * 0.03), ce.U);
    }

    // Law (handbook section 6, derived there): for a rising isotherm removal rises and uptake falls with dose, whatever the curve.
    [Fact]
    public void Predict_AtAHigherDose_RemovesMoreAndHoldsLess()
        => Gen.Select(Gen.Double[0.05, 5], Gen.Double[1.05, 3], Gen.Double[1.2, 4]).Sample((dose, factor, n) =>
        {
            Measured[] freundlich = [9.5, n];
            var low = DosePoint.Predict<Freundlich>(40, dose, freundlich);
            var high = DosePoint.Predict<Freundlich>(40, dose * factor, freundlich);
            return high.Removal.Value > low.Removal.Value && high.Uptake.Value < low.Uptake.Value && low.SlopeOfCe < 0;
        });

    // Law: the dose needed for the concentration that a dose leaves is that dose.
    [Fact]
    public void Needed_ForWhatADoseLeaves_IsThatDose()
        => Gen.Double[0.1, 4].Sample(dose =>
        {
            var ce = DosePoint.Predict<Langmuir>(40, dose, Langmuir60).Ce;
            return Math.Abs(DosePoint.Needed<Langmuir, Measured>(40, ce, Langmuir60).Value / dose - 1) < 1e-10;
        });

    // Independent differences: χ² is the plain sum of squares. Two that are one and the same count once.
    [Fact]
    public void Agreement_OfTheSameDifferenceTwice_CountsItOnce()
    {
        var d = BatchQuantitiesTests.M(2, 1, "d");
        Assert.Equal((4.0, 1), (Math.Round(Agreement.Of([d, d]).ChiSquare, 12), Agreement.Of([d, d]).DegreesOfFreedom));
        var both = Agreement.Of([d, BatchQuantitiesTests.M(1, 1, "e")]);
        Assert.Equal((5.0, 2), (Math.Round(both.ChiSquare, 12), both.DegreesOfFreedom));
        Assert.Throws<ArgumentException>(() => Agreement.Of([(Measured)1.0]));
    }

    [Fact]
    public void CorrelatedInputs_GiveBackTheirCovariance()
    {
        double[] covariance = [4, -0.03, 1, -0.03, 0.0009, 0, 1, 0, 9];
        var p = CorrelatedInputs.Of([1, 2, 3], covariance, "fit", "fit", 5);
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                Assert.Equal(covariance[3 * i + j], Measured.Covariance(p[i], p[j]), 12);
            Assert.Equal(5, p[i].DegreesOfFreedom, 10);
        }

        Assert.Throws<ArgumentException>(() => CorrelatedInputs.Of([1, 2], [1, 2, 2, 1], "bad", "bad"));
        Assert.Throws<ArgumentException>(() => CorrelatedInputs.Of([1, 2], [1, 2, 2], "bad", "bad"));
    }
}
