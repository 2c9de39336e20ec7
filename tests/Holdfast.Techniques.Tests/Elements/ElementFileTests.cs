using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>
/// One composition, Zn0.958Co0.042O, written as different people write it. Percentages follow from the standard atomic weights (CIAAW 2024): 20.3 % O, 3.04 % Co,
/// 76.7 % Zn by mass; 50.5, 2.06, 47.4 % by atoms.
/// </summary>
public class ElementFileTests
{
    private const double Truth = 0.0416;

    [Theory]
    [InlineData("Element;Massen-%;Atom-%\nO;20,30;50,54\nCo;3,04;2,05\nZn;76,66;46,71\nSumme;100,00;99,30\n")]
    [InlineData("Elem.,Wt%,At%\nO K,20.30,50.54\nCo K,3.04,2.05\nZn L,76.66,46.71\nTotals,100.00,\n")]
    [InlineData("Elemento;Peso (%);Atómico (%)\nOxígeno;20,30;50,54\nCobalto;3,04;2,05\nCinc;76,66;46,71\n")]
    [InlineData("Sample,ZC\nElement\tLine\tNet\tWeight %\tError %\tAtomic %\nO\tK\t8123\t20.30\t0.9\t50.54\nCo\tK\t911\t3.04\t0.2\t2.05\nZn\tK\t20111\t76.66\t1.1\t46.71\n")]
    [InlineData("Spectrum,O (wt%),Co (wt%),Zn (wt%)\nSpectrum 1,20.30,3.04,76.66\n")]
    [InlineData("All results in atomic %\nSpectrum,O,Co,Zn,Total\n1,50.54,2.05,47.41,100.00\n")]
    [InlineData("Spot;O_at%;Co_at%;Zn_at%\nA;50,54;2,05;47,41\n")]
    [InlineData("元素,重量%,原子%\nO,20.30,50.54\nCo,3.04,2.05\nZn,76.66,46.71\n")]
    public void Table_AsPeopleWriteIt_GivesTheShare(string text)
    {
        var understood = Reading.Of("ZC.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal("elements", Assert.Single(understood.Measurements()).Technique);
        Assert.Equal(Truth, Share(understood), 0.0006);
    }

    [Fact]
    public void Tables_UnderEachOther_AreOnePlaceEach()
    {
        var block = "Element,Wt%,At%\nO,20.3,50.5\nCo,{0},2.1\nZn,76.7,46.7\nTotal,100,\n\n";
        var text = string.Concat(new[] { "3.04", "3.10", "2.98" }.Select((co, i) => $"Spectrum {i + 1}\n" + block.Replace("{0}", co, StringComparison.Ordinal)));
        var understood = Reading.Of("ZC.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var powder = Assert.Single(Study(understood).Powders);
        Assert.Equal(["Spectrum 1", "Spectrum 2", "Spectrum 3"], powder.Places.Select(p => p.Name));
        Assert.All(powder.Places, p => Assert.Equal(3, p.Atoms.Length));
    }

    [Theory]
    [InlineData("Element,Weight %,Atomic %\nO,50.54,20.30\nCo,2.05,3.04\nZn,46.71,76.66\n", "labels", "exchanged")]
    [InlineData("Element;Atom-%;Massen-%\nO;20,30;50,54\nCo;3,04;2,05\nZn;76,66;46,71\n", "labels", "exchanged")]
    [InlineData("Element,Weight %,Atomic %\nO,20.30,30.54\nCo,3.04,22.05\nZn,76.66,46.71\n", "uses", "mass")]
    public void Columns_ThatContradictEachOther_AreAskedAbout(string text, string question, string answer)
    {
        var understood = Reading.Of("ZC.csv", text);
        Assert.Equal(question, Assert.Single(understood.Questions, q => q.IsOpen).Id);
        Assert.Empty(understood.Measurements());
        var answered = Reading.Of("ZC.csv", text, Answers.None.With(question, answer));
        Assert.False(answered.NeedsDecision, answered.Said());
        Assert.Equal(Truth, Share(answered), 0.0006);
    }

    [Fact]
    public void Percent_OfNoStatedKind_IsAskedAbout()
    {
        var text = "Element,Concentration (%)\nO,20.30\nCo,3.04\nZn,76.66\n";
        var understood = Reading.Of("ZC.csv", text, Answers.None.With("technique", "elements"));
        Assert.Equal("percent", Assert.Single(understood.Questions, q => q.IsOpen).Id);
        Assert.Equal(Truth, Share(Reading.Of("ZC.csv", text, Answers.None.With("technique", "elements").With("percent", "mass"))), 0.0006);
        Assert.Equal(0.0381, Share(Reading.Of("ZC.csv", text, Answers.None.With("technique", "elements").With("percent", "atomic"))), 0.0006);
    }

    [Fact]
    public void Digests_InMilligramsPerGram_AreAskedAboutAndRead()
    {
        var text = "digest,Co (mg/g),Zn (mg/g)\nD1,30.4,766.6\nD2,30.1,765.0\nD3,30.8,768.9\n";
        Assert.True(Reading.Of("ZC.csv", text).NeedsDecision);
        var understood = Reading.Of("ZC.csv", text, Answers.None.With("technique", "elements"));
        Assert.False(understood.NeedsDecision, understood.Said());
        var powder = Assert.Single(Study(understood).Powders);
        Assert.True(powder.IsDissolved);
        Assert.Equal(3, powder.Places.Length);
        Assert.Equal(Truth, Share(understood), 0.0007);
    }

    [Theory]
    [InlineData("sample,m (mg),V (mL),C0 (mg/L),Pb (mg/L)\nV-01,50,25,20,3.1\nV-02,50,25,20,3.3\n")]
    [InlineData("vessel,time (min),Pb (mg/L),Zn (mg/L)\nK-1,5,3.1,8.0\nK-2,10,2.1,7.5\n")]
    [InlineData("Ion,mg/L\nCa,45\nMg,12\nNa,30\n")]
    public void TablesOfWater_AreNotTakenForPowder(string text)
        => Assert.DoesNotContain(Reading.Of("a.csv", text).Questions, q => q.Id.StartsWith("technique", StringComparison.Ordinal));

    private static ElementStudy Study(Understanding understood)
        => ElementStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));

    private static double Share(Understanding understood)
        => Study(understood).Powders[0].Ratios(ElementRatio.Read("Co/(Co+Zn)").Value!).Average(r => r.Value.Value);
}
