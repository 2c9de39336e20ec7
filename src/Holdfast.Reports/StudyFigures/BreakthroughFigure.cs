using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Outlet over inlet against time on stream, with the one logistic and the break.</summary>
internal sealed class BreakthroughFigure : IStudyFigure
{
    private const int Steps = 80;

    public int Place => 80;

    public IEnumerable<Figure> Of(Dossier dossier) => ColumnStudy.Of(dossier.Evidence).Runs.Select(r => One(r, dossier));

    private static Figure One(BedRun run, Dossier dossier)
    {
        var marks = run.Points.Select(p => new Mark(p.Time, p.Outlet.Value / run.Inlet) { Id = p.Sample.Code, YBar = StudyFigure.Bar(p.Outlet / run.Inlet) }).ToArray();
        var layers = new List<Layer> { new ReferenceLine(AxisName.Y, ColumnStudy.BreakShare, "break") };
        if (run.Curve.IsFit)
        {
            layers.Add(ModelCurve.Of(run.Curve.ValueAt, marks.Min(m => m.X), marks.Max(m => m.X)) with { Slot = 1, Label = "logistic" });
            if (run.Curve.Covariance is not null)
                layers.Insert(0, Within(run, marks.Min(m => m.X), marks.Max(m => m.X)));
        }

        layers.Add(new Marks(marks));
        return new Figure(
            StudyFigure.Id("breakthrough", run.Name),
            $"Breakthrough, run {run.Name}",
            run.BreakTime is { } end
                ? FormattableString.Invariant($"Outlet over inlet against time: 5 % is reached after {end.Value:0.#} min, {run.LastRatio:0.00} at the end.")
                : FormattableString.Invariant($"Outlet over inlet against time: 5 % is not reached, {run.LastRatio:0.00} at the end."),
            [new Panel(new Axis("t", "min", "time on stream") { Min = 0 }, new Axis("*C*/*C*_0", null, "outlet over inlet") { Min = Array.TrueForAll(marks, m => m.Y >= 0) ? 0 : null }, layers)])
        {
            Notes =
            [
                "Marks: single portions. Line and band: the logistic that goes by the names Thomas, Yoon-Nelson and Bohart-Adams, one curve in three sets of letters, with 95 % confidence.",
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    private static Band Within(BedRun run, double from, double to)
    {
        var places = Enumerable.Range(0, Steps + 1).Select(i => from + (to - from) * i / Steps);
        var edges = places.Select(t => (Time: t, At: run.Curve.ConfidenceBand(t)!.Value)).Select(b => (b.Time, b.At.Lower, b.At.Upper));
        return new(edges.ToArray()) { Slot = 1 };
    }
}
