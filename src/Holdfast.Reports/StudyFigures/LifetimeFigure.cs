using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The ratio of the lifetimes beside the ratio of the signals: together when quenching is dynamic, flat when it is static.</summary>
internal sealed class LifetimeFigure : IStudyFigure
{
    public int Place => 105;

    public IEnumerable<Figure> Of(Dossier dossier)
    {
        var sensing = Sensing.Of(dossier.Evidence);
        return sensing.Lifetimes
            .Where(l => l.WithoutQuencher > 0 && l.Highest > 0)
            .Select(l => One(l, sensing.Series.FirstOrDefault(s => s.F0 is not null), dossier));
    }

    private static Figure One(LifetimeSeries lifetimes, SensorSeries? series, Dossier dossier)
    {
        var without = lifetimes.WithoutQuencher!.Value;
        var ratios = series?.Ratios(lifetimes.Highest) ?? [];
        var layers = new List<Layer> { new ReferenceLine(AxisName.Y, 1, "static") };
        if (lifetimes.Constant is { } ofLifetimes)
            layers.Add(ModelCurve.Of(q => 1 + ofLifetimes.Value * q, 0, lifetimes.Highest) with { Slot = 1, Label = "lifetimes" });
        if (series?.ConstantTo(lifetimes.Highest) is { } ofSignals)
            layers.Add(ModelCurve.Of(q => 1 + ofSignals.Value * q, 0, lifetimes.Highest) with { Slot = 0, Label = "signals" });
        layers.Add(new Marks([.. ratios.Select(r => new Mark(r.Level, r.Signal) { Id = r.Id })]) { Slot = 0 });
        layers.Add(new Marks([.. lifetimes.Samples.Select(s => new Mark(s.Quencher, without / s.Signal.Value) { Id = s.Code })]) { Slot = 1 });
        return new Figure(
            StudyFigure.Id("lifetimes", lifetimes.Name), $"Lifetimes beside signals, series {lifetimes.Name}",
            $"The ratio of lifetimes rises to {InWords.Plain(without / lifetimes.Samples.Min(s => s.Signal.Value))} at {InWords.Setting(lifetimes.Highest, "µmol/L")}"
                + (ratios.Count > 0 ? $", the ratio of signals to {InWords.Plain(ratios.Max(r => r.Signal))}." : "."),
            [new Panel(new Axis("Q", "µmol L^-1", "quencher added") { Min = 0 }, new Axis("F_0/F, τ_0/τ", null, "ratio of signals and of lifetimes"), layers)])
        {
            Caption = $"Lifetimes beside signals, series {lifetimes.Name}{(series is null ? "" : $" and {series.Name}")}: together they rise when quenching is dynamic; lifetimes stay at 1 when it is static.",
            Notes =
            [
                $"Marks: single vessels, over the {(series is null ? "" : $"{series.F0From} of {series.Name} and the ")}mean lifetime without quencher. Lines: 1 + KQ with the constants fitted to signals and lifetimes themselves, so that a line need not pass through its own ratio at Q = 0.",
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
