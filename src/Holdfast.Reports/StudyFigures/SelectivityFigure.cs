using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Selectivity coefficients over each rival on a logarithmic axis, with the line at which neither metal is preferred.</summary>
internal sealed class SelectivityFigure : IStudyFigure
{
    public int Place => 70;

    public IEnumerable<Figure> Of(Dossier dossier)
    {
        var rivals = MixtureStudy.Of(dossier.Evidence).Rivals;
        if (rivals.IsEmpty)
            yield break;
        var metal = dossier.Evidence.Study.Analyte ?? "the metal";
        var means = rivals.Select((r, i) => (Rival: r, Place: i + 1)).Where(r => r.Rival.Preference is not null).ToArray();
        yield return new Figure(
            "selectivity",
            $"Preference for {metal} over each rival",
            $"Selectivity coefficients on a logarithmic axis: {string.Join(", ", means.Select(m => FormattableString.Invariant($"{m.Rival.Metal} {m.Rival.Preference!.Value:0.##}")))}; above 1 {metal} is preferred.",
            [
                new Panel(
                    Axis.OfPlaces("rival", rivals.Select(r => RichText.Literal(r.Metal))),
                    new Axis("α", null, "selectivity coefficient") { Scale = AxisScale.Logarithmic },
                    [
                        new ReferenceLine(AxisName.Y, 1, "no preference"),
                        new Marks([.. rivals.SelectMany((r, i) => r.Vessels.Select(v => new Mark(i + 1.14, v.Preference.Value) { Id = v.Sample.Code }))]) { Slot = 1 },
                        new Marks([.. means.Select(m => new Mark(m.Place, m.Rival.Preference!.Value)
                        {
                            YBar = m.Rival.Preference.Interval() is var i && double.IsFinite(i.High) ? new ErrorBar(i.Low, i.High) : null,
                        })]),
                    ]),
            ])
        {
            Notes = [$"Means are geometric, bars their 95 % interval by t on ln α; beside them single vessels. Both metals in one vessel, compared by amount."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
