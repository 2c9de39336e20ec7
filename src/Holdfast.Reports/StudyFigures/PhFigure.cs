using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Removal against start pH with the controls that held no sorbent, and the end pH beside it.</summary>
internal sealed class PhFigure : IStudyFigure
{
    public int Place => 50;

    public IEnumerable<Figure> Of(Dossier dossier)
        => dossier.Evidence.Series.Where(s => s.Varied == BatchProperties.StartPh).Select(s => One(s, dossier));

    private static Figure One(Series series, Dossier dossier)
    {
        var x = new Axis("pH_0", null, "start pH");
        var sorbent = StudyFigure.Marks(series.Vessels, series.Struck, v => v.Sample.Number(BatchProperties.StartPh), v => v.Removal);
        var bare = StudyFigure.Marks(series.Controls, [], v => v.Sample.Number(BatchProperties.StartPh), v => v.Removal);
        var removal = new Panel(x, new Axis("R", "%", "removal"),
        [
            new Marks(sorbent) { Slot = 0, Label = bare.Count > 0 ? RichText.Literal("with sorbent") : null },
            .. bare.Count > 0 ? new Layer[] { new Marks(bare) { Slot = 1, Label = "without" } } : [],
        ]);
        var ends = StudyFigure.Marks(
            series.Vessels, series.Struck, v => v.Sample.Number(BatchProperties.StartPh), v => v.Sample.Number(BatchProperties.EndPh), bars: false);
        IReadOnlyList<Panel> panels = ends.Count == 0
            ? [removal]
            : [removal, new Panel(x, new Axis("pH_e", null, "end pH"), [new SlopingLine(0, 1, "no change"), new Marks(ends)])];
        return new Figure(
            StudyFigure.Id("ph", series.Name),
            $"Removal against pH, series {series.Name}",
            "Removal against start pH with and without sorbent; where the controls lose metal too, the loss is not the sorbent's.",
            panels)
        {
            Caption = $"Removal against pH, series {series.Name}: {Conditions.Extent(series)}{(Conditions.Held(series) is { Length: > 0 } held ? "; " + held : "")}.",
            Notes =
            [
                "Marks: single vessels; bars: 95 % interval of each vessel from the propagated uncertainty.",
                .. bare.Count > 0 ? new RichText[] { "Squares: controls without sorbent; what they lose is not the sorbent’s." } : [],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
