using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>Tables of elements and oxides laid out otherwise than a row or a column an element, and headings that the powder's formula contradicts. All invented.</summary>
public class ElementLayoutTests
{
    // Zn0.958Co0.042O: 2.05 at% Co beside 47.41 at% Zn.
    [Theory]
    [InlineData("Zusammensetzung in Atom-%\nElement;Stelle 1;Stelle 2;Stelle 3;Mittelwert;Stabw.\nO;50,54;50,60;50,48;50,54;0,06\nCo;2,05;2,01;2,09;2,05;0,04\nZn;47,41;47,39;47,43;47,41;0,02\nSumme;100,00;100,00;100,00;100,00;\n", 3)]
    [InlineData("measured at 15 kV\nElement,1,2,3,4,x\n,at%,at%,at%,at%,at%\nO,50.5,50.6,50.4,50.5,50.5\nCo,2.04,2.06,2.00,2.10,2.05\nZn,47.46,47.34,47.60,47.40,47.45\n", 4)]
    [InlineData("Pierwiastek\tPunkt A\tPunkt B\tnominalnie\nO\t20,30\t20,30\t20,0\nKobalt\t3,04\t3,04\t4,0\nZn\t76,66\t76,66\t76,0\n\nwartości w % wag.\n", 2)]
    [InlineData("Élément,wt% spectre 1,wt% spectre 2,écart-type\nO K,20.30,20.30,0.1\nCo K,3.04,3.04,0.1\nZn K,76.66,76.66,0.1\n", 2)]
    public void Places_InColumns_AreReadWithoutTheirMean(string text, int places)
    {
        var powder = Powder(Reading.Of("ZC.csv", text));
        Assert.Equal(places, powder.Places.Length);
        Assert.All(powder.Places, p => Assert.Equal(3, p.Atoms.Length));
        Assert.Equal(0.0415, powder.Ratios(ElementRatio.Read("Co/(Co+Zn)").Value!).Average(r => r.Value.Value), 0.0008);
    }

    // Y2O3 and Eu2O3 hold two atoms each, ZrO2 one: 12.00/225.81·2 = 0.10628 Y, 1.000/351.93·2 = 0.00568 Eu, 85.00/123.22 = 0.68982 Zr.
    [Theory]
    [InlineData("Oxid;Perle 1;Perle 2\nY2O3;12,00;12,00\nEu2O3;1,000;1,000\nZrO2;85,00;85,00\nGlühverlust;1,2;1,3\nSumme;99,20;99,30\nalle Werte in Massen-%\n")]
    [InlineData("Muestra YZ, masa fundida, 3 perlas;;\nPorcentajes en masa de los óxidos;;\nÓxido;Perla 1;Perla 2\nY2O3;12,00;12,00\nEu2O3;1,00;1,00\nZrO2;85,00;85,00\n")]
    [InlineData("bead,Y2O3 (wt%),Eu2O3 (wt%),ZrO2 (wt%),LOI (wt%),Total\nB1,12.00,1.000,85.00,1.1,99.1\nB2,12.00,1.000,85.00,1.3,99.3\n")]
    [InlineData("Ossido,% peso\nY2O3,12.00\nEu2O3,1.000\nZrO2,85.00\n")]
    [InlineData("Oxide,wt%\nY₂O₃,12.00\nEu₂O₃,1.000\nZrO₂,85.00\n")]
    [InlineData("Compound,Conc (wt%)\nY2O3,12.00\nEU2O3,1.000\nZRO2,85.00\n")]
    public void Oxides_AreTheAtomsOfTheirMetals(string text)
    {
        var powder = Powder(Reading.Of("YZ.csv", text));
        Assert.All(powder.Places, p => Assert.Equal(["Eu", "Y", "Zr"], p.Atoms.Select(a => a.Key.Symbol).Order(StringComparer.Ordinal)));
        Assert.All(powder.Ratios(ElementRatio.Read("Y/(Y+Zr)").Value!), r => Assert.Equal(0.10628 / (0.10628 + 0.68982), r.Value.Value, 1e-4));
        Assert.All(powder.Ratios(ElementRatio.Read("Eu/(Eu+Y)").Value!), r => Assert.Equal(0.00568 / (0.00568 + 0.10628), r.Value.Value, 1e-4));
    }

    // Names of powders, and shares of metal on them.
    [Theory]
    [InlineData("support,Co (wt%)\nTiO2,1.2\nAl2O3,1.5\nZrO2,0.9\n")]
    [InlineData("oxide,loading (wt%)\nTiO2,1.2\nAl2O3,1.5\nZrO2,0.9\n")]
    [InlineData("adsorbent,removal (%)\nTiO2,91\nAl2O3,85\nZrO2,40\n")]
    public void Oxides_ThatNamePowders_AreNoParts(string text)
        => Assert.DoesNotContain(Reading.Of("x.csv", text).Measurements(), m => m.Technique == "elements");

    [Theory]
    [InlineData("Sr0.9Ce0.1TiO3 by EDX\nElement,Weight %\nO,60.1\nSr,18.0\nTi,19.9\nCe,2.0\n", "Weight %", "mass")]
    [InlineData("Formule : Ba0,98Sm0,02MoO4\nÉlément;% atomique\nO;21,5\nBa;45,2\nMo;32,3\nSm;1,0\n", "% atomique", "atomic")]
    [InlineData("Element,wt%\nO,71.2\nBa,14.0\nMo,14.3\nSm,0.5\n", "wt%", "mass")]
    public void Percentages_ThatThePowderCannotHave_AreAskedAbout(string text, string heading, string kind)
    {
        var understood = Reading.Of("SC.csv", text);
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Equal("labels", question.Id);
        Assert.Contains(heading, question.Text, StringComparison.Ordinal);
        Assert.Empty(understood.Measurements());
        var (first, second) = (Reading.Of("SC.csv", text, Answers.None.With("labels", question.Choices[0])), Reading.Of("SC.csv", text, Answers.None.With("labels", question.Choices[1])));
        Assert.Equal(kind == "atomic", Powder(first).Places[0].ByMass);
        Assert.Equal(kind == "mass", Powder(second).Places[0].ByMass);
    }

    [Theory]
    [InlineData("Sr0.9Ce0.1TiO3 by EDX, prepared from SrCO3 and CeO2\nElement,Weight %\nO,25.1\nSr,41.9\nTi,25.6\nCe,7.4\n")]
    [InlineData("MgAl2O4\nElement,Weight %\nO,45.0\nMg,17.1\nAl,37.9\n")]
    [InlineData("Element,Weight %\nO,45.0\nMg,17.1\nAl,37.9\n")]
    [InlineData("Element,Weight %\nC,40.1\nO,50.0\nFe,9.9\n")]
    public void Percentages_OfOrdinaryTables_AreNotAskedAbout(string text) => Assert.False(Reading.Of("SC.csv", text).NeedsDecision);

    private static AnalysedPowder Powder(Understanding understood)
    {
        Assert.False(understood.NeedsDecision, understood.Said());
        return Assert.Single(ElementStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, ""))).Powders);
    }
}
