using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Final less start pH against start pH of powder in salt, one curve of marks for each salt level.</summary>
internal sealed class DriftFigure : IStudyFigure
{
    public int Place => 55;

    public IEnumerable<Figure> Of(Dossier dossier)
        => DriftStudy.Of(dossier.Evidence).Tests.GroupBy(t => t.Series, StringComparer.Ordinal).Select(g => One(g.Key, [.. g.Take(Layer.Slots)], dossier));

    private static Figure One(string series, DriftTest[] tests, Dossier dossier) => new(
        StudyFigure.Id("drift", series),
        $"pH drift, series {series}",
        $"Final less start pH against start pH at {InWords.Count(tests.Length, "salt level")}; where it falls through 0 the surface is taken as uncharged.",
        [
            new Panel(new Axis("pH_0", null, "start pH"), new Axis("ΔpH", null, "final less start pH"),
            [
                new ReferenceLine(AxisName.Y, 0, "no drift"),
                .. tests.Select((t, i) => new Marks([.. t.Points.Select(p => new Mark(p.Start, p.End - p.Start) { YBar = ErrorBar.Around(p.End - p.Start, 2 * Math.Sqrt(2) * t.U) })])
                {
                    Slot = i,
                    Label = t.Salt is { } salt ? RichText.Literal(FormattableString.Invariant($"{salt:G3} mol/L")) : null,
                }),
            ]),
        ])
    {
        Notes = ["Marks: means at one start pH; bars: twice the standard uncertainty of a difference of two pH readings."],
        MadeFrom = StudyFigure.MadeFrom(dossier),
    };
}
