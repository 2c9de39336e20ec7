using Holdfast.Amounts;
using Holdfast.Testing;
using Holdfast.Thermodynamics;

namespace Holdfast.Tests.Thermodynamics;

public class ArrheniusTests
{
    // Two lines with one slope: the rows of reference/sorption/thermo-expected.csv, case "synthetic" (scipy 1.10.1, also R 4.2.2 lm). Ea = −R·slope, as ΔH° is.
    [Fact]
    public void ActivationEnergy_OfTheMadeSeries_HasSlopeAndErrorOfTheTable()
    {
        var rows = ReferenceTable.Read("sorption", "thermo-data.csv");
        var found = Arrhenius.Of([.. rows.Select(r => r.Number("T_K"))], [.. rows.Select(r => (Measured)Math.Exp(r.Number("lnK")))]).Value!;
        var expected = ReferenceTable.Read("sorption", "thermo-expected.csv").Single(r => r["case"] == "synthetic" && r["quantity"] == "dH_kJ_mol");
        Agree.Digits(8, expected.Number("value"), found.ActivationEnergy.Value);
        Agree.Digits(8, expected.Number("se"), found.ActivationEnergy.StandardError);
        Assert.Equal(rows.Count - 2, found.ActivationEnergy.DegreesOfFreedom);
    }

    // By derivation: constants that lie on a line but are known poorly make the propagated interval the wider one; u(Ea) = R·u/√Σ(1/T − mean)².
    [Fact]
    public void WiderActivationEnergy_OfPoorConstantsOnALine_IsThePropagatedOne()
    {
        double[] t = [288.15, 298.15, 308.15, 318.15];
        var found = Arrhenius.Of(t, [.. t.Select((v, i) => Measured.From(Math.Exp(10 - 3600 / v), new Source($"k{i}", "k", 0.05 * Math.Exp(10 - 3600 / v))))]).Value!;
        Agree.Digits(6, 3600 * 8.314462618 / 1000, found.ActivationEnergy.Value);
        Agree.Digits(8, VantHoff.PlannedError(t, 0.05), found.WiderActivationEnergy.StandardError);
        Assert.Equal("line on 1/T, propagated uncertainty", found.WiderActivationEnergy.Method);
        Assert.True(found.ActivationEnergy.Interval().Half < found.WiderActivationEnergy.Interval().Half);
    }
}
