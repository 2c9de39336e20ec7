using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Statistics;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The standards of a run with the curve in use, its 95 % band and the residuals.</summary>
internal sealed class CalibrationFigure : IStudyFigure
{
    /// <summary>Begins the names of these figures.</summary>
    internal const string Kind = "calibration";

    public int Place => 10;

    public IEnumerable<Figure> Of(Dossier dossier)
        => dossier.Evidence.Runs.Where(r => r.Curve is not null && r.BorrowedFrom is null).Select(r => One(r, dossier));

    private static Figure One(CalibratedRun run, Dossier dossier)
    {
        var curve = run.Curve!;
        var used = curve.Standards.Select(s => new Mark(s.Level, s.Signal) { Id = s.Id }).ToArray();
        var beyond = run.Standards.Where(s => s.Known > curve.Top).Select(s => new Mark(s.Known, s.Signal)).ToArray();
        var x = new Axis("c", "mg L^-1", "concentration of the standard") { Min = 0, Chosen = true };
        var y = new Axis("A", null, "absorbance");
        var highest = Math.Max(curve.Top, run.Standards.Max(s => s.Known));
        var t = StudentDistribution.TwoSided(0.95, curve.Fit.DegreesOfFreedom);
        var band = Enumerable.Range(0, 101).Select(i => curve.Top * i / 100).Select(c => (c, curve.Fit.At(c) - t * curve.Fit.UncertaintyAt(c), curve.Fit.At(c) + t * curve.Fit.UncertaintyAt(c))).ToArray();
        var panel = new Panel(x, y,
        [
            new Band(band),
            ModelCurve.Of(curve.Fit.At, 0, highest, 0, curve.Top),
            .. beyond.Length > 0 ? new Layer[] { new Marks(beyond) { Slot = 1, Label = "above the range in use" } } : [],
            new Marks(used),
        ])
        {
            Residuals = new Residuals(
                new Axis("ΔA", null, "reading less curve"),
                [new Marks([.. curve.Standards.Select(s => new Mark(s.Level, s.Signal - curve.Fit.At(s.Level)) { Id = s.Id })])]),
        };
        var equation = string.Create(CultureInfo.InvariantCulture, $"{curve.Standards.Count} readings of {curve.Standards.Select(s => s.Level).Distinct().Count()} standards up to {curve.Top:0.###} mg/L");
        return new Figure(
            StudyFigure.Id(Kind, run.Run.Id),
            $"Calibration of {run.Run.Id}",
            $"Absorbance against concentration: {equation}, with the line in use, its 95 % band and the residuals below.",
            [panel])
        {
            Notes =
            [
                $"Band: 95 % confidence of the line. {equation}.",
                .. beyond.Length > 0 ? new RichText[] { "Standards above the range in use are shown and not used." } : [],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
