using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Ion released against metal sorbed, by amount, with the line through both errors and the line of one for one.</summary>
internal sealed class ExchangeFigure : IStudyFigure
{
    public int Place => 75;

    public IEnumerable<Figure> Of(Dossier dossier)
        => ExchangeStudy.Of(dossier.Evidence).Ions.Where(i => i.Loadings > 1).Select(i => One(i, dossier));

    private static Figure One(ExchangedIon ion, Dossier dossier)
    {
        var marks = ion.Points.Select(p => new Mark(p.Sorbed.Value, p.Released.Value) { Id = p.Vessel.Code, XBar = StudyFigure.Bar(p.Sorbed), YBar = StudyFigure.Bar(p.Released) }).ToArray();
        double low = marks.Min(m => m.X), high = marks.Max(m => m.X);
        var layers = new List<Layer> { new SlopingLine(0, 1, "one for one") };
        if (ion.Ratio is { } ratio && high > low)
            layers.Add(ModelCurve.Of(x => ratio.Intercept + ratio.Slope.Value * x, low, high) with { Slot = 1, Label = "line with errors in both" });
        layers.Add(new Marks(marks));
        var metal = dossier.Evidence.Study.Analyte ?? "metal";
        return new Figure(
            StudyFigure.Id("exchange", ion.Ion),
            $"{ion.Ion} released against {metal} sorbed",
            ion.Ratio is { } found
                ? FormattableString.Invariant($"{ion.Ion} released against {metal} sorbed in {marks.Length} vessels; the slope is {found.Slope.Value:0.00}.")
                : $"{ion.Ion} released against {metal} sorbed; no line settled.",
            [new Panel(new Axis("q", "mmol g^-1", "sorbed"), new Axis("released", "mmol g^-1", "released"), layers)])
        {
            Notes =
            [
                "Marks: single vessels; bars: 95 % interval both ways.",
                ion.Control.IsEmpty ? "No sorbent-only control was subtracted: dissolution is in the slope."
                    : RichText.Literal($"Less the mean of {InWords.Count(ion.Control.Length, "sorbent-only sample")} at the {(ion.ControlAtEndPh ? "end" : "start")} pH of the vessels."),
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
