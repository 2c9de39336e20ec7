using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The response with each other ion over the response without it, beside the margin that counts as none.</summary>
internal sealed class InterferenceFigure : IStudyFigure
{
    public int Place => 110;

    public IEnumerable<Figure> Of(Dossier dossier) => Sensing.Of(dossier.Evidence).Interferences.Select(i => One(i, dossier));

    private static Figure One(InterferenceSeries series, Dossier dossier)
    {
        var places = series.Ions.Select(i => (RichText)(i.Quencher > 0 ? $"{i.Ion}, Q {InWords.Plain(i.Quencher)}" : i.Ion));
        var bars = series.Ions.Select((ion, i) => Bar.AtPlace(i + 1, ion.Found.Effect.Value) with
        {
            YBar = new ErrorBar(ion.Found.Equivalence.Interval.Low, ion.Found.Equivalence.Interval.High),
            Id = ion.Codes[0],
        });
        var (low, high) = (1 - series.Margin, 1 + series.Margin);
        return new Figure(
            StudyFigure.Id("interference", series.Name), $"Response with other ions, series {series.Name}",
            $"Ratios between {InWords.Plain(Math.Round(series.Ions.Min(i => i.Found.Effect.Value), 3))} and {InWords.Plain(Math.Round(series.Ions.Max(i => i.Found.Effect.Value), 3))}; "
                + $"outside the margin beyond chance: {(series.Ions.Any(i => i.Found.IsShown) ? InWords.Listed(series.Ions.Where(i => i.Found.IsShown).Select(i => i.Ion)) : "none")}.",
            [
                new Panel(
                    Axis.OfPlaces("other ion", places), new Axis("Ratio of responses", null, "response with the ion over response without it"),
                    [new Zone(AxisName.Y, low, high, "margin"), new Bars([.. bars])]),
            ])
        {
            Caption = $"Response with other ions, series {series.Name}: {InWords.Count(series.Ions.Length, "ion")}, against {InWords.Count(series.WithoutIons, "vessel")} without them.",
            Notes =
            [
                $"Bars: ratio of means; error bars: 90 % interval, which must lie inside the margin ({InWords.Plain(low)} to {InWords.Plain(high)}) before “no effect” is said.",
                .. series.Ions.Any(i => i.Factor > Fluorescence.InnerFilter.Matters)
                    ? new RichText[] { $"Corrected for the inner filter: {InWords.Listed(series.Ions.Where(i => i.Factor > Fluorescence.InnerFilter.Matters).Select(i => i.Ion))}." } : [],
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
