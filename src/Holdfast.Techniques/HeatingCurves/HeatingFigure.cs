using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.HeatingCurves;

/// <summary>Mass against temperature of each powder, with the ends of its steps.</summary>
internal sealed class HeatingFigure : IStudyFigure
{
    /// <inheritdoc/>
    public int Place => 7;

    /// <inheritdoc/>
    public IEnumerable<Figure> Of(Dossier dossier) => HeatingStudy.Of(dossier.Evidence).Curves.Select(c => One(c, dossier));

    private static Figure One(PowderHeated heated, Dossier dossier)
    {
        var curve = heated.Curve;
        return new(
            StudyFigure.Id("heating", heated.Powder + "-" + heated.Measurement.Id), $"Heating curve of {heated.Powder} ({heated.Measurement.Id})",
            $"{InWords.Count(heated.Steps.Length, "step")} between {InWords.Plain(curve.Temperatures[0])} and {InWords.Plain(curve.Temperatures[^1], "°C")}.",
            [
                new Panel(new Axis("T", "°C", "temperature"), new Axis("m", "%", "mass, per cent of the first"),
                [
                    .. heated.Steps.Select(s => new Zone(AxisName.X, s.From, s.To, "")),
                    new Trace([.. curve.Temperatures.ToArray().Zip(curve.Percent.ToArray())]),
                ]),
            ])
        {
            Notes = ["As measured, nothing smoothed; grey: where mass is lost. No cause follows from a step alone."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
            RestsOn = [heated.Measurement.Id],
        };
    }
}
