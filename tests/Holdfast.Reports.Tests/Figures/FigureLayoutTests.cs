using CsCheck;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Figures.Drawing;
using Holdfast.Reports.Fonts;

namespace Holdfast.Reports.Tests.Figures;

public class FigureLayoutTests
{
    public static TheoryData<string, double> Every()
    {
        var data = new TheoryData<string, double>();
        foreach (var name in Specimens.All.Keys)
        {
            data.Add(name, 85);
            data.Add(name, 174);
        }

        return data;
    }

    // Type 7 pt and 6 pt when raised or lowered: a large publisher's artwork page as read in the handbook, write-up section 3.
    [Theory]
    [MemberData(nameof(Every))]
    public void Text_InEveryFigure_IsLargeEnoughAndDrawnByItsTypeface(string name, double width)
    {
        foreach (var text in Lay(name, width).Flat.OfType<SheetText>())
        {
            Assert.All(text.Line.Runs, r =>
            {
                Assert.True(r.Drop == 0 ? r.Size >= 7 : r.Size >= 6, $"'{r.Text}' is too small");
                Assert.All(r.Text.EnumerateRunes(), c => Assert.True(LiberationSans.Face(text.Line.Bold, r.Italic).Has(c), $"no letter for U+{c.Value:X4}"));
            });
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Lines_InEveryFigure_AreHalfAPointOrMore(string name, double width)
        => Assert.All(Lay(name, width).Flat.OfType<SheetPath>().Where(p => p.Stroke is not null), p => Assert.True(p.LineWidth >= 0.5));

    [Theory]
    [MemberData(nameof(Every))]
    public void Everything_InEveryFigure_StaysOnTheSheet(string name, double width)
    {
        var sheet = Lay(name, width);

        Assert.Equal(width, sheet.WidthMm);
        foreach (var step in sheet.Flat.OfType<SheetPath>().SelectMany(p => p.Steps).Where(s => s.Verb != PathVerb.Close))
        {
            Assert.InRange(step.X, -0.01, sheet.Width + 0.01);
            Assert.InRange(step.Y, -0.01, sheet.Height + 0.01);
        }

        foreach (var box in sheet.Flat.OfType<SheetText>().Select(TextBox.Of))
        {
            Assert.InRange(box.Left, 0, sheet.Width);
            Assert.InRange(box.Right, 0, sheet.Width);
            Assert.InRange(box.Top, 0, sheet.Height);
            Assert.InRange(box.Bottom, 0, sheet.Height);
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void Texts_InEveryFigure_DoNotOverlap(string name, double width)
    {
        var texts = Lay(name, width).Flat.OfType<SheetText>().ToArray();
        for (var i = 0; i < texts.Length; i++)
        {
            for (var k = 0; k < i; k++)
                Assert.False(TextBox.Of(texts[i]).Meets(TextBox.Of(texts[k])), $"'{Plain(texts[i])}' meets '{Plain(texts[k])}'");
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Mark_OfEverySeries_MeasuresOneAndAHalfToTwoAndAHalfMillimetres(int slot)
    {
        var figure = new Figure("f", "f", "f", [new(new("x", null, "x"), new("y", null, "y"), [new Marks([new(1, 1)]) { Slot = slot }])]);
        var mark = FigureLayout.Of(figure, FigureFormat.OneColumn).Flat.OfType<SheetPath>().Single(p => p.Fill == Palette.OfSlot(slot));
        var ends = mark.Steps.Where(s => s.Verb != PathVerb.Close).ToArray();
        var wide = (ends.Max(s => s.X) - ends.Min(s => s.X)) / Sheet.PointsPerMm;
        var high = (ends.Max(s => s.Y) - ends.Min(s => s.Y)) / Sheet.PointsPerMm;

        Assert.InRange(wide, 1.5, 2.5);
        Assert.InRange(high, 1.5, 2.5);
    }

    [Fact]
    public void Apart_AnyLabels_KeepTheirOrderAndNeverOverlap()
        => Gen.Double[0, 200].Array[1, 8].Sample(wanted =>
        {
            var lengths = wanted.Select((_, i) => 9.0 + i).ToArray();
            var places = Apart.Place(wanted, lengths, 0, 200);
            var order = Enumerable.Range(0, wanted.Length).OrderBy(i => wanted[i]).ThenBy(i => i).ToArray();

            for (var i = 1; i < order.Length; i++)
                Assert.True(places[order[i]] - places[order[i - 1]] >= (lengths[order[i]] + lengths[order[i - 1]]) / 2 - 1e-9);
            Assert.True(places[order[0]] - lengths[order[0]] / 2 >= -1e-9);
            Assert.True(places[order[^1]] + lengths[order[^1]] / 2 <= 200 + 1e-9);
        });

    [Fact]
    public void Apart_LabelsFarApart_StayWhereTheyWant()
        => Assert.Equal([20.0, 50.0, 90.0], Apart.Place([20, 50, 90], [9, 9, 9], 0, 100));

    [Fact]
    public void Labels_MoreThanThePlotIsHigh_MakeItHigher()
    {
        var lines = Enumerable.Range(1, 20).Select(i => new ReferenceLine(AxisName.Y, i, "a limit with a name")).ToArray();
        var sheet = FigureLayout.Of(new("f", "f", "f", [new(new("x", null, "x"), new("y", null, "y"), lines)]), FigureFormat.OneColumn);
        var boxes = sheet.Flat.OfType<SheetText>().Select(TextBox.Of).ToArray();

        Assert.All(boxes, b => Assert.InRange(b.Bottom, 0, sheet.Height));
        Assert.True(sheet.HeightMm > 100);
    }

    [Fact]
    public void Wrapped_LongWordWithHyphens_BreaksBehindThem()
        => Assert.Equal(
            ["Pseudo-second-", "order model"],
            SetLine.Wrapped("Pseudo-second-order model", 7.5, 56).Select(l => string.Concat(l.Runs.Select(r => r.Text))));

    [Fact]
    public void Slot_Fifth_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => new Marks([]) { Slot = 4 });

    [Fact]
    public void Bars_OnAnAxisThatDoesNotStartAtZero_AreRefused()
    {
        var panel = new Panel(new("x", null, "x"), new("y", null, "y") { Min = 3 }, [new Bars([new(0, 1, 5)])]);

        Assert.Throws<ArgumentException>(() => FigureLayout.Of(new("f", "f", "f", [panel]), FigureFormat.OneColumn));
    }

    [Fact]
    public void Mark_ThatIsNotANumber_IsRefused()
    {
        var panel = new Panel(new("x", null, "x"), new("y", null, "y"), [new Marks([new(1, double.NaN)])]);

        Assert.Throws<ArgumentException>(() => FigureLayout.Of(new("f", "f", "f", [panel]), FigureFormat.OneColumn));
    }

    [Fact]
    public void Bars_Always_StandOnZero() => Assert.Equal(0, AxisRange.OfY(Specimens.Sizes().Panels[0]).Low);

    [Fact]
    public void Notes_OfAPictureWithSigns_ExplainEachSign()
    {
        var notes = Specimens.Isotherm().AllNotes.Concat(Specimens.Dose().AllNotes).Select(n => n.Plain).ToArray();

        Assert.Contains(notes, n => n.StartsWith("Arrows:", StringComparison.Ordinal));
        Assert.Contains(notes, n => n.StartsWith("Short dashes:", StringComparison.Ordinal));
        Assert.Contains("Hollow grey marks: 1 struck, shown but not used.", notes);
    }

    [Fact]
    public void Marks_LeftOut_AreHollowInTheirColourAndCounted()
    {
        var figure = Specimens.Quenching();
        var hollow = FigureLayout.Of(figure, FigureFormat.OneColumn).Flat.OfType<SheetPath>().Count(p => p is { Fill: Tone.Paper, Stroke: Tone.Series1 });

        Assert.Equal(2, hollow);
        Assert.Contains(figure.AllNotes, n => n.Plain == "Hollow marks in colour: 2 left out, shown but not used.");
        Assert.Contains(FigureTables.Of(figure)[0].Columns, c => c.Name == "remark");
    }

    [Fact]
    public void Notes_OfALogAxisWithABlank_SayWhatItCannotShow()
    {
        var panel = new Panel(new("t", "min", "time") { Scale = AxisScale.Logarithmic }, new("q", "mg/g", "loading"), [new Marks([new(0, 0), new(1, 3), new(10, 5)])]);

        Assert.Contains(new Figure("f", "f", "f", [panel]).AllNotes, n => n.Plain.StartsWith("1 at zero or below", StringComparison.Ordinal));
    }

    private static Sheet Lay(string name, double width) => FigureLayout.Of(Specimens.All[name](), new FigureFormat(width));

    private static string Plain(SheetText text) => string.Concat(text.Line.Runs.Select(r => r.Text));
}
