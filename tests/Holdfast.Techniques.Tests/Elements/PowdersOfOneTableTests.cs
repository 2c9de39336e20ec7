using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>Several powders in one table, and per cent of oxides under the names of their metals. All invented.</summary>
public class PowdersOfOneTableTests
{
    [Theory]
    [InlineData("Probe;Stelle;Abstand (µm);O (At.-%);Nb (At.-%);Zr (At.-%)\nNZ-1;1;0;66,1;1,5;32,4\nNZ-1;2;0,5;66,2;1,7;32,1\nNZ-1;3;1,0;;;\nNZ-1;Mittelwert;;66,2;1,6;32,2\nNZ-4;1;0;66,3;4,2;29,5\nNZ-4;2;0,5;66,1;4,4;29,5\nNZ-4;Standardabweichung;;0,1;0,1;0,0\n")]
    [InlineData("all in atomic %\nspecimen,O,Nb,Zr\nNZ-1,66.1,1.5,32.4\nNZ-1,66.2,1.7,32.1\nNZ-4,66.3,4.2,29.5\nNZ-4,66.1,4.4,29.5\nMean,66.2,3.0,30.9\n")]
    public void Powders_BelowEachOther_AreKeptApart(string text)
    {
        var powders = Powders(Reading.Of("profile.csv", text));
        Assert.Equal([("NZ-1", 2), ("NZ-4", 2)], powders.Select(p => (p.Name, p.Places.Length)));
        Assert.Equal(((1.5 / 33.9) + (1.7 / 33.8)) / 2, powders[0].Ratios(ElementRatio.Read("Nb/(Nb+Zr)").Value!).Average(r => r.Value.Value), 1e-9);
    }

    [Theory]
    [InlineData("Element;NZ-1;NZ-4\nO;66,1;66,3\nNb;1,5;4,2\nZr;32,4;29,5\nalles in Atom-%\n")]
    [InlineData("sample,O (at%),Nb (at%),Zr (at%)\nNZ-1,66.1,1.5,32.4\nNZ-4,66.3,4.2,29.5\n")]
    public void Powders_EachOnce_AreSaidToBe(string text)
    {
        var understood = Reading.Of("series.csv", text);
        Assert.Equal(["NZ-1", "NZ-4"], Powders(understood).Select(p => p.Name));
        Assert.Contains(understood.Questions, q => q.Id == "powders");
        Assert.Equal(2, Assert.Single(Powders(Reading.Of("series.csv", text, Answers.None.With("powders", "one-powder")))).Places.Length);
    }

    // "portion 1", "portion 2" number what was done with one powder.
    [Fact]
    public void Numbers_AreNoPowders()
        => Assert.Equal(3, Assert.Single(Powders(Reading.Of("NZ-1.csv", "sample,O (at%),Nb (at%),Zr (at%)\nportion 1,66.1,1.5,32.4\nportion 2,66.3,1.6,32.1\nportion 3,66.3,1.4,32.3\n"))).Places.Length);

    // 30.0 MgO and 69.0 Al2O3: 0.7444 to 2·0.6767 moles of the metals.
    [Theory]
    [InlineData("XRF, fused bead\nElement,wt%\nMg,30.0\nAl,69.0\nCr,0.5\n")]
    [InlineData("Messung der Schmelztablette\nElement;Tablette 1;Tablette 2\n;Gew.-%;Gew.-%\nMg;30,0;30,0\nAl;69,0;69,0\nCr;0,50;0,50\n")]
    [InlineData("spot,Mg (wt%),Al (wt%),Cr (wt%)\n1,30.0,69.0,0.51\n")]
    public void Metals_ThatAddUpWithoutOxygen_AreAskedAbout(string text)
    {
        var question = Assert.Single(Reading.Of("MA.csv", text).Questions, q => q.IsOpen);
        Assert.Equal("oxides", question.Id);
        Assert.Contains("Al2O3", question.Text, StringComparison.Ordinal);
        var ratio = ElementRatio.Read("Mg/(Mg+Al)").Value!;
        Assert.Equal(0.7444 / (0.7444 + 1.3534), Assert.Single(Powders(Reading.Of("MA.csv", text, Answers.None.With("oxides", "oxides")))).Ratios(ratio)[0].Value.Value, 2e-4);
        Assert.Equal(30 / 24.305 / ((30 / 24.305) + (69 / 26.982)), Assert.Single(Powders(Reading.Of("MA.csv", text, Answers.None.With("oxides", "elements")))).Ratios(ratio)[0].Value.Value, 2e-4);
    }

