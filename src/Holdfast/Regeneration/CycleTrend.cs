using Holdfast.Statistics;

namespace Holdfast.Regeneration;

/// <summary>How uptake changes over the cycles, with intervals.</summary>
/// <param name="PerCycle">Change per cycle by a straight line, in the unit of uptake.</param>
/// <param name="KeptPerCycle">Share kept from one cycle to the next, from the line of ln q; no unit, symmetric on the logarithm. Null when a value is 0 or below.</param>
/// <param name="FirstByLine">Uptake in the first cycle by the straight line, in the unit of uptake.</param>
/// <param name="Rank">Rank correlation of uptake with cycle number, which assumes no shape; null with too few values.</param>
public sealed record CycleTrend(Estimate PerCycle, Estimate? KeptPerCycle, double FirstByLine, Kendall? Rank)
{
    /// <summary>Loss per cycle as a share of the first uptake by the line; below 0 when uptake rises; no unit.</summary>
    public double LossPerCycle => -PerCycle.Value / FirstByLine;

    /// <summary>The trend of uptakes over cycle numbers; replicates stand side by side with the same number.</summary>
    /// <param name="cycles">Cycle of each value, from 1.</param>
    /// <param name="uptakes">Uptakes in the same order, one unit.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static Outcome<CycleTrend> Of(IReadOnlyList<int> cycles, IReadOnlyList<double> uptakes)
    {
        ArgumentNullException.ThrowIfNull(cycles);
        ArgumentNullException.ThrowIfNull(uptakes);
        if (cycles.Count != uptakes.Count)
            throw new ArgumentException($"There are {cycles.Count} cycles and {uptakes.Count} uptakes.", nameof(uptakes));
        double[] x = [.. cycles.Select(i => (double)i)];
        var slope = LinearTrend.Of(x, uptakes);
        if (slope.Value is not { } perCycle)
            return new(null, slope.Findings);
        var first = CentredSums.Mean(uptakes) + perCycle.Value * (1 - CentredSums.Mean(x));
        var kept = uptakes.All(q => q > 0) ? LinearTrend.Of(x, [.. uptakes.Select(q => Math.Log(q))]).Value : null;
        return new(
            new(perCycle, kept is null ? null : kept with { Value = Math.Exp(kept.Value), Scale = Scale.Logarithmic, Method = "share kept per cycle, line of ln q" },
                first, Kendall.Of(x, uptakes).Value),
            cycles.Distinct().Count() == 3
                ? [Finding.Of("HF-620", Weight.Caution, "Three cycles: no trend short of a collapse can be shown. Run at least five.")]
                : []);
    }
}
