using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Particles;

/// <summary>Invented sizes laid out otherwise than a row a particle: a column an image, units beside the numbers, tallies.</summary>
public class ParticleLayoutTests
{
    private static readonly double[] Sizes = Made.Sizes(60, 55, 0.2, 3);

    [Theory]
    [InlineData("Durchmesser der Teilchen, Pulver KL-2\nNr.;Bild 1 (nm);Bild 2 (nm);Bild 3 (nm)\n", "Mittelwert;{0};{1};{2}\nStabw.;9,1;9,2;9,3\nAnzahl;30;20;10\n", "diameter")]
    [InlineData("Longueurs en nm, poudre KL-2\nn°;photo A;photo B;photo C\n", "moyenne;{0};{1};{2}\nécart-type;9,1;9,2;9,3\n", "length")]
    [InlineData("Wielkości cząstek\nLp.;zdjęcie 1 [nm];zdjęcie 2 [nm];zdjęcie 3 [nm]\n", "razem;{0};{1};{2}\n", "size")]
    public void Images_SideBySide_AreOnePowder(string head, string foot, string measurand)
    {
        double[][] images = [Sizes[..30], Sizes[30..50], Sizes[50..]];
        var rows = string.Concat(Enumerable.Range(0, 30).Select(i => $"{i + 1};{string.Join(';', images.Select(m => i < m.Length ? Made.Number(m[i], 1, comma: true) : ""))}\n"));
        var understood = Reading.Of("KL-2.csv", head + rows + string.Format(CultureInfo.InvariantCulture, foot, [.. images.Select(m => (object)Made.Number(m.Average(), 1, comma: true))]));
        Assert.False(understood.NeedsDecision, understood.Said());
        var list = Assert.Single(Lists(understood).Lists);
        Assert.Equal(("KL-2", measurand, "nm", 3), (list.Powder, list.Measurand, list.Unit, list.Images));
        Assert.Equal(Sizes.Order(), list.Particles.Select(p => p.Size).Order());
    }

    // Two sizes in one cell, the unit once: a column each; the image is no powder.
    [Theory]
    [InlineData("Particles of powder KL-2\nno.;photo;length × width (nm)\n", " × ", false)]
    [InlineData("Particules\nPoudre : KL-2\nn°;cliché;longueur x largeur [nm]\n", "x", true)]
    public void TwoSizesInOneCell_AreAColumnEach(string head, string between, bool comma)
    {
        var rows = string.Concat(Sizes.Select((s, i) => $"{i + 1};{"ABC"[i % 3]};{Made.Number(s, 1, comma)}{between}{Made.Number(s / 2, 1, comma)}\n"));
        var understood = Reading.Of("KL-2.csv", head + rows);
        Assert.False(understood.NeedsDecision, understood.Said());
        var lists = Lists(understood).Lists;
        Assert.Equal(Sizes.Order(), lists.Single(l => l.Measurand == "length").Particles.Select(p => p.Size).Order());
        Assert.Equal(Sizes.Average() / 2, lists.Single(l => l.Measurand == "width").Statistics.Summary.Mean, 0.1);
        Assert.All(lists, l => Assert.Equal("KL-2", l.Powder));
    }

    [Fact]
    public void AnImage_OnAnotherScale_IsAskedAbout()
    {
        var text = "particle lengths\nno,image 1 (nm),image 2 (nm)\n" + string.Concat(Enumerable.Range(0, 30).Select(i => $"{i + 1},{Made.Number(Sizes[i], 1)},{Made.Number(Sizes[i + 30] / 1000, 4)}\n"));
        var question = Assert.Single(Reading.Of("KL-2.csv", text).Questions, q => q.IsOpen);
        Assert.Contains("image 2", question.Text, StringComparison.Ordinal);
        Assert.Equal(60, Assert.Single(Lists(Reading.Of("KL-2.csv", text, Answers.None.With(question.Id, question.Choices[0]))).Lists).Particles.Count(p => p.Size is > 20 and < 200));
    }

