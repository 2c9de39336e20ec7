using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Testing;

namespace Holdfast.Tests.Isotherms;

public class IsothermFormTests
{
    // No mechanism is read from E (rule I8): it moves with a choice. One Langmuir isotherm (qm 85, K 0.065, lead) and one temperature,
    // two solubilities: E moves by a kJ/mol and more. The unit-laden form is not offered at all; reference/sorption/simulations.csv has its spread.
    [Fact]
    public void Energy_OfOtherSolubilities_Moves()
    {
        double Energy(double solubility)
        {
            double[] c = [0.8, 2.5, 6, 12, 22, 38, 60, 95];
            var line = StraightLine.Through(
                [.. c.Select(v => Math.Pow(Math.Log(v / solubility), 2))],
                [.. c.Select(v => Math.Log(Langmuir.Value<Number>(v, [85, 0.065]).Value))]);
            return DubininRadushkevich.Energy<Number>(-line.Slope, 298.15).Value;
        }

        var expected = ReferenceTable.Read("sorption", "simulations.csv").First(r => r["setting"] == "D-R with ln(Cs/C), Cs 2000 mg/L").Number("value");
        Agree.Relative(1e-10, expected, Energy(2000));
        Assert.True(Energy(200_000) - Energy(2000) > 1);
    }

    // reference/sorption/simulations.csv, rows "AICc, n = …": how far the sum of squares must fall before a third or fourth parameter ties.
    [Fact]
    public void FactorToTie_WithFewPoints_AgreesWithTheTable()
    {
        var rows = ReferenceTable.Read("sorption", "simulations.csv").Where(r => r["setting"].StartsWith("AICc, n = ", StringComparison.Ordinal)).ToArray();
        Assert.Equal(14, rows.Length);
        foreach (var row in rows)
        {
            var n = int.Parse(row["setting"]["AICc, n = ".Length..], System.Globalization.CultureInfo.InvariantCulture);
            var factor = Criteria.FactorToTie(n, 2, row["quantity"].Contains("3rd", StringComparison.Ordinal) ? 3 : 4);
            if (row.Has("value"))
                Agree.Relative(1e-9, row.Number("value"), factor!.Value, row["setting"]);
            else
                Assert.Null(factor);
        }
    }

    // R_L = 1/(1 + K·C0) is between 0 and 1 for every positive K, so that it can never say "not favourable".
    [Fact]
    public void SeparationFactor_OfAnyLangmuirFit_IsBetweenZeroAndOne()
    {
        foreach (var k in new[] { 1e-9, 0.065, 1e9 })
            Assert.InRange(Langmuir.SeparationFactor<Number>(k, 50).Value, 0, 1);
    }

    // Rule I10. Edge case edge-khan-falls of isotherm-expected.csv prints the maximum at 16.67.
    [Fact]
    public void Admissibility_OfEachCurveWithALimit_IsFoundOnOneSideOnly()
    {
        Assert.Equal("HF-474", Assert.Single(Temkin.Admissibility([14, 1.6], 0.6, 95)).Code);
        Assert.Empty(Temkin.Admissibility([14, 1.6], 0.63, 95));
        Assert.Equal("HF-475", Assert.Single(RedlichPeterson.Admissibility([6, 0.1, 1.05], 1, 95)).Code);
        Assert.Empty(RedlichPeterson.Admissibility([6, 0.1, 1], 1, 95));
        Assert.Contains("16.67", Assert.Single(Khan.Admissibility([60, 0.2, 1.3], 1, 95)).Sentence, StringComparison.Ordinal);
        Assert.Empty(Khan.Admissibility([60, 0.2, 1], 1, 95));
        Assert.Equal("HF-477", Assert.Single(LiquidBet.Admissibility([30, 0.4, 0.011], 1, 95)).Code);
        Assert.Empty(LiquidBet.Admissibility([30, 0.4, 0.006], 1, 95));
        Assert.Equal("HF-478", Assert.Single(Freundlich.Admissibility([0.2, 0.69], 1, 95)).Code);
        Assert.Empty(Freundlich.Admissibility([9, 2], 1, 95));
        Assert.Equal("HF-479", Assert.Single(DualSiteLangmuir.Admissibility([30, 0.1, 30, 0.09], 1, 95)).Code);
        Assert.Empty(DualSiteLangmuir.Admissibility([30, 0.6, 70, 0.02], 1, 95));
        Assert.Empty(Langmuir.Card.Aliases);
    }

    // The maxima are where the slope is nil.
    [Fact]
    public void MaximumAt_OfInadmissibleCurves_IsWhereTheSlopeVanishes()
    {
        var c = RedlichPeterson.MaximumAt(0.1, 1.3);
        Assert.True(RedlichPeterson.Value<Number>(c, [6, 0.1, 1.3]).Value > RedlichPeterson.Value<Number>(c * 1.01, [6, 0.1, 1.3]).Value);
        Assert.True(RedlichPeterson.Value<Number>(c, [6, 0.1, 1.3]).Value > RedlichPeterson.Value<Number>(c * 0.99, [6, 0.1, 1.3]).Value);
        c = Khan.MaximumAt(0.2, 1.3);
        Assert.True(Khan.Value<Number>(c, [60, 0.2, 1.3]).Value > Khan.Value<Number>(c * 1.01, [60, 0.2, 1.3]).Value);
        Assert.True(Khan.Value<Number>(c, [60, 0.2, 1.3]).Value > Khan.Value<Number>(c * 0.99, [60, 0.2, 1.3]).Value);
    }

    // Sips, Hill and Koble-Corrigan: one curve in three sets of letters (values from isotherm-expected.csv, case sips-noisy).
    [Fact]
    public void Sips_InTheLettersOfItsAliases_IsTheSameCurve()
    {
        const double qm = 93.8489097062, a = 0.0516913656871, n = 0.757934631577;
        Agree.Relative(1e-10, 9.4437623433, Sips.HillConstant<Number>(a, n).Value, "Hill KD");
        Agree.Relative(1e-10, 9.93766110313, Sips.KobleCorriganA<Number>(qm, a, n).Value, "Koble-Corrigan A");
        Agree.Relative(1e-10, 0.105890000579, Sips.KobleCorriganB<Number>(a, n).Value, "Koble-Corrigan B");
        Agree.Relative(1e-14, a, Sips.AffinityFromHill<Number>(Sips.HillConstant<Number>(a, n), n).Value, "and back");
        var cn = Math.Pow(22, n);
        Agree.Relative(1e-14, qm * cn / (Sips.HillConstant<Number>(a, n).Value + cn), Sips.Value<Number>(22, [qm, a, n]).Value, "Hill's formula");
        Assert.Equal(["Hill", "Koble-Corrigan", "Langmuir-Freundlich"], Sips.Card.Aliases);
    }
}
