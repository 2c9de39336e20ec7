using System.Collections.Immutable;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>What the curves of a series predict, each curve that the data do not tell apart by itself: how far they differ is seen beside their intervals.</summary>
public static class Predictions
{
    /// <summary>The predictions of every curve that is not told apart from the best.</summary>
    /// <param name="fits">Fits of one series or one table of points.</param>
    /// <param name="asked">What is asked.</param>
    public static ImmutableArray<Prediction> Of(IReadOnlyList<FitResult> fits, PredictionQuestion asked)
        => [.. CurveComparison.NotToldApart(fits).SelectMany(f => Of(f, asked))];

    /// <summary>The predictions of one curve; none for a curve that is neither isotherm nor kinetic.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="asked">What is asked.</param>
    public static IEnumerable<Prediction> Of(FitResult fit, PredictionQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(asked);
        if (Kinetic.Named(fit.Card.Name) is not null)
            return asked.Shares.Select(s => Time(fit, s));
        return asked is { Start: { } start, Dose: { } dose } && Isotherm.Named(fit.Card.Name) is not null
            ? new[] { PredictionOf.Mean, PredictionOf.OneVessel }.SelectMany(of => Vessel(fit, start, dose, of))
            : [];
    }

    private static Prediction Time(FitResult fit, double share)
    {
        var found = fit.PredictTimeTo(share);
        return new(
            fit.Card.Name, FormattableString.Invariant($"time to {100 * share:0.##} % of the plateau"), PredictionOf.Mean, null, null, share, fit.Points.XUnit,
            found.Value, Why(found.Findings));
    }

    private static IEnumerable<Prediction> Vessel(FitResult fit, double start, double dose, PredictionOf of)
    {
        var found = fit.PredictVessel(start, dose, of);
        return new (string Quantity, string Unit, Predicted? Value)[]
        {
            ("uptake", fit.Points.YUnit, found.Value?.Uptake), ("removal", "%", found.Value?.Removal), ("concentration left", fit.Points.XUnit, found.Value?.Left),
        }.Select(q => new Prediction(fit.Card.Name, q.Quantity, of, start, dose, null, q.Unit, q.Value, Why(found.Findings)));
    }

    private static string? Why(IReadOnlyList<Finding> findings) => findings.Count == 0 ? null : findings[0].Sentence;
}

/// <summary>What is asked of fitted curves: uptake and removal at a start concentration and dose, and times to shares of the plateau.</summary>
/// <param name="Start">Start concentration, mg/L; null for none.</param>
/// <param name="Dose">Dose, g/L; null for none.</param>
/// <param name="Shares">Shares of the plateau, above 0 and below 1; no unit.</param>
public sealed record PredictionQuestion(double? Start, double? Dose, ImmutableArray<double> Shares)
{
    /// <summary>Shares that are told where none is asked for: half of it, and as good as all.</summary>
    public static ImmutableArray<double> UsualShares { get; } = [0.5, 0.9];

    /// <summary>What is told of a series unasked: its middle start concentration at its own dose.</summary>
    /// <param name="series">The series; null for bare points, which have neither.</param>
    public static PredictionQuestion For(Series? series) => new(
        Middle(series?.Vessels.Select(v => v.Sample.Number(BatchProperties.InitialConcentration) ?? v.Start?.Value)),
        Middle(series?.Vessels.Select(v => v.Sample.Number(BatchProperties.Dose) ?? v.Dose?.Value)), UsualShares);

    private static double? Middle(IEnumerable<double?>? settings)
        => settings?.OfType<double>().Where(s => s > 0).Distinct().Order().ToArray() is { Length: > 0 } all ? all[all.Length / 2] : null;
}

/// <summary>One number that a fitted curve predicts, or why it does not.</summary>
/// <param name="Curve">Name of the curve.</param>
/// <param name="Quantity">What is predicted.</param>
/// <param name="Of">For whom.</param>
/// <param name="Start">Start concentration, mg/L; null for a time.</param>
/// <param name="Dose">Dose, g/L; null for a time.</param>
/// <param name="Share">Share of the plateau; null for a vessel.</param>
/// <param name="Unit">Unit of the number.</param>
/// <param name="Value">The number with its 95 % interval; null when withheld.</param>
/// <param name="Why">Why it is withheld; null when it is there.</param>
public sealed record Prediction(
    string Curve, string Quantity, PredictionOf Of, double? Start, double? Dose, double? Share, string Unit, Predicted? Value, string? Why)
{
    /// <summary>For whom, in words.</summary>
    public string OfWords => Of == PredictionOf.Mean ? "mean of many vessels" : "one new vessel";
}