    [Theory]
    [InlineData("Element,wt%\nMg,30.0\nAl,70.0\n")]
    [InlineData("Element,wt%\nFe,70.1\nNi,29.5\n")]
    [InlineData("Element,wt%\nMg,17.0\nAl,37.0\n")]
    [InlineData("Element,wt%\nO,45.0\nMg,17.1\nAl,37.5\n")]
    [InlineData("Element,at%\nMg,30.0\nAl,69.4\n")]
    public void Metals_OfOrdinaryTables_AreNotAskedAbout(string text) => Assert.False(Reading.Of("MA.csv", text).NeedsDecision);

    // 39.0 % Ca and 18.2 % P are 0.9731 and 0.5876 mol in 100 g; 17 800 mg/kg Sr are 0.02032 mol.
    [Theory]
    [InlineData("Probe;Ca;P;Trocknungsverlust\n;Gew.-%;Gew.-%;Gew.-%\nKP-1;39,0;18,2;1,2\nKP-2;38,1;18,0;1,1\n\nSeite 2\nProbe;Sr;Zn\n;mg/kg;mg/kg\nKP-1;17800;< 4\nKP-2;120;31\n")]
    [InlineData("sample,Ca (wt%),P (wt%)\nKP-1,39.0,18.2\nKP-2,38.1,18.0\nsample,Sr (mg/g),Zn (mg/g)\nKP-1,17.8,<0.1\nKP-2,0.12,0.031\n")]
    [InlineData("as mass percent\nsample    Ca (%)    P (%)\nKP-1    39.00    18.20\nKP-2    38.10    18.00\n\nsample    Sr (mg/kg)    Zn (mg/kg)\nKP-1    17,800    < 4\nKP-2    120    31\n")]
    public void Elements_OnTwoPages_AreOneComposition(string text)
    {
        var understood = Reading.Of("report.txt", text);
        var powders = Powders(understood);
        Assert.Equal(["KP-1", "KP-2"], powders.Select(p => p.Name));
        Assert.Equal(0.9731 / 0.5876, Assert.Single(powders[0].Ratios(ElementRatio.Read("Ca/P").Value!)).Value.Value, 1e-3);
        Assert.Equal(0.02032 / (0.02032 + 0.9731), Assert.Single(powders[0].Ratios(ElementRatio.Read("Sr/(Ca+Sr)").Value!)).Value.Value, 1e-4);
        Assert.Equal(17.8, powders[0].Places[0].AsWritten.Single(a => a.Key.Symbol == "Sr").Value, 1e-9);
        Assert.DoesNotContain(powders[0].Places[0].Atoms, a => a.Key.Symbol == "Zn");
        Assert.Contains(understood.Findings, f => f.Sentence.Contains("below a limit", StringComparison.Ordinal));
    }

    // The numbers under other elements are not those of the first.
    [Fact]
    public void Elements_OfOtherPowdersBelow_AreNotMixedIn()
        => Assert.All(Reading.Of("report.csv", "sample,Ca (wt%),P (wt%)\nKP-1,39.0,18.2\nKP-2,38.1,18.0\nsample,Sr (wt%),Zn (wt%)\nQS-7,1.78,2.1\nQS-8,0.12,0.3\n").Measurements(), m => Assert.DoesNotContain(m.Column("mass")!.Numbers!.Value, n => n < 18));

    [Theory]
    [InlineData("Co (mg/kg)", "mg/kg")]
    [InlineData("Co / mg kg-1", "mg/kg")]
    [InlineData("Co in µg/g", "mg/kg")]
    [InlineData("Co (g/kg)", "mg/g")]
    [InlineData("Co (mg g⁻¹)", "mg/g")]
    [InlineData("Co (mg/L)", null)]
    public void AmountInAGram_IsNotThatInAKilogram(string heading, string? unit) => Assert.Equal(unit, AmountWords.PerGram(heading));

    private static ImmutableArray<AnalysedPowder> Powders(Understanding understood)
    {
        Assert.False(understood.NeedsDecision, understood.Said());
        return ElementStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, ""))).Powders;
    }
}
