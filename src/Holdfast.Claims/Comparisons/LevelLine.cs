using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Comparisons;

/// <summary>The vessels of one level in a line: means, with the conditions they stood at.</summary>
/// <param name="Start">Start concentration, mg/L.</param>
/// <param name="Dose">Dose, g/L.</param>
/// <param name="Left">Concentration left, mg/L.</param>
/// <param name="Uptake">Uptake, mg/g.</param>
/// <param name="U">Standard uncertainty of the mean: the larger of the propagated one and that from replicates; null when no scatter of vessels is known.</param>
/// <param name="Freedom">Degrees of freedom of it; null when it is taken as known.</param>
/// <param name="Vessels">Number of vessels.</param>
/// <param name="StartPh">pH at the start.</param>
/// <param name="EndPh">pH when the liquid was separated.</param>
/// <param name="Temperature">Temperature, K.</param>
/// <param name="Time">Contact time, min.</param>
public sealed record LevelLine(
    double? Start, double? Dose, double Left, double Uptake, double? U, double? Freedom, int Vessels, double? StartPh, double? EndPh, double? Temperature, double? Time)
{
    /// <summary>True when it can be computed with.</summary>
    internal bool IsSound
        => Vessels > 0 && new[] { Left, Uptake, U ?? 1, Freedom ?? 1, Start ?? 1, Dose ?? 1, Temperature ?? 1 }.All(n => n > 0)
            && new[] { Left, Uptake, U, Freedom, Start, Dose, StartPh, EndPh, Temperature, Time }.All(n => double.IsFinite(n ?? 0));

    /// <summary>The line of a level, or null when none of its vessels has an uptake above a concentration left.</summary>
    /// <param name="level">The level.</param>
    /// <param name="pooled">Scatter of vessels as a share of the uptake, with its degrees of freedom; null without replicates.</param>
    internal static LevelLine? Of(Level level, (double Sd, int Freedom)? pooled)
    {
        Vessel[] used = [.. level.Vessels.Where(v => v is { Uptake: not null, End: { Value: not null, IsBelowDetection: false } })];
        if (used.Length == 0)
            return null;
        var uptake = Mean([.. used.Select(v => v.Uptake!.Value)]);
        var left = Mean([.. used.Select(v => v.End!.Value!.Value)]);
        if (!(uptake.Value > 0 && left.Value > 0))
            return null;
        var scatter = pooled is { } known ? known.Sd * uptake.Value / Math.Sqrt(used.Length) : (double?)null;
        var fromVessels = scatter >= uptake.U;
        double? u = scatter is null ? null : Math.Max(scatter.Value, uptake.U);
        var freedom = fromVessels ? pooled!.Value.Freedom : uptake.DegreesOfFreedom;
        return new(
            Average(v => v.Start?.Value), Average(v => v.Dose?.Value), left.Value, uptake.Value, u, double.IsFinite(freedom) ? freedom : null, used.Length,
            Average(v => v.Sample.Number(BatchProperties.StartPh)), Average(v => v.Sample.Number(BatchProperties.EndPh)),
            Average(v => v.Sample.Number(BatchProperties.Temperature)), Average(v => v.Sample.Number(BatchProperties.ContactTime)));

        double? Average(Func<Vessel, double?> setting) => used.Select(setting).OfType<double>().ToArray() is { Length: > 0 } all ? all.Average() : null;

        // What vessels share (a flask, a line of calibration) does not average out.
        static Measured Mean(Measured[] values) => values.Aggregate((a, b) => a + b) / values.Length;
    }
}
