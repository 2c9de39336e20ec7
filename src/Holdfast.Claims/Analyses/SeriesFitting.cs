using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Fits every kinetic curve and every isotherm to the series they belong to, each series with one error model.</summary>
internal static class SeriesFitting
{
    // A curve that the data determine settles within some dozen steps; one that they do not would creep for thousands and end undetermined all the same.
    private const int MostSteps = 500;

    /// <summary>Kinetic curves fitted to a series in which the contact time was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Kinetics(Series series)
    {
        var points = KineticPoints(series);
        // Why nothing can be fitted is said of the vessels: see MissingResult.
        if (points.Count == 0)
            return new FittedSeries(series);
        // A reading at time 0 is the start: no doubling of time leads to it.
        int[] after = [.. Enumerable.Range(0, points.Count).Where(i => points.Plain.X[i] > 0)];
        var plateau = Plateau.Test([.. after.Select(i => points.Plain.X[i])], [.. after.Select(i => points.Plain.Y[i])]);
        return new FittedSeries(series) { Fits = FitAll(Kinetic.All, points), Plateau = plateau.Value, Findings = [.. plateau.Findings, .. BelowDetection(series)] };
    }

    /// <summary>Isotherms fitted to a series in which the initial concentration was varied.</summary>
    /// <param name="series">The series.</param>
    public static FittedSeries Isotherms(Series series)
    {
        var points = IsothermPoints(series);
        return points.Count == 0 ? new(series) : new(series) { Fits = FitAll(Isotherm.All, points), Findings = [.. BelowDetection(series)] };
    }

    /// <summary>The vessels of a kinetic series as they enter its fits: each time is a vessel of its own, its time is exact.</summary>
    /// <param name="series">The series.</param>
    public static SeriesPoints KineticPoints(Series series)
    {
        var used = Used(series, v => v.Uptake is not null && v.Sample.Number(BatchProperties.ContactTime) is not null);
        return new(
            [.. used.Select(u => u.Vessel.Sample.Number(BatchProperties.ContactTime)!.Value)], [.. used.Select(u => u.Vessel.Uptake!.Value)],
            "min", "mg/g", [.. used.Select(u => u.Vessel.Code)], [.. used.Select(u => u.Level)]);
    }

    /// <summary>The vessels of an isotherm as they enter its fits: the uptake rests on the concentration left, so that both carry one error.</summary>
    /// <param name="series">The series.</param>
    public static SeriesPoints IsothermPoints(Series series)
    {
        var used = Used(series, v => v.Uptake is not null && v.End?.Value is not null && v.Dose is not null);
        return SeriesPoints.OfVessels(
            [.. used.Select(u => u.Vessel.Start!.Value)], [.. used.Select(u => u.Vessel.Dose!.Value)], [.. used.Select(u => u.Vessel.End!.Value!.Value)],
            [.. used.Select(u => u.Vessel.Code)], [.. used.Select(u => u.Level)]);
    }

    // What is read below the detection limit is fitted as it was read, with its sign and its uncertainty: neither the limit nor half of it is put in its place.
    private static IEnumerable<Finding> BelowDetection(Series series)
    {
        string[] codes = [.. series.Vessels.Where(v => v.End?.IsBelowDetection == true && v.Uptake is not null).Select(v => v.Code)];
        if (codes.Length > 0)
        {
            yield return Finding.Of("HF-470", Weight.Note,
                $"{series.Name}: {Phrase.Count(codes.Length, "vessel")} below the detection limit {(codes.Length == 1 ? "enters" : "enter")} the fits as read, with sign and uncertainty, never as the limit.", codes);
        }
    }

    private static (Vessel Vessel, int Level)[] Used(Series series, Func<Vessel, bool> counts)
        => [.. series.Levels.SelectMany((level, at) => level.Vessels.Where(counts).Select(v => (v, at)))];

    // Vessels scatter in one way whatever curve is drawn through them: in the way that the best curve shows.
    private static ImmutableArray<FitResult> FitAll(IReadOnlyList<Model> curves, SeriesPoints points)
    {
        var options = new FitOptions { MostIterations = MostSteps };
        var fits = Each(curves, c => c.SeriesInRoom(points, options));
        if (fits.Where(f => f.IsFit && f.Aicc is not null).MinBy(f => f.Aicc!.Value)?.Errors is not { } errors)
            return fits;
        var others = Each([.. curves.Where((_, i) => fits[i].Errors is { } own && own.Form != errors.Form)], c => c.SeriesInRoom(points, options with { Form = errors.Form }))
            .ToDictionary(f => f.Card.Name, StringComparer.Ordinal);
        return [.. fits.Select(f => others.GetValueOrDefault(f.Card.Name, f))];
    }

    // Fits are pure and keep their order, so that two cores give the bits of one in half the time.
    private static ImmutableArray<FitResult> Each(IReadOnlyList<Model> curves, Func<Model, FitResult> fit)
        => [.. curves.AsParallel().AsOrdered().Select(fit)];
}
