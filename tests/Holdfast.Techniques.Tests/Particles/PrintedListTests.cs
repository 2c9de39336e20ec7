using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Particles;

/// <summary>Invented lists laid out for paper: page after page, or in strips side by side; and what is said of the images they were measured in.</summary>
public class PrintedListTests
{
    private static readonly double[] Sizes = Made.Sizes(60, 55, 0.2, 5);

    [Theory]
    [InlineData("Partikel;Feret-Durchmesser (nm);Umfang;Winkel\n", "\n- Blatt 2 -\nPartikel;Feret-Durchmesser (nm);Umfang;Winkel\n")]
    [InlineData("n;diametro;area;angolo\n;nm;nm²;°\n", "n;diametro;area;angolo\n;nm;nm²;°\n")]
    [InlineData("Particle list QW-8\nno;diameter (nm);perimeter;angle\n", "Particle list QW-8\nno;diameter (nm);perimeter;angle\n")]
    public void List_OnSeveralPages_IsOne(string head, string next)
    {
        var list = Assert.Single(Lists(Reading.Of("QW-8.csv", Pages(head, next, restart: false))).Lists);
        Assert.Equal("diameter", list.Measurand);
        Assert.Equal(Sizes.Order(), list.Particles.Select(p => p.Size).Order());
    }

    // The count begins again, or a line names another powder: perhaps another list.
    [Theory]
    [InlineData("no;diameter (nm)\n", "\nno;diameter (nm)\n", true)]
    [InlineData("no;diameter (nm)\n", "powder QW-9\nno;diameter (nm)\n", false)]
    public void Lists_ThatMayBeTwo_AreNotJoined(string head, string next, bool restart)
        => Assert.DoesNotContain(Reading.Of("QW-8.csv", Pages(head, next, restart)).Measurements(), m => m.Column("diameter")?.Numbers?.Length > 20);

    [Theory]
    [InlineData("Rods of powder NQ-1\n", "#", "length (nm)", "n,{0}\naverage,55.0\n", false)]
    [InlineData("", "Lp.", "średnica [nm]", "średnia;55,0\n", true)]
    public void Strips_ThatCountOn_AreOneList(string title, string index, string heading, string foot, bool comma)
    {
        var separator = comma ? ";" : ",";
        var text = title + string.Join(separator, Enumerable.Repeat(index + separator + heading, 3)) + separator + "\n"
            + string.Concat(Enumerable.Range(0, 22).Select(r => string.Join(separator, Enumerable.Range(0, 3).Select(k => (22 * k) + r).Select(i => i < 60 ? $"{i + 1}{separator}{Made.Number(Sizes[i], 1, comma)}" : separator)) + separator + (r == 7 ? "blurred" : r == 9 ? "checked twice" : "") + "\n"))
            + string.Format(CultureInfo.InvariantCulture, foot, 60);
        var list = Assert.Single(Lists(Reading.Of("NQ-1.csv", text)).Lists);
        Assert.Equal("NQ-1", list.Powder);
        Assert.Equal(Sizes.Order(), list.Particles.Select(p => p.Size).Order());
    }

    [Fact]
    public void ASlip_InALaterStrip_IsAskedForByItsOwnNumber()
    {
        var text = "no,length (nm),no,length (nm)\n" + string.Concat(Enumerable.Range(0, 30).Select(r => $"{r + 1},{Made.Number(Sizes[r], 1)},{r + 31},{(r == 4 ? "5521" : Made.Number(Sizes[r + 30], 1))}\n"));
        var question = Assert.Single(Reading.Of("NQ-1.csv", text).Questions, q => q.IsOpen);
        Assert.Contains("Particle 35", question.Text, StringComparison.Ordinal);
        Assert.Contains("5521", question.Text, StringComparison.Ordinal);
        Assert.Equal(59, Assert.Single(Lists(Reading.Of("NQ-1.csv", text, Answers.None.With(question.Id, "leave-out"))).Lists).Particles.Length);
    }

