using CsCheck;
using Holdfast.Amounts;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Figures.Drawing;

namespace Holdfast.Reports.Tests.Figures;

/// <summary>Whatever the numbers are, a figure comes out whole: on its sheet, with numbers everywhere, in finite time.</summary>
public class AnyFigureTests
{
    private static readonly Gen<double> Values =
        from size in Gen.Double[-1, 1]
        from power in Gen.Int[-12, 12]
        from whole in Gen.Int[0, 3]
        select whole == 0 ? Math.Round(size * 10) : size * Math.Pow(10, power);

    private static readonly Gen<Mark> AnyMark =
        from x in Values
        from y in Values
        from half in Gen.Double[0, 2]
        from state in Gen.Enum<MarkState>()
        select new Mark(x, y) { State = state, Id = "V-1", YBar = ErrorBar.Around(y, half * Math.Abs(y)), XBar = ErrorBar.Around(x, half * Math.Abs(x)) };

    private static readonly Gen<Layer> AnyLayer = Gen.OneOf<Layer>(
        from marks in AnyMark.Array[0, 6]
        from slot in Gen.Int[0, 3]
        select new Marks(marks) { Slot = slot, Label = "a series with a longer name" },
        from a in Values
        from b in Values
        from slot in Gen.Int[0, 3]
        select ModelCurve.Of(x => a + b * x, 0, 10, 1, 8) with { Slot = slot, Label = RichText.Parse("*q*_e model") },
        from at in Gen.Enum<AxisName>()
        from value in Values
        select new ReferenceLine(at, value, "limit"),
        from along in Gen.Enum<AxisName>()
        from start in Values
        from length in Gen.Double[0.001, 5]
        select new Zone(along, start, start + length * Math.Max(1e-9, Math.Abs(start)), "zone"),
        from a in Values
        from b in Values
        select new SlopingLine(a, b, "line"),
        from x in Values
        from y in Values
        select new Annotation(x, y, "text"));

    private static readonly Gen<Figure> AnyFigure =
        from layers in AnyLayer.Array[0, 6]
        from scales in Gen.Int[0, 3]
        from reversed in Gen.Bool
        from strip in AnyMark.Array[0, 4]
        from hasStrip in Gen.Bool
        select new Figure("any", "any", "any",
        [
            new Panel(
                new("x", "mg L^-1", "x") { Scale = scales % 2 == 0 ? AxisScale.Linear : AxisScale.Logarithmic, Reversed = reversed },
                new("y", "mg g^-1", "y") { Scale = scales / 2 == 0 ? AxisScale.Linear : AxisScale.Logarithmic },
                layers)
            {
                Residuals = hasStrip ? new(new("Δq", "mg g^-1", "residual"), [new Marks(strip)]) : null,
            },
        ]);

    [Fact]
    public void Layout_OfAnyNumbers_StaysOnItsSheet()
        => AnyFigure.Select(Gen.Bool).Sample((figure, wide) =>
        {
            var sheet = FigureLayout.Of(figure, (wide ? FigureFormat.FullWidth : FigureFormat.OneColumn) with { DecimalMark = DecimalMark.Comma });

            Assert.InRange(sheet.HeightMm, 30, 240);
            foreach (var step in sheet.Flat.OfType<SheetPath>().SelectMany(p => p.Steps).Where(s => s.Verb != PathVerb.Close))
            {
                Assert.InRange(step.X, -12.0, sheet.Width + 12);
                Assert.InRange(step.Y, -12.0, sheet.Height + 12);
            }

            Assert.All(sheet.Flat.OfType<SheetText>(), t => Assert.True(double.IsFinite(t.X) && double.IsFinite(t.Y)));
        });

    [Fact]
    public void Twin_OfAnyNumbers_IsWritten()
        => AnyFigure.Sample(figure => Assert.DoesNotContain("NaN", FigureHtml.Of(figure, FigureFormat.OneColumn).ToXml(), StringComparison.Ordinal), iter: 50);
}
