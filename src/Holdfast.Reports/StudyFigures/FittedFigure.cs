using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.StudyFigures;

/// <summary>A series with fitted curves and their residuals: what the figures of kinetics and isotherms share.</summary>
internal static class FittedFigure
{
    // One slot is the data's own; three curves is what a reader can hold apart.
    private const int MostCurves = 3;
    private const int BandSteps = 60;

    /// <summary>True when some vessel of the series has an uptake, so that there is a mark to draw.</summary>
    /// <param name="fitted">The series with its fits.</param>
    public static bool HasPoints(FittedSeries fitted) => fitted.Series.Vessels.Concat(fitted.Series.Struck).Any(v => v.Uptake is not null);

    /// <summary>The figure of one fitted series.</summary>
    /// <param name="fitted">The series with its fits.</param>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="kind">Kind of figure, for its name.</param>
    /// <param name="title">Title.</param>
    /// <param name="x">Horizontal axis.</param>
    /// <param name="y">Vertical axis: the uptake.</param>
    /// <param name="place">Abscissa of a vessel in the unit of the axis, or null.</param>
    /// <param name="usual">Curves that readers look for, shown even when the data speak against them.</param>
    public static Figure Of(
        FittedSeries fitted, Dossier dossier, string kind, string title, Axis x, Axis y, Func<Vessel, double?> place, params string[] usual)
    {
        var series = fitted.Series;
        var shown = Shown(fitted, usual);
        var marks = StudyFigure.Marks(series.Vessels, series.Struck, v => X(v, place), v => v.Uptake);
        var lastX = marks.Count == 0 ? 1 : marks.Max(m => m.X);
        var layers = new List<Layer>();
        var residuals = new List<Marks>();
        // The best curve is drawn whole, in the colour of the data it describes; its rivals are dashed.
        var bands = shown.Count == 0 ? [] : Bands(shown[0]).ToList();
        layers.AddRange(bands);
        for (var i = 0; i < shown.Count; i++)
        {
            var fit = shown[i];
            layers.Add(ModelCurve.Of(fit.ValueAt, 0, lastX, fit.Points.X.Min(), fit.Points.X.Max()) with { Slot = i, Label = fit.Card.Name });
            if (i == 0)
                residuals.Add(new Marks([.. fit.Points.X.Select((at, j) => new Mark(at, fit.Residuals[j]) { Id = fit.Points.Ids[j] })]) { Slot = i });
        }

        layers.Add(new Marks(marks) { Slot = 0 });
        return new Figure(StudyFigure.Id(kind, series.Name), title, Alt(fitted, shown, x, y), [new Panel(x, y, layers)
        {
            Residuals = residuals.Count == 0 ? null : new Residuals(new Axis("Δq", "mg g^-1", "measured less fitted uptake"), residuals),
        }])
        {
            Caption = $"{title}: {Conditions.Extent(series)}{(Conditions.Held(series) is { Length: > 0 } held ? "; " + held : "")}.",
            Notes =
            [
                "Marks: single vessels; bars: 95 % interval of each vessel from the propagated uncertainty. Lines: fitted curves.",
                .. shown.Count == 0 ? [] : new RichText[]
                {
                    $"Whole line and residuals: {shown[0].Card.Name}, the lowest AICc of the curves shown.",
                    bands.Count > 0 ? $"Shaded: 95 % band of {shown[0].Card.Name} itself, by its parameters; paler: of one more vessel, with the scatter between vessels."
                        : $"No band is drawn: these data do not close the interval of every parameter of {shown[0].Card.Name}.",
                },
            ],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }

    // Over what was fitted, and only where every parameter has an interval: elsewhere the first order that a band rests on says nothing.
    private static IEnumerable<Band> Bands(FitResult best)
    {
        var (from, to) = (best.Points.X.Min(), best.Points.X.Max());
        if (!(from < to) || best.Parameters.Any(p => p.Profile?.IsClosed != true))
            yield break;
        double[] places = [.. Enumerable.Range(0, BandSteps + 1).Select(i => from + (to - from) * i / BandSteps)];
        foreach (var (pale, at) in new (bool, Func<double, CurveBand?>)[] { (true, x => best.PredictionBand(x)), (false, best.ConfidenceBand) })
        {
            var edges = places.Select(x => (X: x, Band: at(x))).Where(p => p.Band is { StandardError: > 0 }).Select(p => (p.X, p.Band!.Value.Lower, p.Band.Value.Upper)).ToList();
            if (edges.Count > 1)
                yield return new Band(edges) { Slot = 0, Pale = pale };
        }
    }

    private static Measured? X(Vessel vessel, Func<Vessel, double?> place)
        => vessel.End?.Value is { } left && place(vessel) is { } at && at.Equals(left.Value) ? left : place(vessel) is { } known ? known : null;

    private static List<FitResult> Shown(FittedSeries fitted, string[] usual)
    {
        var settled = fitted.Fits.Where(f => f.IsFit && f.Aicc is not null).OrderBy(f => f.Aicc).ToArray();
        var wanted = settled.Where(f => usual.Contains(f.Card.Name, StringComparer.Ordinal)).ToList();
        if (settled.Length > 0 && !wanted.Contains(settled[0]))
            wanted.Add(settled[0]);
        return [.. wanted.OrderBy(f => f.Aicc).Take(MostCurves)];
    }

    private static string Alt(FittedSeries fitted, List<FitResult> shown, Axis x, Axis y)
    {
        var counted = fitted.Series.Vessels.Where(v => v.Uptake is not null).ToArray();
        if (counted.Length == 0)
            return $"No vessel of series {fitted.Series.Name} has an uptake.";
        var text = string.Create(CultureInfo.InvariantCulture,
            $"{y.Name} against {x.Name}: {counted.Length} vessels between {counted.Min(v => v.Uptake!.Value.Value):0.##} and {counted.Max(v => v.Uptake!.Value.Value):0.##} mg/g");
        return shown.Count == 0 ? text + "; no curve settled." : text + $"; curves shown: {string.Join(", ", shown.Select(f => f.Card.Name))}.";
    }
}
