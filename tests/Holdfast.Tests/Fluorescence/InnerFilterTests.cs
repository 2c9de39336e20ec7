using Holdfast.Amounts;
using Holdfast.Fluorescence;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

public class InnerFilterTests
{
    // reference/measurement/inner-filter.csv: both formulas (numpy 1.24.2).
    [Fact]
    public void Factors_EveryRow_AgreeWithComputation()
    {
        var rows = ReferenceTable.Read("measurement", "inner-filter.csv");
        Assert.Equal(7, rows.Count);
        foreach (var row in rows)
        {
            double excitation = row.Number("A_excitation"), emission = row.Number("A_emission");
            var centre = InnerFilter.AtCentre<Number>(excitation, emission).Value;
            Agree.Digits(9, row.Number("factor_centre_10^((Aex+Aem)/2)"), centre);
            Agree.Digits(9, row.Number("factor_whole_cell"), InnerFilter.OverWholeCell(excitation, emission));
            Agree.Digits(7, row.Number("difference_percent"), 100 * (centre / InnerFilter.OverWholeCell(excitation, emission) - 1));
        }
    }

    // reference/design/decision-check.csv K27: A 0.11 and 0.01, F/F0 0.62.
    [Fact]
    public void Correct_DecisionCheckK27_AgreesWithComputation()
    {
        var corrected = InnerFilter.Correct("Fe(III)", 0.62, 0.11, 0.01).Value!;
        Agree.Digits(5, 1.14815, corrected.Factor.Value);
        Agree.Digits(5, 0.711855, corrected.Signal.Value);
        Assert.True(corrected.Factor.Value > InnerFilter.Matters);
    }

    // flag-cases.csv: 0.05 and 0.02 give 1.084; above 0.3 in all a warning; 1.0 + 0.5 is refused.
    [Theory, InlineData(0.05, 0.02, true, 0), InlineData(0.25, 0.06, true, 1), InlineData(1.0, 0.5, false, 1), InlineData(0.5, 0.21, false, 1)]
    public void Correct_BySumOfAbsorbances_CorrectsWarnsOrRefuses(double excitation, double emission, bool given, int findings)
    {
        var outcome = InnerFilter.Correct("S-1", 100, excitation, emission);
        Assert.Equal(given, outcome.HasValue);
        Assert.Equal(findings, outcome.Findings.Count);
        Assert.All(outcome.Findings, f => Assert.Equal("HF-573", f.Code));
    }

    // u of the geometry is half the difference of the formulas over √3, u of an absorbance enters by ln(10)/2 (derived).
    [Fact]
    public void Correct_Uncertainty_HoldsGeometryAndAbsorbance()
    {
        var exact = InnerFilter.Correct("S-1", 100, 0.2, 0.1).Value!.Factor;
        Agree.Digits(7, (1.412537545 - 1.397044148) / 2 / Math.Sqrt(3), exact.U);
        var read = InnerFilter.Correct("S-1", 100, Measured.From(0.2, new Source("a", "A of S-1", 0.005)), 0.1).Value!.Factor;
        Agree.Digits(6, Math.Sqrt(exact.Variance + Math.Pow(0.005 * 1.412537544622754 * Math.Log(10) / 2, 2)), read.U);
    }

    // No absorbance, no correction and no uncertainty.
    [Fact]
    public void Correct_WithoutAbsorbance_ChangesNothing()
    {
        var corrected = InnerFilter.Correct("S-1", 100, 0, 0).Value!;
        Assert.Equal(100, corrected.Signal.Value);
        Assert.Equal(0, corrected.Signal.U);
    }

    [Fact]
    public void Corrections_InTheirOrder_UndoWhatWasDone()
    {
        // A signal of 500, dimmed by a lamp at 0.8 and diluted 25 to 25.5, on a solvent of 40 and a dark current of 12.
        var raw = 500.0 * 0.8 * 25 / 25.5 + 40 + 12;
        var signal = SignalCorrection.LessSolvent<Number>(SignalCorrection.LessDark<Number>(raw, 12), 40);
        Agree.Digits(13, 500, SignalCorrection.Undiluted(SignalCorrection.AtLampOfStart<Number>(signal, 0.8, 1), 25, 0.5).Value);
    }

    [Theory, InlineData(790_000, false), InlineData(810_000, true)]
    public void Saturation_AtFourFifthsOfTheRange_Begins(double raw, bool saturated)
        => Assert.Equal(saturated, SignalCorrection.Saturation("F-1", raw, 1_000_000) is { Code: "HF-572", Weight: Weight.Stop });

    [Fact]
    public void ColouredQuencher_WithoutAbsorbance_IsSaid()
    {
        Assert.Equal("HF-584", ColouredQuenchers.WithoutAbsorbance("Ni", hasAbsorbance: false)?.Code);
        Assert.Null(ColouredQuenchers.WithoutAbsorbance("Ni", hasAbsorbance: true));
        Assert.Null(ColouredQuenchers.WithoutAbsorbance("Zn", hasAbsorbance: false));
    }

    [Fact]
    public void Depletion_AboveOneTenth_IsSaid()
    {
        Assert.Equal(0.2, QuencherDepletion.Share<Number>(0.2, 20, 20).Value, 12);
        Assert.Equal("HF-583", QuencherDepletion.Says(20, 0.2, "µmol/L")?.Code);
        Assert.Null(QuencherDepletion.Says(20, 0.1, "µmol/L"));
    }
}
