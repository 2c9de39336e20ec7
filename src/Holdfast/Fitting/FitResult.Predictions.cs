using Holdfast.Statistics;

namespace Holdfast.Fitting;

/// <summary>What the fitted curve predicts, with intervals from the error model of the fit; only inside what was measured.</summary>
/// <remarks>
/// First order (delta method) with Student's t for the degrees of freedom of each prediction (Satterthwaite), taken on a scale without borders: ln Ce/(C0 − Ce)
/// for a vessel, so that removal stays between 0 and 100 %, and ln t for a time.
/// </remarks>
public sealed partial class FitResult
{
    // A curve that still moves between these multiples of the longest time has no plateau to take a share of.
    private const double LongAfter = 1e9, LongerAfter = 1e12, NoPlateau = 1e-6;

    /// <summary>For an isotherm: what a vessel comes to, or why these data do not tell.</summary>
    /// <param name="start">Start concentration, above 0, in the unit of x; taken as exact.</param>
    /// <param name="dose">Dose, above 0, in (unit of x)/(unit of y); taken as exact.</param>
    /// <param name="of">The mean of many vessels, or one new vessel.</param>
    public Outcome<VesselPrediction> PredictVessel(double start, double dose, PredictionOf of)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(start);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dose);
        if (Unable() is { } unable)
            return Outcome<VesselPrediction>.None(unable);
        double[] values = [.. Values], slopes = new double[P];
        var left = Curve().ConcentrationLeft(start, dose, values, slopes);
        double lowest = Points.X.Min(), highest = Points.X.Max();
        if (!(left > 0 && left < start && left >= lowest && left <= highest))
        {
            return Outcome<VesselPrediction>.None(Withheld(FormattableString.Invariant(
                $"{left:G3} {Points.XUnit} would be left, outside the {Math.Max(lowest, 0):G3} to {highest:G3} {Points.XUnit} that were measured.")));
        }

        // An error of the uptake moves what is left by D/(1 + D·f′), one of the amount taken up by itself.
        var lever = dose / (1 + dose * Curve().SlopeAt(left, values));
        var reach = Errors switch
        {
            { Form: ScatterForm.Amount } => start - left,
            { } => lever * (start - left) / dose,
            null => lever,
        };
        var (u, t) = Spread(slopes, of == PredictionOf.OneVessel ? reach : 0);
        var half = t * u * start / (left * (start - left));
        double low = Within(-half), high = Within(half);
        return new(
            new(
                new(left, u, low, high),
                new((start - left) / dose, u / dose, (start - high) / dose, (start - low) / dose),
                new(100 * (start - left) / start, 100 * u / start, 100 * (start - high) / start, 100 * (start - low) / start)),
            []);

        double Within(double shift) => start / (1 + (start - left) / left * Math.Exp(-shift));
    }

    /// <summary>For a kinetic curve: when the mean uptake reaches a share of its plateau, or why these data do not tell.</summary>
    /// <param name="share">Share of the plateau, above 0 and below 1; no unit.</param>
    public Outcome<Predicted> PredictTimeTo(double share)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(share);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(share, 1);
        if (Unable() is { } unable)
            return Outcome<Predicted>.None(unable);
        double[] values = [.. Values], atPlateau = new double[P], slopes = new double[P];
        double[] times = [.. Points.X.Where(x => x > 0)];
        var curve = Curve();
        var longest = times.DefaultIfEmpty(0).Max();
        var plateau = curve.Value(LongAfter * longest, values, atPlateau);
        if (!(plateau > 0) || !(Math.Abs(curve.Value(LongerAfter * longest, values) - plateau) <= NoPlateau * plateau))
            return Outcome<Predicted>.None(Withheld($"{Card.Name} has no plateau."));
        if (Parameters.Where((p, j) => Math.Abs(atPlateau[j] * p.Value) > NoPlateau * plateau && p.Profile?.IsClosed != true).FirstOrDefault() is { } open)
            return Outcome<Predicted>.None(Withheld($"the plateau is not determined, since {open.Symbol} has no closed interval."));
        var target = share * plateau;
        if (curve.Value(times.Min(), values) > target || curve.Value(longest, values) < target)
        {
            return Outcome<Predicted>.None(Withheld(FormattableString.Invariant(
                $"{100 * share:G3} % of the plateau is reached outside the {times.Min():G3} to {longest:G3} {Points.XUnit} that were measured.")));
        }

        var time = Root.Of(x => curve.Value(x, values) - target, times.Min(), longest);
        curve.Value(time, values, slopes);
        var rate = curve.SlopeAt(time, values);
        // The theorem on implicit functions: f(t; p) = share · f(∞; p).
        var (u, t) = Spread([.. slopes.Select((g, j) => (share * atPlateau[j] - g) / rate)], 0);
        return new(new(time, u, time * Math.Exp(-t * u / time), time * Math.Exp(t * u / time)), []);
    }

    // Standard error of a combination of parameters, a new vessel's scatter with it, and the quantile of t for both together.
    private (double U, double Quantile) Spread(double[] slopes, double reach)
    {
        var variance = 0.0;
        for (var i = 0; i < P; i++)
        {
            for (var j = 0; j < P; j++)
                variance += slopes[i] * Covariance![i, j] * slopes[j];
        }

        var scatter = Errors?.VesselScatter ?? ResidualSd ?? 0;
        var u = Math.Sqrt(Math.Max(variance, 0) + reach * reach * scatter * scatter);
        return (u, Series?.Quantile(Confidence, [.. slopes.Select((g, j) => g * Problem!.Coordinates.Slope(j, Theta[j]))], reach * reach) ?? Quantile!.Value);
    }

    private Finding? Unable()
        => !IsFit || Model is null ? Withheld("it did not settle.")
            : Covariance is null || Quantile is null ? Withheld("there are as many parameters as points, so nothing tells how far off it may be.")
            : null;

    private Finding Withheld(string why) => Finding.Of("HF-459", Weight.Note, $"{Card.Name} predicts nothing here: {why}", [.. Points.Ids]);
}