    [Theory]
    [InlineData("# ; Breite ; Länge\n", " nm", " µm", ";", true)]
    [InlineData("rod\twidth\tlength\n", "nm", "um", "\t", false)]
    [InlineData("rod,width (nm),length (µm)\n", "", "", ",", false)]
    [InlineData("rod,width (nm),length (nm)\n", "", " µm", ",", false)]
    public void Units_BesideNumbersOrOfEachColumn_HoldForTheirNumbers(string head, string ofWidth, string ofLength, string separator, bool comma)
    {
        var text = head + string.Concat(Sizes.Select((s, i) => $"{i + 1}{separator}{Made.Number(s / 2, 2, comma)}{ofWidth}{separator}{(i % 2 == 0 || ofLength.Length == 0 ? Made.Number(s / 1000, 4, comma) + ofLength : Made.Number(s, 1, comma) + " nm")}\n"));
        var understood = Reading.Of("KL-2.txt", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var lists = Lists(understood);
        Assert.Equal(["aspect", "length", "width"], lists.Lists.Select(l => l.Measurand).Order(StringComparer.Ordinal));
        var (length, width) = (lists.For("KL-2", "length")!, lists.For("KL-2", "width")!);
        Assert.Equal(Sizes.Average(), length.Statistics.Summary.Mean * ParticleFiles.Nanometres(length.Unit)!.Value, 0.01);
        Assert.Equal(Sizes.Average() / 2, width.Statistics.Summary.Mean * ParticleFiles.Nanometres(width.Unit)!.Value, 0.01);
        Assert.Equal(2, lists.For("KL-2", "aspect")!.Statistics.Summary.Mean, 0.01);
    }

    [Fact]
    public void ANumber_WithoutTheUnitThatOthersHave_IsAskedAbout()
    {
        var text = "rod,length\n" + string.Concat(Sizes.Select((s, i) => $"{i + 1},{Made.Number(s, 1)}{(i == 7 ? "" : " nm")}\n"));
        Assert.True(Reading.Of("KL-2.csv", text).NeedsDecision);
    }

    [Theory]
    [InlineData("Auszählung\nLänge (nm);Anzahl KL-0;Anzahl KL-2\n40;3;0\n45;7;2\n50;9;5\n55;4;8\n60;1;6\nSumme;24;21\n", "KL-0", "KL-2")]
    [InlineData("diameter\tKL-0\tKL-2\nnm\tnumber of particles\tnumber of particles\n40\t3\t\n45\t7\t2\n50\t9\t5\n55\t4\t8\n60\t1\t6\n", "KL-0", "KL-2")]
    [InlineData("Tamaño (nm);n (KL-0);n (KL-2)\n60;1;6\n55;4;8\n50;9;5\n45;7;2\n40;3;-\n", "KL-0", "KL-2")]
    [InlineData("Poudre KL-0\nlongueur [nm];effectif\n40;3\n45;7\n50;9\n55;4\n60;1\ntotal;24\n", "KL-0", null)]
    public void ATally_CountsEachSizeAsOftenAsItsNumberSays(string text, string first, string? second)
    {
        var understood = Reading.Of("zaehlung.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var lists = Lists(understood).Lists;
        Assert.Equal(second is null ? [first] : [first, second], lists.Select(l => l.Powder));
        Assert.Equal((24, (3 * 40 + 7 * 45 + 9 * 50 + 4 * 55 + 60) / 24.0), (lists[0].Particles.Length, lists[0].Statistics.Summary.Mean));
        if (second is not null)
            Assert.Equal((21, (2 * 45 + 5 * 50 + 8 * 55 + 6 * 60) / 21.0), (lists[1].Particles.Length, lists[1].Statistics.Summary.Mean));
    }

    [Fact]
    public void Particles_SortedBySize_AreNotTakenForATally()
    {
        var text = "particle number,length (nm)\n" + string.Concat(Sizes.Order().Select((s, i) => $"{(i * 37 % 60) + 1},{Made.Number(s + (0.01 * i), 2)}\n"));
        Assert.True(Reading.Of("KL-2.csv", text).NeedsDecision);
    }

    // A running number, what light scattering writes, and spectra.
    [Theory]
    [InlineData("number,length (nm)\n{0}", 0)]
    [InlineData("Size (nm),Number (%)\n40,10\n45,20\n50,40\n55,20\n60,10\n", 0)]
    [InlineData("Longueur d'onde (nm);nombre de coups\n400;10\n410;20\n420;40\n430;20\n440;10\n", 0)]
    public void OtherColumns_AreNoTally(string text, int tallies)
    {
        var sorted = string.Concat(Sizes.Order().Select((s, i) => $"{i + 1},{Made.Number(s + (0.01 * i), 2)}\n"));
        var understood = Reading.Of("KL-2.csv", string.Format(CultureInfo.InvariantCulture, text, sorted));
        Assert.Equal(tallies, understood.Measurements().Count(m => m.Column(ParticleFiles.Count) is not null));
    }

    private static ParticleStudy Lists(Understanding understood)
        => ParticleStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));
}
