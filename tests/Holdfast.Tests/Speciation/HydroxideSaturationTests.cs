using Holdfast.Composition;
using Holdfast.Speciation;
using Holdfast.Testing;

namespace Holdfast.Tests.Speciation;

public sealed class HydroxideSaturationTests
{
    // reference/design/decision-check.csv K15..K17: Ni 20 mg/L, Ks 5.48e-16.
    [Theory]
    [InlineData(6.7, -2.80634)]
    [InlineData(8, -0.206337)]
    [InlineData(9, 1.79366)]
    public void Index_NickelAt20MgPerLitre_AsInTheDecisionTable(double ph, double expected)
        => Agree.Relative(5e-5, expected, HydroxideSaturation.Index(20e-3 / Element.Find("Ni")!.AtomicWeight!.Value, 2, ph, 5.48e-16));

    // reference/measurement/ksp-disagreement.csv: onset at 1e-4 mol/L without complexes, computed there with pKw 13.997; rows printed to three figures are left out.
    [Fact]
    public void Onset_AtOneTenthMillimolar_AsInTheTableOfDisagreeingProducts()
    {
        var rows = ReferenceTable.Read("measurement", "ksp-disagreement.csv").Where(r => r["solid"].Contains("(OH)2", StringComparison.Ordinal) && r["pH_onset_at_1e-4_mol_L_no_complexes"].Length > 6).ToArray();
        Assert.NotEmpty(rows);
        Assert.All(rows, r => Agree.Digits(9, r.Number("pH_onset_at_1e-4_mol_L_no_complexes"), HydroxideSaturation.Onset(1e-4, 2, r.Number("Ks")) - (HydroxideSaturation.PKw - 13.997)));
    }

    [Fact]
    public void Onset_WhereTheIndexIsZero_IsTheSamePh()
    {
        for (var charge = 1; charge <= 4; charge++)
            Assert.Equal(0, HydroxideSaturation.Index(3e-4, charge, HydroxideSaturation.Onset(3e-4, charge, 1e-20), 1e-20), 12);
    }

    [Theory]
    [InlineData(0, 2, 1e-16)]
    [InlineData(1e-4, 0, 1e-16)]
    [InlineData(1e-4, 2, 0)]
    public void Index_ImpossibleArguments_Throws(double concentration, int charge, double product)
        => Assert.Throws<ArgumentOutOfRangeException>(() => HydroxideSaturation.Index(concentration, charge, 7, product));
}
