using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Uptake against contact time with the curves that matter: the best one, what it is not told apart from, and first and second order.</summary>
internal sealed class KineticsFigure : IStudyFigure
{
    public int Place => 20;

    public IEnumerable<Figure> Of(Dossier dossier) => dossier.Evidence.Kinetics.Where(FittedFigure.HasPoints).Select(k => One(k, dossier));

    private static Figure One(FittedSeries fitted, Dossier dossier)
    {
        var x = new Axis("t", "min", "contact time") { Min = 0, Chosen = true };
        var y = new Axis("q_t", "mg g^-1", "uptake at time t") { Min = 0 };
        return FittedFigure.Of(
            fitted, dossier, "kinetics", $"Uptake against contact time, series {fitted.Series.Name}", x, y,
            v => v.Sample.Number(BatchProperties.ContactTime), "Pseudo-first-order", "Pseudo-second-order");
    }
}
