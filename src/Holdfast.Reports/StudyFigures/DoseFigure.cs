using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyFigures;

/// <summary>Removal and uptake against dose, in two panels with one axis each, beside the curve that the isotherm predicts.</summary>
internal sealed class DoseFigure : IStudyFigure
{
    private const int Steps = 60;

    public int Place => 40;

    public IEnumerable<Figure> Of(Dossier dossier)
        => dossier.Evidence.Series.Where(s => s.Varied == BatchProperties.Dose).Select(s => One(s, dossier));

    private static Figure One(Series series, Dossier dossier)
    {
        var x = new Axis("D", "g L^-1", "dose") { Min = 0, Chosen = true };
        var prediction = DosePrediction.Of(dossier.Evidence, series);
        var (removal, uptake) = prediction is null ? ([], []) : Predicted(prediction, series);
        return new Figure(
            StudyFigure.Id("dose", series.Name),
            $"Removal and uptake against dose, series {series.Name}",
            Alt(series, prediction),
            [
                new Panel(x, new Axis("R", "%", "removal"), [.. removal, new Marks(StudyFigure.Marks(series.Vessels, series.Struck, v => v.Dose, v => v.Removal))]),
                new Panel(x, new Axis("q", "mg g^-1", "uptake"), [.. uptake, new Marks(StudyFigure.Marks(series.Vessels, series.Struck, v => v.Dose, v => v.Uptake))]),
            ])
        {
            Caption = $"Removal and uptake against dose, series {series.Name}: {Conditions.Extent(series)}{(Conditions.Held(series) is { Length: > 0 } held ? "; " + held : "")}.",
            Notes =
            [
                "Marks: single vessels; bars: 95 % interval of each vessel from the propagated uncertainty.",
                .. prediction is null ? Array.Empty<RichText>() :
                    [$"Line: predicted from the {prediction.Curve} isotherm of {prediction.From}, nothing fitted to these vessels; band: 95 % confidence from its parameters and the start concentration."],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    // A band and a line for each panel, over the doses that were tried.
    private static (Layer[] Removal, Layer[] Uptake) Predicted(DosePrediction prediction, Series series)
    {
        var doses = series.Vessels.Select(v => v.Dose?.Value).OfType<double>().ToArray();
        var (low, high) = (doses.Min(), doses.Max());
        if (!(high > low))
            return ([], []);
        var points = Enumerable.Range(0, Steps + 1).Select(i => low + (high - low) * i / Steps).Select(d => (Dose: d, At: prediction.At(d))).ToArray();
        return (Layers(points.Select(p => (p.Dose, p.At.Removal)), low, high), Layers(points.Select(p => (p.Dose, p.At.Uptake)), low, high));
    }

    private static Layer[] Layers(IEnumerable<(double Dose, Measured Value)> points, double low, double high)
    {
        var all = points.Select(p => (p.Dose, p.Value.Value, Half: p.Value.U > 0 ? ExpandedUncertainty.Of(p.Value).U : 0)).ToArray();
        return
        [
            new Band(all.Select(p => (p.Dose, p.Value - p.Half, p.Value + p.Half)).ToArray()) { Slot = 1 },
            new ModelCurve(all.Select(p => (p.Dose, p.Value)).ToArray(), low, high) { Slot = 1, Label = "predicted" },
        ];
    }

    private static string Alt(Series series, DosePrediction? prediction)
    {
        var levels = series.Levels.Where(l => !l.Removals.IsEmpty).ToArray();
        if (levels.Length == 0)
            return $"No vessel of series {series.Name} has a removal.";
        var (first, last) = (levels[0], levels[^1]);
        var text = $"Removal changes from {InWords.Plain(Math.Round(first.Removals.Average(), 1))} % at {InWords.Plain(first.X)} g/L to {InWords.Plain(Math.Round(last.Removals.Average(), 1))} % at {InWords.Plain(last.X)} g/L";
        if (!first.Uptakes.IsEmpty && !last.Uptakes.IsEmpty)
            text += $", uptake from {InWords.Plain(Math.Round(first.Uptakes.Average(), 2))} to {InWords.Plain(Math.Round(last.Uptakes.Average(), 2))} mg/g";
        return text + (prediction is null ? "." : $"; the curve predicted from the isotherm of {prediction.From} is drawn beside the vessels.");
    }
}