    [Fact]
    public void Slips_OfOneParticle_AreAskedApart()
    {
        var text = "no,length (nm),width (nm)\n" + string.Concat(Sizes.Select((s, i) => $"{i + 1},{Made.Number(i == 8 ? 5521 : s, 1)},{Made.Number(i == 8 ? 2213 : s / 2.5, 1)}\n"));
        var open = Reading.Of("NQ-1.csv", text).Questions.Where(q => q.IsOpen).ToList();
        Assert.Equal(2, open.Count);
        var lists = Lists(Reading.Of("NQ-1.csv", text, open.Aggregate(Answers.None, (a, q) => a.With(q.Id, q.Choices[0])))).Lists;
        Assert.All(lists.Where(l => l.Unit.Length > 0), l => Assert.All(l.Particles, p => Assert.InRange(p.Size, 5, 200)));
    }

    [Fact]
    public void List_WithoutANumber_SaysSo()
    {
        var understood = Reading.Of("NQ-1.csv", "no;length (nm)\n" + string.Concat(Sizes.Select((s, i) => $"{i + 1};{Made.Number(s, 1, comma: true)}\n")), Answers.None.With("decimal", "point"));
        Assert.Empty(understood.Measurements());
        Assert.Contains(understood.Findings, f => f.Weight == Weight.Stop && f.Sentence.Contains("length (nm)", StringComparison.Ordinal));
    }

    [Fact]
    public void Notes_InTheMargin_AreNoGroups()
    {
        var text = "no,length (nm)\n" + string.Concat(Sizes.Select((s, i) => $"{i + 1},{Made.Number(s, 1)}{(i == 3 ? ",blurred" : i == 8 ? ",checked" : "")}\n"));
        Assert.Equal(60, Assert.Single(Lists(Reading.Of("NQ-1.csv", text)).Lists).Particles.Length);
    }

    [Theory]
    [InlineData("image width 2.1 µm\nno,diameter (µm)\n", "um", "nm")]
    [InlineData("champ de 900 nm × 700 nm\nn°,diamètre (mm)\n", "mm", "nm")]
    [InlineData("escala: barra de 200 nm\nno,diámetro (µm)\n", "um", "nm")]
    public void Sizes_LargerThanTheirImages_AreAskedAbout(string head, string unit, string fits)
    {
        var text = head + string.Concat(Sizes.Select((s, i) => $"{i + 1},{Made.Number(s, 1)}\n"));
        var understood = Reading.Of("NQ-1.csv", text);
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Equal(fits, question.Choices.First(c => c == fits));
        Assert.Empty(understood.Measurements());
        var list = Assert.Single(Lists(Reading.Of("NQ-1.csv", text, Answers.None.With(question.Id, fits))).Lists);
        Assert.Equal(unit, list.Unit);
        Assert.Equal(Sizes.Average() * (unit == "um" ? 1e-3 : 1e-6), list.Statistics.Summary.Mean, 1e-9);
    }

    [Theory]
    [InlineData("image width 2.1 µm\nno,diameter (nm)\n")]
    [InlineData("scale bar 50 nm, x 40 000\nno,diameter (nm)\n")]
    [InlineData("pixel 0.5 nm\nno,diameter (nm)\n")]
    public void Sizes_ThatFitTheirImages_AreNot(string head)
        => Assert.False(Reading.Of("NQ-1.csv", head + string.Concat(Sizes.Select((s, i) => $"{i + 1},{Made.Number(s, 1)}\n"))).NeedsDecision);

    private static string Pages(string head, string next, bool restart)
        => string.Concat(Sizes.Select((s, i) => (i == 0 ? head : i % 20 == 0 ? next : "") + $"{(restart ? i % 20 : i) + 1};{Made.Number(s, 1, comma: true)}{(head.Split('\n')[0].Contains("no;diameter (nm)", StringComparison.Ordinal) && !head.Contains("angle", StringComparison.Ordinal) ? "" : ";1.234;12,5")}\n"));

    private static ParticleStudy Lists(Understanding understood)
    {
        Assert.False(understood.NeedsDecision, understood.Said());
        return ParticleStudy.Of(Evidence.Of(Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "")));
    }
}
