using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Uptake against the concentration left, with error bars both ways and the rival isotherms.</summary>
internal sealed class IsothermFigure : IStudyFigure
{
    public int Place => 30;

    public IEnumerable<Figure> Of(Dossier dossier) => dossier.Evidence.Isotherms.Where(FittedFigure.HasPoints).Select(i => One(i, dossier));

    private static Figure One(FittedSeries fitted, Dossier dossier)
    {
        var x = new Axis("C_e", "mg L^-1", "concentration left in solution") { Min = 0 };
        var y = new Axis("q_e", "mg g^-1", "uptake") { Min = 0 };
        return FittedFigure.Of(
            fitted, dossier, "isotherm", $"Isotherm, series {fitted.Series.Name}", x, y,
            v => v.End?.Value?.Value, "Langmuir", "Freundlich");
    }
}
