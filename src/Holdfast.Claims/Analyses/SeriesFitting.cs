using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Fits every kinetic curve and every isotherm to the series they belong to.</summary>
internal static class SeriesFitting
{
    // A curve that the data determine settles within some dozen steps; one that they do not would creep for thousands and end undetermined all the same.
    private const int MostSteps = 500;

    /// <summary>Kinetic curves fitted to a series in which the contact time was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Kinetics(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.Sample.Number(BatchProperties.ContactTime) is not null).ToArray();
        // Why nothing can be fitted is said of the vessels: see MissingResult.
        if (vessels.Length == 0)
            return new FittedSeries(series);
        var times = Array.ConvertAll(vessels, v => v.Sample.Number(BatchProperties.ContactTime)!.Value);
        var uptakes = Array.ConvertAll(vessels, v => v.Uptake!.Value.Value);
        var codes = Array.ConvertAll(vessels, v => v.Code);
        var u = Array.ConvertAll(vessels, v => v.Uptake!.Value.U);
        // A reading at time 0 is the start: no doubling of time leads to it.
        int[] after = [.. Enumerable.Range(0, times.Length).Where(i => times[i] > 0)];
        var plateau = Plateau.Test(Array.ConvertAll(after, i => times[i]), Array.ConvertAll(after, i => uptakes[i]));
        return new FittedSeries(series)
        {
            Fits = FitAll(Kinetic.All, new Points(times, uptakes, "min", "mg/g", ids: codes), profiles: true),
            Weighed = u.All(v => v > 0) ? FitAll(Kinetic.All, new Points(times, uptakes, "min", "mg/g", u, ids: codes), profiles: false) : [],
            Plateau = plateau.Value,
            Findings = [.. plateau.Findings],
        };
    }

    /// <summary>Isotherms fitted to a series in which the initial concentration was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Isotherms(Series series)
    {
        var vessels = series.Vessels.Where(v => v.Uptake is not null && v.End?.Value is not null && v.Dose is not null).ToArray();
        if (vessels.Length == 0)
            return new FittedSeries(series);
        var left = Array.ConvertAll(vessels, v => v.End!.Value!.Value.Value);
        var uptakes = Array.ConvertAll(vessels, v => v.Uptake!.Value.Value);
        var codes = Array.ConvertAll(vessels, v => v.Code);
        var u = Array.ConvertAll(vessels, v => v.End!.Value!.Value.U);
        return new FittedSeries(series)
        {
            Fits = FitAll(Isotherm.All, new Points(left, uptakes, "mg/L", "mg/g", ids: codes), profiles: true),
            Weighed = u.All(v => v > 0) && vessels.Length > 0
                ? Each(Isotherm.All, m => m.BatchInRoom(
                    new BatchPoints(
                        Array.ConvertAll(vessels, v => v.Start!.Value.Value), Array.ConvertAll(vessels, v => v.Dose!.Value.Value), left, u, ids: codes),
                    new FitOptions { Profiles = false, MostIterations = MostSteps }))
                : [],
        };
    }

    private static ImmutableArray<FitResult> FitAll(IReadOnlyList<Model> curves, Points points, bool profiles)
        => Each(curves, c => c.FitInRoom(points, new FitOptions { Profiles = profiles, MostIterations = MostSteps }));

    // Fits are pure and keep their order, so that two cores give the bits of one in half the time.
    private static ImmutableArray<FitResult> Each(IReadOnlyList<Model> curves, Func<Model, FitResult> fit)
        => [.. curves.AsParallel().AsOrdered().Select(fit)];
}
