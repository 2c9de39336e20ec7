using System.Xml.Linq;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Tests.Figures;

public class FigureHtmlTests
{
    public static TheoryData<string> Names => [.. Specimens.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Twin_OfEveryFigure_HasARowForEveryMarkBarAndStick(string name)
    {
        var figure = Specimens.All[name]();
        var drawn = figure.Panels.Sum(p => p.AllMarks.Count() + p.Layers.OfType<Bars>().Sum(b => b.Items.Count) + p.Layers.OfType<Sticks>().Sum(s => s.Points.Count)
            + (p.Residuals?.Marks.Sum(m => m.Points.Count) ?? 0));

        Assert.Equal(drawn, FigureTables.Of(figure).Sum(t => t.Rows.Count));
    }

    [Fact]
    public void Twin_OfAnIsotherm_KeepsLimitsBarsAndVessels()
    {
        var csv = TableCsv.Of(FigureTables.Of(Specimens.Isotherm())[0]);

        Assert.StartsWith("series,id,x_mg_per_L,limit_x_mg_per_L,status_x,x_low_mg_per_L,", csv, StringComparison.Ordinal);
        Assert.Contains("Langmuir,V-0,,0.2,below,", csv, StringComparison.Ordinal);
    }

    [Fact]
    public void Twin_OfResiduals_NamesTheModelsTheyAreLeftBy()
        => Assert.Equal(["Freundlich", "Langmuir"], FigureTables.Of(Specimens.Isotherm())[1].Rows
            .Select(row => ((TextCell)row.Cells[0]).Text.Plain).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    [Fact]
    public void Twin_WithScans_HasEveryReading() => Assert.Equal(2 * 3601, FigureTables.Of(Specimens.Infrared(), withScans: true).Sum(t => t.Rows.Count));

    [Fact]
    public void Html_OfAFigure_HasPictureCaptionNotesAndTable()
    {
        var figure = XElement.Parse(FigureHtml.Of(Specimens.Dose(), FigureFormat.FullWidth, "Figure 2.").ToXml());
        var caption = figure.Element("figcaption")!.Value;

        Assert.StartsWith("Figure 2. Removal and loading against dose. Single vessels", caption, StringComparison.Ordinal);
        Assert.Contains("Hollow grey marks: 1 struck", caption, StringComparison.Ordinal);
        Assert.Equal("group", figure.Elements().First().Attribute("role")!.Value);
        Assert.Equal(2, figure.Element("details")!.Descendants("table").Count());
    }

    [Fact]
    public void Html_OfTheSameFigureTwice_SharesNoId()
    {
        var ids = new[] { "left-", "right-" }
            .SelectMany(p => XElement.Parse(FigureHtml.Of(Specimens.Dose(), FigureFormat.OneColumn, options: SvgOptions.Screen() with { IdPrefix = p }).ToXml())
                .DescendantsAndSelf().Attributes("id").Select(a => a.Value)).ToArray();

        Assert.Equal(ids.Length, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Stylesheet_Always_ColoursEveryClassThatAFigureUses()
    {
        var rules = Palette.Stylesheet();
        var used = Specimens.All.Values.SelectMany(f => SvgFigure.Tree(f(), FigureFormat.OneColumn, SvgOptions.Screen()).ToXml().Split("class=\"").Skip(1))
            .SelectMany(t => t[..t.IndexOf('"', StringComparison.Ordinal)].Split(' '))
            .Where(c => c.StartsWith("fill-", StringComparison.Ordinal) || c.StartsWith("stroke-", StringComparison.Ordinal));

        Assert.All(used.Distinct(StringComparer.Ordinal), c => Assert.Contains($".{c} {{", rules, StringComparison.Ordinal));
        Assert.Contains("@media screen and (prefers-color-scheme: dark)", rules, StringComparison.Ordinal);
    }
}
