using Holdfast.Fitting.Solving;
using System.Runtime.InteropServices;
using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>Fits a curve of the trade to points, or an isotherm to batch vessels.</summary>
public static class Fit
{
    /// <summary>Fits a curve to points by weighted least squares, from starts that the data give.</summary>
    /// <param name="points">The points. With uncertainties of x they are weighed by the effective variance
    /// u(y)² − 2 f′ cov(x, y) + f′² u(x)², refreshed until it settles (J. Orear, Am. J. Phys. 50 (1982) 912; from memory).</param>
    /// <param name="options">How; null for the defaults.</param>
    public static FitResult Of<TCurve>(Points points, FitOptions? options = null) where TCurve : struct, ICurve<TCurve>
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= FitOptions.Default;
        var model = Model.Of<TCurve>();
        var problem = new Problem<CurvePrediction<TCurve>>(new(points.XValues), new(model.Card.Parameters));
        if (Refusal.Of(model.Card, points, options) is { } refused)
            return FitResult.None(model.Card, points, refused);
        var weights = points.FirstWeights();
        var starts = Starts(options, model.Card);
        if (options.Scan)
            starts.AddRange(Scan.Starts<TCurve>(points.XValues, points.YValues, weights));
        Reweigh? reweigh = points.XUValues is not null ? (p, w) => EffectiveVariance<TCurve>(points, p, w)
            : options.Weighting == Weighting.RelativeToFit ? (p, w) => Relative<TCurve>(points, p, w)
            : null;
        return new Settlement(problem, model.Card, model, points, options, points.XUnit, points.YUnit).Reach(weights, starts, reweigh);
    }

    /// <summary>
    /// Fits an isotherm to batch vessels by predicting the concentration left from C0 and dose through the mass balance: one measured
    /// response, no correlated axes. Values and bands of the result are those of the isotherm.
    /// </summary>
    /// <param name="vessels">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public static FitResult Batch<TIsotherm>(BatchPoints vessels, FitOptions? options = null) where TIsotherm : struct, ICurve<TIsotherm>
    {
        ArgumentNullException.ThrowIfNull(vessels);
        options ??= FitOptions.Default;
        var model = Model.Of<TIsotherm>();
        var loadings = vessels.AsLoadings();
        var readings = vessels.Readings;
        var problem = new Problem<BatchPrediction<TIsotherm>>(new(readings.XValues, [.. vessels.Doses]), new(model.Card.Parameters));
        if (Refusal.Of(model.Card, loadings, options) is { } refused)
            return FitResult.None(model.Card, readings, refused);
        var starts = Starts(options, model.Card);
        if (options.Scan)
            starts.AddRange(Scan.Starts<TIsotherm>(loadings.XValues, loadings.YValues, [.. loadings.X.Select(_ => 1.0)]));
        return new Settlement(problem, model.Card, model, readings, options, vessels.ConcentrationUnit, vessels.LoadingUnit)
            .Reach(readings.FirstWeights(), starts, null);
    }

    /// <summary>
    /// Fits a curve to the vessels of a series with one error model: what is stated of each vessel, shared parts shared, and a scatter from vessel to vessel
    /// in proportion to the curve, by restricted likelihood.
    /// </summary>
    /// <param name="points">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public static FitResult Series<TCurve>(SeriesPoints points, FitOptions? options = null) where TCurve : struct, ICurve<TCurve>
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= FitOptions.Default;
        var model = Model.Of<TCurve>();
        var plain = points.Plain;
        if (Refusal.Of(model.Card, plain, options) is { } refused)
            return FitResult.None(model.Card, plain, refused);
        var coordinates = new Coordinates(model.Card.Parameters);
        // Where the reading came out at 0 or below a curve has no value; the error model takes such a vessel in, the first look does not.
        int[] seen = [.. Enumerable.Range(0, points.Count).Where(i => points.Vessels is null || plain.XValues[i] > 0)];
        double[] x = [.. seen.Select(i => plain.XValues[i])], y = [.. seen.Select(i => plain.YValues[i])], all = SeriesSettlement.FirstWeights(points);
        double[] weights = [.. seen.Select(i => all[i])];
        var first = new Points(x, y, plain.XUnit, plain.YUnit, ids: [.. seen.Select(i => plain.Ids[i])]);
        if (Refusal.Of(model.Card, first, options) is { } none)
            return FitResult.None(model.Card, plain, none);
        var starts = Starts(options, model.Card);
        if (options.Scan)
            starts.AddRange(Scan.Starts<TCurve>(x, y, weights));
        var look = new Settlement(
            new Problem<CurvePrediction<TCurve>>(new(x), coordinates), model.Card, model, first, options with { Profiles = false }, plain.XUnit, plain.YUnit)
            .Reach(weights, starts, null);
        return new SeriesSettlement(
            v => points.Vessels is { } vessels
                ? new GeneralisedProblem<BatchPrediction<TCurve>>(new(vessels.Readings.XValues, [.. vessels.Doses]), coordinates, v)
                : new GeneralisedProblem<CurvePrediction<TCurve>>(new(plain.XValues), coordinates, v),
            model, points, new(points), options).Reach(look);
    }

    /// <summary>Fits any prediction from given starts. The points give readings, weights and ids; their x only orders the residuals.</summary>
    /// <param name="prediction">What each observation should read.</param>
    /// <param name="card">The parameters, their limits and units.</param>
    /// <param name="points">The observations, as many as the prediction has.</param>
    /// <param name="options">How; <see cref="FitOptions.Starts"/> must hold at least one start.</param>
    /// <exception cref="ArgumentException">No start is given, or the counts differ.</exception>
    public static FitResult Of<TPrediction>(TPrediction prediction, ModelCard card, Points points, FitOptions options)
        where TPrediction : struct, IPrediction
    {
        ArgumentNullException.ThrowIfNull(card);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(options);
        if (options.Starts.Count == 0)
            throw new ArgumentException("A prediction of one's own needs at least one start.", nameof(options));
        if (points.Count != prediction.Count)
            throw new ArgumentException(FormattableString.Invariant($"{points.Count} points for {prediction.Count} predictions."), nameof(points));
        if (Refusal.TooFew(card, points) is { } refused)
            return FitResult.None(card, points, refused);
        var problem = new Problem<TPrediction>(prediction, new(card.Parameters));
        return new Settlement(problem, card, null, points, options, points.XUnit, points.YUnit)
            .Reach(points.FirstWeights(), Starts(options, card), null);
    }

    private static List<double[]> Starts(FitOptions options, ModelCard card)
    {
        foreach (var start in options.Starts)
        {
            if (start.Count != card.Parameters.Count)
                throw new ArgumentException(FormattableString.Invariant(
                    $"A start of {start.Count} numbers for the {card.Parameters.Count} parameters of {card.Name}."), nameof(options));
        }

        return [.. options.Starts.Select(s => s.ToArray())];
    }

    private static void EffectiveVariance<TCurve>(Points points, ReadOnlySpan<double> p, Span<double> weights) where TCurve : struct, ICurve<TCurve>
    {
        Span<Slopes> known = stackalloc Slopes[p.Length];
        for (var j = 0; j < p.Length; j++)
            known[j] = p[j];
        for (var i = 0; i < weights.Length; i++)
        {
            var slope = TCurve.Value(Slopes.Parameter(points.XValues[i], 0), known)[0];
            var (uy, ux, covariance) = (points.UValues![i], points.XUValues![i], points.XYCovarianceValues?[i] ?? 0);
            weights[i] = 1 / (uy * uy - 2 * slope * covariance + slope * slope * ux * ux);
        }
    }

    private static void Relative<TCurve>(Points points, ReadOnlySpan<double> p, Span<double> weights) where TCurve : struct, ICurve<TCurve>
    {
        var parameters = MemoryMarshal.Cast<double, Number>(p);
        for (var i = 0; i < weights.Length; i++)
        {
            var f = TCurve.Value<Number>(points.XValues[i], parameters).Value;
            weights[i] = f == 0 ? 0 : 1 / (f * f);
        }
    }
}
