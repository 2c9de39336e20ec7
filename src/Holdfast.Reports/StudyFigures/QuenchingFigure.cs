using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The signal against the quencher, with the law that loses least, Stern and Volmer's, and the residuals in percent of the fitted signal.</summary>
internal sealed class QuenchingFigure : IStudyFigure
{
    public int Place => 100;

    public IEnumerable<Figure> Of(Dossier dossier)
        => Sensing.Of(dossier.Evidence).Series.Where(s => s.Levels.Length > 1).Select(s => One(s, dossier));

    private static Figure One(SensorSeries series, Dossier dossier)
    {
        var x = new Axis("Q", "µmol L^-1", "quencher added") { Min = 0, Chosen = true };
        var y = new Axis("F", null, "signal") { Min = 0 };
        var shown = Shown(series);
        var highest = series.Levels[^1];
        var curves = shown.Select((f, i) => (Layer)(ModelCurve.Of(f.ValueAt, 0, highest) with { Slot = i + 1, Label = f.Card.Name }));
        var residuals = shown.Take(1).Select(f => new Marks([.. f.Points.X.Select((q, i) => new Mark(q, 100 * f.Residuals[i] / f.Fitted[i]) { Id = f.Points.Ids[i] })]) { Slot = 1 }).ToArray();
        return new Figure(
            StudyFigure.Id("quenching", series.Name), $"Signal against quencher, series {series.Name}", Alt(series, shown),
            [
                new Panel(x, y,
                [
                    .. curves,
                    new Marks([.. series.Samples.Select(s => Mark(s, MarkState.Measured)), .. series.Struck.Select(s => Mark(s, MarkState.Struck))]) { Slot = 0 },
                ])
                {
                    Residuals = residuals.Length == 0 ? null : new Residuals(new Axis("ΔF/F", "%", "measured less fitted signal, in percent of the fitted"), residuals),
                },
            ])
        {
            Caption = $"Signal against quencher, series {series.Name}: {InWords.Count(series.Samples.Length, "vessel")} at {InWords.Count(series.Levels.Length, "level")}.",
            Notes =
            [
                "Marks: single vessels. Lines: laws fitted to the signal itself, F0 among their parameters, with weights for a constant relative error.",
                .. shown.Count > 0 ? new RichText[] { $"Residuals: {shown[0].Card.Name}, the lowest AICc of the laws shown." } : [],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    // The law with the lowest AICc, and the straight one beside it; laws over another abscissa are in the table.
    private static List<FitResult> Shown(SensorSeries series)
    {
        var ranked = series.Ranking?.Ranked.Select(r => r.Fit).Where(f => f.Card.Abscissa is null).ToArray() ?? [];
        return [.. ranked.Take(1).Concat(ranked.Where(f => f.Card.Name == SternVolmer.Card.Name)).Distinct()];
    }

    private static Mark Mark(SensorSample sample, MarkState state) => new(sample.Quencher, sample.Signal.Value) { Id = sample.Code, State = state };

    private static string Alt(SensorSeries series, List<FitResult> shown)
        => $"The signal falls from {InWords.Plain(series.Samples.Max(s => s.Signal.Value))} to {InWords.Plain(series.Samples.Min(s => s.Signal.Value))} between {InWords.Span(series.Levels, "µmol/L")} of quencher; "
            + (shown.Count == 0 ? "no law settled." : $"laws shown: {InWords.Listed(shown.Select(f => f.Card.Name))}.");
}
