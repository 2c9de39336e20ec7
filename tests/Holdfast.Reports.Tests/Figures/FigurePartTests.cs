using Holdfast.Reports.Figures;
using Holdfast.Reports.Figures.Drawing;

namespace Holdfast.Reports.Tests.Figures;

/// <summary>Closer looks: what is within a box is what the axes then show. Expected values follow from the straight or logarithmic axis itself.</summary>
public class FigurePartTests
{
    private static readonly FigureFormat Format = FigureFormat.FullWidth;

    public static TheoryData<string> Names => [.. Specimens.All.Keys];

    [Fact]
    public void Read_OfWhatIsWritten_IsTheSamePart()
    {
        var figure = Specimens.Dose();
        var part = new FigurePart(1, new(0.1, 1.0 / 3), new(-1e-3, 41.25));
        Assert.Equal(part, FigurePart.Read(part.ToString(), figure));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("0:1..2")]
    [InlineData("2:0..1:0..1")]
    [InlineData("-1:0..1:0..1")]
    [InlineData("0:1..NaN:0..1")]
    [InlineData("0:1..∞:0..1")]
    [InlineData("0:2..1:0..1")]
    [InlineData("0:1..1:0..1")]
    [InlineData("0:1..1.0000001:0..1")]
    [InlineData("0:a..b:0..1")]
    public void Read_OfWhatNoAxisCanShow_IsNone(string? text) => Assert.Null(FigurePart.Read(text, Specimens.Dose()));

    [Theory]
    [MemberData(nameof(Names))]
    public void Part_OfEveryPanelEverCloser_IsLaidOutWithWhatLiesInIt(string name)
    {
        var figure = Specimens.All[name]();
        for (var panel = 0; panel < figure.Panels.Count; panel++)
        {
            var part = FigurePart.Whole(figure, panel);
            Assert.Single(part.Of(figure).Panels);
            Assert.Equal(figure.Notes, part.Of(figure).Notes);
            for (var step = 0; step < 5; step++)
            {
                part = part.Closer(figure);
                var shown = part.Of(figure);
                Assert.NotEmpty(SvgFigure.File(shown, Format));
                var (x, y) = (AxisRange.OfX(shown.Panels[0]), AxisRange.OfY(shown.Panels[0]));
                Assert.Equal(part.X, x);
                Assert.Equal(part.Y, y);
                Assert.Equal(figure.Notes.Count + 1, shown.Notes.Count);
                var ids = shown.Panels[0].AllMarks.Where(m => m.Id is not null && m.X > x.Low && m.X < x.High && m.Y > y.Low && m.Y < y.High).Select(m => m.Id!);
                Assert.All(ids, id => Assert.NotEmpty(FigureLayout.MarksOf(shown, Format, id)));
            }

            while (part.Wider(figure) != part)
                part = part.Wider(figure);
            Assert.Equal(FigurePart.Whole(figure, panel).ToString(), part.ToString());
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Within_TheMiddleOfAPlot_IsTheMiddleOfItsAxes(string name)
    {
        var figure = Specimens.All[name]();
        var plots = FigureLayout.Of(figure, Format).Plots;
        for (var i = 0; i < plots.Count; i++)
        {
            var (box, panel) = (plots[i].Box, figure.Panels[i]);
            var (width, height) = (box.Right - box.Left, box.Bottom - box.Top);
            var part = FigurePart.Within(figure, Format, (box.Left + 0.25 * width, box.Top + 0.25 * height), (box.Right - 0.25 * width, box.Bottom - 0.25 * height))!;
            var whole = FigurePart.Whole(figure, i);
            Assert.Equal(i, part.Panel);
            if (panel.X.Scale == AxisScale.Named)
                Assert.Equal(whole.X, part.X);
            else
                Halves(panel.X.Scale, whole.X, part.X);
            if (panel.Layers.Any(l => l is Bars or Sticks))
                Assert.Equal(0, part.Y.Low);
            else
                Halves(panel.Y.Scale, whole.Y, part.Y);
        }

        // The middle half of a straight axis is half as long about the same middle; of a logarithmic one, half the decades.
        static void Halves(AxisScale scale, AxisRange whole, AxisRange part)
        {
            Func<double, double> along = scale == AxisScale.Logarithmic ? Math.Log10 : v => v;
            Assert.Equal((along(whole.High) - along(whole.Low)) / 2, along(part.High) - along(part.Low), 1e-9 * Math.Abs(along(whole.High) - along(whole.Low)));
            Assert.Equal((along(whole.High) + along(whole.Low)) / 2, (along(part.High) + along(part.Low)) / 2, 1e-9 * Math.Abs(along(whole.High) - along(whole.Low)));
        }
    }

    [Fact]
    public void Within_ABoxBesideTheAxesOrASlipOfTheHand_IsNone()
    {
        var figure = Specimens.Kinetics();
        var box = FigureLayout.Of(figure, Format).Plots[0].Box;
        Assert.Null(FigurePart.Within(figure, Format, (box.Left - 5, box.Top - 5), (box.Right, box.Bottom)));
        Assert.Null(FigurePart.Within(figure, Format, (box.Left + 5, box.Top + 5), (box.Left + 7, box.Bottom)));
    }

    [Fact]
    public void Within_ABoxAboutOneMark_ShowsThatMark()
    {
        var figure = Specimens.Dose();
        var sheet = FigureLayout.Of(figure, Format);
        var mark = sheet.Items.OfType<SheetGroup>().SelectMany(g => g.Items.OfType<SheetGroup>()).First(g => g.Id is not null);
        var part = FigurePart.Within(figure, Format, (mark.Centre.X - 8, mark.Centre.Y - 8), (mark.Centre.X + 8, mark.Centre.Y + 8))!;
        Assert.NotEmpty(FigureLayout.MarksOf(part.Of(figure), Format, mark.Id!));
    }

    [Fact]
    public void Of_ACurveWithAFormula_IsDrawnAnewSoThatItStaysSmooth()
    {
        var figure = new Figure("curve", "A curve", "One curve.", [new Panel(new Axis("x", null, "x"), new Axis("y", null, "y"), [ModelCurve.Of(Math.Exp, 0, 10)])]);
        var part = FigurePart.Read("0:4..4.5:50..90", figure)!;
        var curve = part.Of(figure).Panels[0].Layers.OfType<ModelCurve>().Single();
        Assert.InRange(curve.Points.Count, 200, 210);
        Assert.All(curve.Points, p => Assert.Equal(Math.Exp(p.X), p.Y, 1e-9));
        Assert.Equal((4, 4.5), (curve.Points[0].X, curve.Points[^1].X));
    }

    [Fact]
    public void Of_APart_SaysSoWithItsEndsAndUnits()
    {
        var figure = Specimens.Dose();
        var part = FigurePart.Read("0:0.2..0.6:40..80", figure)!;
        Assert.Equal("A part of the figure: dose 0.2 to 0.6 g L−1; removal 40 to 80 %.", part.Of(figure).Notes[^1].Plain.Replace('\u00A0', ' '));
        Assert.Contains("outside the range of the axes", string.Concat(part.Of(figure).AllNotes.Select(n => n.Plain)), StringComparison.Ordinal);
    }
}
