using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Testing;
using Holdfast.Thermodynamics;

namespace Holdfast.Tests.Thermodynamics;

public class IsostericHeatTests
{
    // reference/sorption/thermo-expected.csv, "isosteric": two made isotherms, truth −18 kJ/mol at every coverage.
    [Theory, InlineData("coverage 0.2"), InlineData("coverage 0.5"), InlineData("coverage 0.8")]
    public void Heat_FromTwoTemperatures_GivesTheTruth(string coverage)
    {
        var row = ReferenceTable.Read("sorption", "thermo-expected.csv").Single(r => r["case"] == "isosteric" && r["quantity"] == coverage);
        var words = row["note"].Replace(";", "", StringComparison.Ordinal).Split(' ');
        var heat = IsostericHeat.OfTwo<Number>(293.15, Parsed(words[1]), 313.15, Parsed(words[3])).Value;
        Agree.Digits(8, row.Number("value"), heat);
    }

    // Atkins, Physical Chemistry: carbon monoxide at equal coverage, data and answer −7.52 kJ/mol from memory; −7.49 here.
    [Fact]
    public void Heat_OfCarbonMonoxide_IsWithinHalfAPercentOfThePrint()
    {
        var rows = ReferenceTable.Read("sorption", "published", "atkins-co-isosteric.csv");
        var heat = IsostericHeat.Of([.. rows.Select(r => r.Number("T_K"))], [.. rows.Select(r => (Measured)r.Number("p_kPa"))]).Value!;
        var expected = ReferenceTable.Read("sorption", "published-expected.csv").Single(r => r["dataset"] == "atkins-co-isosteric");
        Agree.Digits(8, expected.Number("computed_here"), heat.Value);
        Agree.Digits(8, expected.Number("se"), heat.StandardError);
        Agree.Relative(0.005, -7.52, heat.Value);
    }

    // The concentration read off a fit is where the fit has that uptake, and its uncertainty is that of the fit over its slope.
    [Fact]
    public void ConcentrationAt_AnUptakeInsideTheData_InvertsTheFit()
    {
        double[] c = [1, 3, 8, 15, 30, 60], q = [5.1, 13.4, 28.9, 41.2, 55.6, 67.1];
        var fit = Fit.Of<Langmuir>(new(c, q, "mg/L", "mg/g"));
        var at = IsostericHeat.ConcentrationAt(fit, 40, "ISO").Value!;
        Agree.Digits(9, 40, fit.ValueAt(at.Concentration.Value));
        Agree.Digits(8, fit.ConfidenceBand(at.Concentration.Value)!.Value.StandardError / fit.Model!.SlopeAt(at.Concentration.Value, [.. fit.Values]), at.Concentration.U);
        Assert.Equal("HF-629", Assert.Single(IsostericHeat.ConcentrationAt(fit, 90, "ISO").Findings).Code);
    }

    // An exact exponential: the line returns what made it.
    [Fact]
    public void Arrhenius_OfMadeConstants_ReturnsTheEnergy()
    {
        double[] t = [288.15, 298.15, 308.15, 318.15];
        var found = Arrhenius.Of(t, [.. t.Select((v, i) => (Measured)(1e6 * Math.Exp(-35000 / (Constants.MolarGas * v)) * (1 + 1e-6 * (i % 2))))]).Value!;
        Agree.Digits(4, 35, found.ActivationEnergy.Value);
        Agree.Digits(3, Math.Log(1e6), found.LogPreFactor.Value);
        Assert.Equal("HF-627", Assert.Single(Arrhenius.Of([298.15, 308.15, 318.15], [(Measured)0.01, 0.012, 0.013]).Findings).Code);
    }

    private static double Parsed(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
