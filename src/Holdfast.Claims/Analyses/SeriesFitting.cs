using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Fitting;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Fits every kinetic curve and every isotherm to the series they belong to.</summary>
internal static class SeriesFitting
{
    // A curve that the data determine settles within some dozen steps; one that they do not would creep for thousands and end undetermined all the same.
    private const int MostSteps = 500;

    private static readonly Lazy<ImmutableArray<Model>> KineticCurves = new(() => [.. Model.AllIn("Holdfast.Kinetics")]);

    // A curve whose abscissa is not the concentration itself needs something that a vessel sheet does not hold (the solubility): not fitted unasked.
    private static readonly Lazy<ImmutableArray<Model>> IsothermCurves = new(() => [.. Model.AllIn("Holdfast.Isotherms").Where(m => m.Card.Abscissa is null)]);

    /// <summary>Kinetic curves fitted to a series in which the contact time was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Kinetics(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.Sample.Number(BatchProperties.ContactTime) is not null).ToArray();
        var times = Array.ConvertAll(vessels, v => v.Sample.Number(BatchProperties.ContactTime)!.Value);
        var uptakes = Array.ConvertAll(vessels, v => v.Uptake!.Value.Value);
        var codes = Array.ConvertAll(vessels, v => v.Code);
        var u = Array.ConvertAll(vessels, v => v.Uptake!.Value.U);
        var plateau = Plateau.Test(times, uptakes);
        return new FittedSeries(series)
        {
            Fits = FitAll(KineticCurves.Value, new Points(times, uptakes, "min", "mg/g", ids: codes), profiles: true),
            Weighed = u.All(v => v > 0) ? FitAll(KineticCurves.Value, new Points(times, uptakes, "min", "mg/g", u, ids: codes), profiles: false) : [],
            Plateau = plateau.Value,
            Findings = [.. plateau.Findings],
        };
    }

    /// <summary>Isotherms fitted to a series in which the initial concentration was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Isotherms(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.End?.Value is not null && v.Dose is not null).ToArray();
        var left = Array.ConvertAll(vessels, v => v.End!.Value!.Value.Value);
        var uptakes = Array.ConvertAll(vessels, v => v.Uptake!.Value.Value);
        var codes = Array.ConvertAll(vessels, v => v.Code);
        var u = Array.ConvertAll(vessels, v => v.End!.Value!.Value.U);
        return new FittedSeries(series)
        {
            Fits = FitAll(IsothermCurves.Value, new Points(left, uptakes, "mg/L", "mg/g", ids: codes), profiles: true),
            Weighed = u.All(v => v > 0) && vessels.Length > 0
                ? Each(IsothermCurves.Value, m => m.Batch(
                    new BatchPoints(
                        Array.ConvertAll(vessels, v => v.Start!.Value.Value), Array.ConvertAll(vessels, v => v.Dose!.Value.Value), left, u, ids: codes),
                    new FitOptions { Profiles = false, MostIterations = MostSteps }))
                : [],
        };
    }

    private static ImmutableArray<FitResult> FitAll(ImmutableArray<Model> curves, Points points, bool profiles)
        => Each(curves, c => c.Fit(points, new FitOptions { Profiles = profiles, MostIterations = MostSteps }));

    // Fits are pure and keep their order, so that two cores give the bits of one in half the time.
    private static ImmutableArray<FitResult> Each(ImmutableArray<Model> curves, Func<Model, FitResult> fit)
        => [.. curves.AsParallel().AsOrdered().Select(fit)];
}
