using Holdfast.Composition;
using Holdfast.Safety;
using Holdfast.Solutions;
using Holdfast.Testing;

namespace Holdfast.Tests.Safety;

public sealed class CautionTests
{
    // reference/measurement/safety.csv: hazard codes by example, status in every row. The advice is in our own words and is not compared.
    [Fact]
    public void All_EveryTypedCode_IsThere()
        => Assert.All(ReferenceTable.Read("measurement", "safety.csv").Where(r => r["ghs_hazards"].StartsWith('H')), row =>
        {
            var codes = row["ghs_hazards"].Split(' ').Order(StringComparer.Ordinal);
            Assert.Contains(Caution.All, c => codes.SequenceEqual(c.Hazards.Split(' ').Order(StringComparer.Ordinal), StringComparer.Ordinal));
        });

    [Theory]
    [InlineData("Ni(NO3)2.6H2O", "nickel salt;nitrate")]
    [InlineData("NaCl", "")]
    [InlineData("ZrCl4", "metal chloride that reacts with water")]
    [InlineData("AlCl3.6H2O", "")]
    [InlineData("AlCl3", "metal chloride that reacts with water")]
    [InlineData("HCl", "strong acid")]
    [InlineData("nitric acid 65 %", "strong acid")]
    [InlineData("DMF", "amide solvent")]
    [InlineData("Formic acid", "formic acid")]
    [InlineData("K2Cr2O7", "chromium(VI) salt;chromium salt")]
    [InlineData("CrCl3.6H2O", "chromium salt")]
    [InlineData("AgNO3", "silver salt;nitrate")]
    [InlineData("NH3", "strong base")]
    [InlineData("Cd", "")]
    [InlineData("autoclave, 120 °C", "closed vessel that is heated")]
    [InlineData("disodium EDTA", "chelating eluent")]
    [InlineData("nitrogen-sorption", "cryogen")]
    [InlineData("powder-diffraction", "fine powder;ionising radiation")]
    public void For_SubstanceOrStep_IsOfItsClasses(string thing, string classes)
        => Assert.Equal(classes, string.Join(';', Caution.For(thing).Select(c => c.Class).Distinct()));

    [Fact]
    public void For_Recipe_LooksAtEveryReagent()
    {
        var recipe = Recipe.Of(
            Formula.Parse("NiO"), new Reagent("nickel nitrate", Formula.Parse("Ni(NO3)2.6H2O"), 2, 1), new Reagent("lye", Formula.Parse("NaOH"), 1, 2));
        Assert.Equal(["strong base", "nickel salt", "nitrate"], Caution.For(recipe).Select(c => c.Class));
    }

    [Fact]
    public void All_EveryCaution_SaysWhatToMindAndHowItIsKnown()
        => Assert.All(Caution.All, c => Assert.True(c.Advice.Length > 10 && c.Status.Length > 5 && c.Hazards.Length > 3, c.Class));
}
