using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>Rows between and below the powders of a table of elements, and elements that a table cannot hold. All invented.</summary>
public class RowsBetweenTests
{
    [Theory]
    [InlineData("Análise C H N, resultados em % de massa\namostra;toma / mg;N;C;H;obs.\npadrão (acetanilida);1,872;10,34;71,15;6,69;teórico\nAM-3;1,816;3,50;9,00;2,28;\n;2,212;3,50;9,00;2,26;\ncápsula vazia;0,000;0,00;0,02;0,01;branco\nAM-7;2,315;7,00;9,00;3,50;\n;2,246;7,00;9,00;3,56;repetida\n")]
    [InlineData("Elementaranalyse, Massen-%\nProbe;C;H;N;Bemerkung\nAM-3;9,00;2,28;3,50;\n;9,00;2,26;3,50;\nLeerkapsel leer;0,01;0,00;0,00;\nStandard BBOT;72,5;6,1;6,5;\nAM-7;9,00;3,50;7,00;\n;9,00;3,56;7,00;\n")]
    [InlineData("CHN, mass %\nsample,N,C,H\nAM-3,3.50,9.00,2.28\nAM-3,3.50,9.00,2.28\nsulfanilamide,16.2,41.8,4.7\nAM-7,7.00,9.00,3.50\nAM-7,7.00,9.00,3.50\n")]
    public void StandardsAndEmptyCapsules_AreNoPowders(string text)
    {
        var understood = Reading.Of("CHN.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var study = Study(understood);
        Assert.Equal(["AM-3", "AM-7"], study.Powders.Select(p => p.Name));
        var ratio = ElementRatio.Read("C/N").Value!;
        Assert.Equal([9 / 12.011 / (3.5 / 14.007), 9 / 12.011 / (7 / 14.007)], study.Powders.Select(p => p.Ratios(ratio).Average(r => r.Value.Value)), (a, b) => Math.Abs(a - b) < 0.002);
        Assert.Contains("no powder. Left out", understood.Said(), StringComparison.Ordinal);
    }

    // A powder that is called blank has more in it than an empty capsule.
    [Fact]
    public void PowderCalledBlank_IsAPowder()
        => Assert.Equal(["blank", "loaded"], Study(Reading.Of("CHN.csv", "CHN, mass %\nsample,N,C,H\nblank,3.50,9.00,2.28\nblank,3.40,9.00,2.28\nloaded,7.00,9.00,3.50\nloaded,7.00,9.00,3.50\n")).Powders.Select(p => p.Name));

    [Theory]
    [InlineData("punto", "somma", "media", "dev. st.")]
    [InlineData("Punkt", "Summe", "Mittelwert", "Stabw.")]
    [InlineData("point", "total", "moyenne", "écart-type")]
    [InlineData("punkt", "suma", "średnia", "odch. std.")]
    public void Statistics_BelowThePlaces_AreNoPlaces(string place, string sum, string mean, string scatter)
    {
        var understood = Reading.Of("SA-8.csv", $"EDX SA-8, wt%\n{place};O;Ca;Sr;{sum}\nP1;38;31;9;78\nP2;39;31;8;78\nP3;37;31;10;78\n{mean};38;31;9;78\n{scatter};1;0;1;0\nmin;37;31;8;78\nmax;39;31;10;78\n");
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(["P1", "P2", "P3"], Assert.Single(Study(understood).Powders).Places.Select(p => p.Name));
    }

    // In whatever language: known by their numbers, where they are called by a word alone. A spot that happens to be the richest in one element is a spot.
    [Theory]
    [InlineData("Keskiarvo;38.33;30.67;9.33\nSuurin;39;31;10\nHajonta;0.58;0.58;0.58\n")]
    [InlineData("Máximo;39;31;10\nMínimo;38;30;9\nMediana;38;31;9\n")]
    [InlineData("Átlag;38.33;30.67;9.33\nn;3;3;3\n")]
    public void Statistics_OfAnyName_AreNoPlaces(string below)
        => Assert.Equal(["P1", "P2", "P3"], Assert.Single(Study(Reading.Of("SA-8.csv", $"EDX SA-8, wt%\npunto;O;Ca;Sr\nP1;38;31;9\nP2;39;30;9\nP3;38;31;10\n{below}")).Powders).Places.Select(p => p.Name));

    [Fact]
    public void Place_ThatIsTheRichestInOneElement_IsAPlace()
        => Assert.Equal(4, Assert.Single(Study(Reading.Of("SA-8.csv", "EDX SA-8, wt%\npunto;O;Ca;Sr\nP1;38;31;9\nP2;39;30;9\nP3;38;31;10\nP4;39;29;8\n")).Powders).Places.Length);

    // A standard may be called so in the remark alone; runs may only be numbered; what is weighed in needs no unit.
    [Theory]
    [InlineData("CHN, amino silica AM-3; per cent of the weighed mass\nno;what;weighed;N;C;H;remark\n;;mg;%;%;%;\n1;tin;;0.01;0.04;0.02;blank\n2;blank;;0.01;0.04;0.02;empty\n3;TRM-1;2.1;16.2;41.8;4.7;standard, should be 16.27\n4;AM-3 a;2.3;3.5;9;2.3;\n5;AM-3 b;2.4;3.5;9;2.3;\n", 3)]
    [InlineData("Elementaranalyse CHN;Probe: AM-3\nalle Gehalte in Massen-%\nLauf;Einwaage;N;C;H\n1;2,399;3,5;9,0;2,37\n2;2,236;3,5;9,0;2,52\nMittel;;3,5;9,0;2,4\n", 2)]
    public void Runs_OfOnePowder_AreItsPlaces(string text, int places)
    {
        var understood = Reading.Of("AM-3_CHN.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(places, Assert.Single(Study(understood).Powders).Places.Length);
    }

    [Theory]
    [InlineData("EDX, lithium manganese oxide LM-2\n", "the rest to 100 should be the lithium", true)]
    [InlineData("REM-EDX LM-2\n", "Li aus dem Rest", true)]
    [InlineData("EDS of LiMn2O4, LM-2\n", "", true)]
    [InlineData("EDX, manganese oxide LM-2\n", "he measured it; Be careful", false)]
    [InlineData("ICP of LM-2, lithium on another page\n", "", false)]
    public void Element_ThatXraysDoNotShow_IsNamed(string title, string note, bool named)
        => Assert.Equal(named, Reading.Of("LM-2.csv", $"{title}area,O (wt%),Mn (wt%),sum\nA1,36.12,59.12,95.24\nA2,36.52,59.66,96.18\nA3,36.78,58.72,95.50\n{note}\n").Findings.Any(f => f.Sentence.Contains("not seen by X-rays", StringComparison.Ordinal)));

    private static ElementStudy Study(Understanding understood)
        => ElementStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));
}
