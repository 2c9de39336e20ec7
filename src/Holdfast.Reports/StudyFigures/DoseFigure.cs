using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Removal and uptake against dose, in two panels: one axis each.</summary>
internal sealed class DoseFigure : IStudyFigure
{
    public int Place => 40;

    public IEnumerable<Figure> Of(Dossier dossier)
        => dossier.Evidence.Series.Where(s => s.Varied == BatchProperties.Dose).Select(s => One(s, dossier));

    private static Figure One(Series series, Dossier dossier)
    {
        var x = new Axis("D", "g L^-1", "dose") { Min = 0 };
        return new Figure(
            StudyFigure.Id("dose", series.Name),
            $"Removal and uptake against dose, series {series.Name}",
            "Removal rises and uptake falls as the dose rises, as it must for any rising isotherm.",
            [
                new Panel(x, new Axis("R", "%", "removal"), [new Marks(StudyFigure.Marks(series.Vessels, series.Struck, v => v.Dose, v => v.Removal))]),
                new Panel(x, new Axis("q", "mg g^-1", "uptake"), [new Marks(StudyFigure.Marks(series.Vessels, series.Struck, v => v.Dose, v => v.Uptake))]),
            ])
        {
            Notes = ["Marks: single vessels; bars: 95 % interval of each vessel from the propagated uncertainty."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
