using Holdfast.Composition;

namespace Holdfast.Tests.Composition;

/// <summary>Elements by name. English names are those of the table of atomic weights (CIAAW); the others are common practice in their languages.</summary>
public class ElementNamesTests
{
    [Theory]
    [InlineData("Pb", "lead Blei plomb plomo chumbo piombo")]
    [InlineData("Cu", "copper Kupfer cuivre cobre rame")]
    [InlineData("Ni", "nickel Nickel níquel nichel")]
    [InlineData("Zn", "zinc Zink cinc zinco")]
    [InlineData("Cd", "cadmium Cadmium cadmio cádmio")]
    [InlineData("Fe", "iron Eisen fer hierro ferro")]
    [InlineData("Hg", "mercury Quecksilber mercure mercurio mercúrio")]
    [InlineData("Ag", "silver Silber argent plata prata argento")]
    [InlineData("As", "arsenic Arsen arsénico arsénio arsenico")]
    [InlineData("Cr", "chromium Chrom chrome cromo")]
    [InlineData("Co", "cobalt Kobalt cobalto")]
    [InlineData("Mn", "manganese Mangan manganèse manganeso manganês")]
    [InlineData("Sn", "tin Zinn étain estaño estanho stagno")]
    [InlineData("U", "uranium Uran uranio urânio")]
    public void Find_ByNameInSixLanguages_GivesTheElement(string symbol, string names)
    {
        foreach (var name in names.Split(' '))
        {
            Assert.Equal(symbol, ElementNames.Find(name)?.Symbol);
            Assert.Equal(symbol, ElementNames.Find("  " + name.ToUpperInvariant() + " ")?.Symbol);
        }
    }

    [Theory]
    [InlineData("Pb2+", "Pb")]
    [InlineData("Pb²⁺", "Pb")]
    [InlineData("Pb(II)", "Pb")]
    [InlineData("lead(II)", "Pb")]
    [InlineData("Cr (VI)", "Cr")]
    [InlineData("pb", "Pb")]
    [InlineData("CU", "Cu")]
    [InlineData("Ag+", "Ag")]
    public void Find_WithAChargeOrAState_GivesTheElement(string words, string symbol) => Assert.Equal(symbol, ElementNames.Find(words)?.Symbol);

    [Theory]
    [InlineData("")]
    [InlineData("unobtainium")]
    [InlineData("Xx")]
    [InlineData("lead acetate")]
    [InlineData("2+")]
    public void Find_OfNoElement_IsNull(string words) => Assert.Null(ElementNames.Find(words));

    [Fact]
    public void Find_EverySymbolAndEnglishName_GivesItself()
        => Assert.All(Element.All, e =>
        {
            Assert.Equal(e, ElementNames.Find(e.Symbol));
            Assert.Equal(e, ElementNames.Find(e.Name));
        });
}
