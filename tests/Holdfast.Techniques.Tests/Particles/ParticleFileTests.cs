using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Particles;

/// <summary>Invented lists of sizes as different people write them.</summary>
public class ParticleFileTests
{
    private static readonly double[] Parent = Made.Sizes(120, 62, 0.28, 1), Doped = Made.Sizes(110, 48, 0.3, 2);

    [Theory]
    [InlineData("Nr;Länge (nm);Bild\n", ";", true, "length")]
    [InlineData("particle,length_nm\n", ",", false, "length")]
    [InlineData("#\tDiameter\n\tnm\n", "\t", false, "diameter")]
    [InlineData("N;Longueur (nm)\n", ";", true, "length")]
    [InlineData("id,Feret diameter [nm]\n", ",", false, "diameter")]
    [InlineData("序号,粒径 (nm)\n", ",", false, "diameter")]
    [InlineData("No,Tamaño de partícula (nm)\n", ",", false, "size")]
    public void List_AsPeopleWriteIt_IsRead(string head, string separator, bool comma, string measurand)
    {
        var image = head.Contains("Bild", StringComparison.Ordinal);
        var text = head + string.Concat(Parent.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1}{separator}{Made.Number(s, 1, comma)}{(image ? separator + "IMG_" + (i / 30).ToString(CultureInfo.InvariantCulture) : "")}\n")));
        var understood = Reading.Of("parent.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        var list = Assert.Single(Lists(understood).Lists);
        Assert.Equal(measurand, list.Measurand);
        Assert.Equal("nm", list.Unit);
        Assert.Equal(120, list.Particles.Length);
        Assert.Equal(Parent.Average(), list.Statistics.Summary.Mean, 1e-9);
        Assert.Equal(image ? 4 : 0, list.Images);
    }

    [Fact]
    public void Powders_SideBySide_AreOneListEach()
    {
        var text = "Particle lengths from SEM\nparent (nm),doped (nm)\n"
            + string.Concat(Enumerable.Range(0, 120).Select(i => string.Create(CultureInfo.InvariantCulture, $"{Parent[i]:F1},{(i < 110 ? Doped[i].ToString("F1", CultureInfo.InvariantCulture) : "")}\n")));
        var understood = Reading.Of("sizes.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal([("parent", 120), ("doped", 110)], Lists(understood).Lists.Select(l => (l.Powder, l.Particles.Length)));
    }

    [Fact]
    public void Lengths_AndWidths_AreKeptApart()
    {
        var text = "no,length (nm),width (nm),aspect ratio\n" + string.Concat(Parent.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{s:F1},{s / 2.5:F1},2.5{i % 7}\n")));
        var lists = Lists(Reading.Of("rods.csv", text)).Lists;
        Assert.Equal(["length", "width", "aspect"], lists.Select(l => l.Measurand));
        Assert.Equal("", lists[2].Unit);
    }

    [Fact]
    public void Sizes_InMicrometres_KeepTheirUnit()
    {
        var text = "particle,diameter (µm)\n" + string.Concat(Parent.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{s / 1000:F4}\n")));
        var list = Assert.Single(Lists(Reading.Of("p.csv", text)).Lists);
        Assert.Equal("um", list.Unit);
        Assert.Equal(Parent.Average() / 1000, list.Statistics.Summary.Mean, 1e-4);
    }

    [Fact]
    public void Sizes_WithoutAUnit_AreAskedAbout()
    {
        var text = "particle,length\n" + string.Concat(Parent.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{s:F1}\n")));
        var asked = Reading.Of("p.csv", text, Answers.None.With("technique", "particles"));
        Assert.Equal("unit:length", Assert.Single(asked.Questions, q => q.IsOpen).Id);
        Assert.Equal("nm", Assert.Single(Lists(Reading.Of("p.csv", text, Answers.None.With("technique", "particles").With("unit:length", "nm"))).Lists).Unit);
    }

    [Fact]
    public void AGroup_OnAnotherScale_IsAskedAbout()
    {
        var text = "group,length (nm)\n" + string.Concat(Parent.Select(s => "parent," + Made.Number(s, 1) + "\n")) + string.Concat(Doped.Select(s => "doped," + Made.Number(s / 1000, 4) + "\n"));
        var understood = Reading.Of("p.csv", text);
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Contains("doped", question.Text, StringComparison.Ordinal);
        var answered = Reading.Of("p.csv", text, Answers.None.With(question.Id, question.Choices[0]));
        Assert.Equal(Doped.Average(), Lists(answered).Lists.Single(l => l.Powder == "doped").Statistics.Summary.Mean, 0.1);
    }

    [Theory]
    [InlineData("size:59", "left", 108)]
    [InlineData("size:59", "tenth", 109)]
    public void ALostDecimalPoint_IsAskedAboutAndAnswered(string id, string how, int count)
    {
        double[] sizes = [.. Parent.Take(109)];
        sizes[57] *= 10;
        var text = "no,length (nm)\n" + string.Concat(sizes.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{s:F1}\n")));
        var question = Assert.Single(Reading.Of("p.csv", text).Questions, q => q.IsOpen);
        Assert.Equal(id, question.Id);
        var list = Assert.Single(Lists(Reading.Of("p.csv", text, Answers.None.With(id, how == "left" ? "leave-out" : question.Choices[0]))).Lists);
        Assert.Equal(count, list.Particles.Length);
        Assert.Equal(Parent.Take(109).Where((_, i) => how == "tenth" || i != 57).Average(), list.Statistics.Summary.Mean, 0.01);
    }

    [Theory]
    [InlineData("Wavelength (nm),Intensity\n", 250, 1)]
    [InlineData("pore diameter (nm),dV/dlogD\n", 2, 0.37)]
    public void OtherColumnsOfLengths_AreNotParticles(string head, double from, double step)
    {
        var text = head + string.Concat(Enumerable.Range(0, 60).Select(i => string.Create(CultureInfo.InvariantCulture, $"{from + step * i * (1 + 0.01 * i):F2},{i * 1.7:F2}\n")));
        Assert.DoesNotContain(Reading.Of("x.csv", text).Measurements(), m => m.Technique == "particles");
    }

    private static ParticleStudy Lists(Understanding understood)
        => ParticleStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));
}
