using Holdfast.Amounts;
using Holdfast.Fluorescence;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

public class LifetimeTests
{
    // reference/measurement/bimolecular.csv: kq = K/tau0 and what may be said.
    [Fact]
    public void Bimolecular_EveryRow_AgreesAndSaysWhatItMay()
    {
        var rows = ReferenceTable.Read("measurement", "bimolecular.csv");
        Assert.Equal(6, rows.Count);
        foreach (var row in rows)
        {
            var kq = DiffusionLimit.Bimolecular<Number>(row.Number("K_L_per_mol"), row.Number("tau0_s")).Value;
            Agree.Digits(9, row.Number("kq_L_per_mol_s"), kq);
            var above = row["verdict"].StartsWith("above", StringComparison.Ordinal);
            Assert.Equal(above ? Ruling.Contradicted : Ruling.NotShownYet, DiffusionLimit.CollisionsAlone(kq));
            Assert.Equal(above ? Weight.Caution : Weight.Note, DiffusionLimit.Says(kq).Weight);
        }
    }

    // reference/design/decision-check.csv K26: slopes 0.0162 (0.0003) and 0.0158 (0.0009) L/µmol.
    [Fact]
    public void Of_DecisionCheckK26_AgreesWithComputation()
    {
        var lifetimes = Lifetimes.Of(new("F0/F", 0.0162, 0.0003, 22, 24), new("τ0/τ", 0.0158, 0.0009, 7, 9));
        Agree.Digits(5, 0.975309, lifetimes.Ratio.Value);
        Agree.Digits(5, 0.421637, lifetimes.Z);
        Assert.True(lifetimes.Ratio.Interval(0.95).Contains(1));
    }

    // Two components, 0.7 of 1 ms and 0.3 of 3 ms: Σaτ/Σa = 1.6 ms (arithmetic).
    [Fact]
    public void AmplitudeWeighted_TwoComponents_IsTheirMean() => Assert.Equal(1.6, Lifetimes.AmplitudeWeighted([0.7, 0.3], [1, 3]), 12);

    [Fact]
    public void AmplitudeWeighted_OfNothing_Throws() => Assert.Throws<ArgumentException>(() => Lifetimes.AmplitudeWeighted([], []));
}
