using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Particles;

/// <summary>Invented sizes in pixels under a title with a scale bar, particles that were struck out, and lengths in lines with a label.</summary>
public class PixelsAndStruckTests
{
    private static readonly double[] Sizes = Made.Sizes(60, 80, 0.2, 5);

    [Theory]
    [InlineData("bâtonnets BT-4, longueurs en pixels\nbarre d'échelle sur les clichés : 200 nm = 160 pixels\n", 1.25)]
    [InlineData("Stäbchen BT-4, Längen in Pixeln\nMassstab: 160 px = 200 nm\n", 1.25)]
    [InlineData("rods BT-4, lengths in px\nscale 1.25 nm/px\n", 1.25)]
    [InlineData("rods BT-4, lengths in pixels\n0.8 px/nm in all images\n", 1.25)]
    [InlineData("rods BT-4, lengths in pixels\nscale bar 0.2 µm is 160 px\n", 1.25)]
    public void Pixels_UnderATitleWithAScale_AreNanometres(string head, double scale)
    {
        var rows = string.Concat(Enumerable.Range(0, 20).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i + 1}\t{Sizes[i]:0.0}\t{Sizes[i + 20]:0.0}\t{Sizes[i + 40]:0.0}\n")));
        var understood = Reading.Of("BT-4.tsv", head + "\n\timage 1\timage 2\timage 3\n" + rows);
        Assert.False(understood.NeedsDecision, understood.Said());
        var list = Assert.Single(Lists(understood).Lists);
        Assert.Equal(("BT-4", 60, "nm"), (list.Powder, list.Particles.Length, list.Unit));
        Assert.Equal(scale * Sizes.Average(s => Math.Round(s, 1)), list.Statistics.Summary.Mean, 0.01);
    }

    // Images side by side under a title in another language, and length beside width under short words.
    [Theory]
    [InlineData("Kornlängder KP-2, största längd i nm", "bild 1;bild 2", "length")]
    [InlineData("Teilchenlängen KP-2 in nm", "Bild 1;Bild 2", "length")]
    [InlineData("Partikelbreiten KP-2 in nm", "Aufnahme 1;Aufnahme 2", "width")]
    [InlineData("délka zrn KP-2 v nm", "snímek 1;snímek 2", "length")]
    [InlineData("hiukkasten pituus KP-2, nm", "kuva 1;kuva 2", "length")]
    [InlineData("KP-2", "boy (nm);en (nm)", "length")]
    public void Sizes_InOtherLanguages_AreNamed(string title, string heading, string name)
    {
        var rows = string.Concat(Enumerable.Range(0, 30).Select(i => string.Create(CultureInfo.InvariantCulture, $"{Sizes[i]:0.0};{Sizes[i + 30] / 2:0.0}\n")));
        var understood = Reading.Of("KP-2.csv", $"{title}\n\n{heading}\n{rows}");
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(name, understood.Measurements()[0].Columns[0].Name);
        Assert.All(understood.Measurements(), m => Assert.Equal("KP-2", m.Sample));
    }

    [Fact]
    public void Pixels_WithTwoScales_AreAskedAbout()
    {
        var rows = string.Concat(Enumerable.Range(0, 20).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i + 1}\t{Sizes[i]:0.0}\t{Sizes[i + 20]:0.0}\n")));
        Assert.True(Reading.Of("BT-4.tsv", "rods BT-4, lengths in pixels\n200 nm = 160 px at low, 100 nm = 160 px at high magnification\n100 nm = 160 px\n\timage 1\timage 2\n" + rows).NeedsDecision);
    }

    [Theory]
    [InlineData("Nadeln GN-2, alles in nm", "breit;lang", "am Rand, verworfen")]
    [InlineData("needles GN-2, everything in nm", "wide;long", "rejected")]
    [InlineData("aiguilles GN-2, tout en nm", "largeur;longueur", "rejetée (bord)")]
    [InlineData("agujas GN-2, todo en nm", "ancho;longitud", "descartada")]
    public void Rows_StruckOut_DoNotCount(string title, string heads, string word)
    {
        var rows = string.Concat(Sizes.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1};{s / 3:0.0};{s:0.0};{(i % 20 == 7 ? word : i == 3 ? "nicht verworfen / not rejected" : "")}\n")));
        var understood = Reading.Of("GN-2.csv", $"{title}\nNr.;{heads};\n{rows}");
        Assert.False(understood.NeedsDecision, understood.Said());
        var list = Lists(understood).Lists.Single(l => l.Measurand == "length");
        Assert.Equal((57, "nm"), (list.Particles.Length, list.Unit));
        Assert.Contains("Struck out", understood.Said(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("== {0} (plain) ==", "print {0}: ", ", ")]
    [InlineData("[{0}]", "image {0}: ", " ")]
    [InlineData("Powder {0}", "photo {0}:\n", " ")]
    [InlineData("*** {0} ***", "Bild {0}: ", "; ")]
    public void Lines_WithALabel_AreLengthsOfItsImage(string section, string label, string between)
    {
        string Lines(double[] sizes) => string.Concat(sizes.Chunk(15).Select((image, k) => string.Format(CultureInfo.InvariantCulture, label, k + 1) + string.Join('\n', image.Chunk(8).Select(line => string.Join(between, line.Select(s => Made.Number(s, 1, comma: false))))) + "\n"));
        var text = "Lengths read from prints, nm\n\n" + string.Concat(new[] { ("MZ-0", Sizes[..30]), ("MZ-4", Sizes[30..]) }.Select(p => string.Format(CultureInfo.InvariantCulture, section, p.Item1) + "\n" + Lines(p.Item2) + "together 30\n\n"));
        var understood = Reading.Of("sizes.txt", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal([("MZ-0", 30, 2), ("MZ-4", 30, 2)], Lists(understood).Lists.Select(l => (l.Powder, l.Particles.Length, l.Images)));
    }

    private static ParticleStudy Lists(Understanding understood)
        => ParticleStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));
}
