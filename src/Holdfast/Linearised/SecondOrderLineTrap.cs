using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Linearised;

/// <summary>
/// What the line of t/q on t gives when there is nothing to find: uptake constant in time, read with scatter at the study's own times.
/// A high R² from such data shows that the R² of this plot is no evidence.
/// </summary>
/// <param name="MedianRSquared">Median R² over the drawn sets.</param>
/// <param name="ShareAbove">Share of sets whose R² is above 0.95.</param>
/// <param name="Sets">Number of sets drawn.</param>
public readonly record struct SecondOrderLineTrap(double MedianRSquared, double ShareAbove, int Sets)
{
    /// <summary>Draws sets of constant uptake and fits the line to each.</summary>
    /// <param name="times">Times above 0, at least two different.</param>
    /// <param name="scatter">Relative standard deviation of an uptake, above 0, for example 0.05.</param>
    /// <param name="sets">Number of sets.</param>
    /// <param name="seed">Seed of the study.</param>
    public static SecondOrderLineTrap ForConstantUptake(ReadOnlySpan<double> times, double scatter, int sets, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scatter);
        ArgumentOutOfRangeException.ThrowIfLessThan(sets, 1);
        var chance = new SeededStream(seed, "t/q on t, constant uptake");
        var found = new double[sets];
        var y = new double[times.Length];
        for (var set = 0; set < sets; set++)
        {
            for (var i = 0; i < y.Length; i++)
                y[i] = times[i] / (1 + scatter * chance.Normal());
            found[set] = StraightLine.Through(times, y).RSquared ?? 0;
        }

        Array.Sort(found);
        var median = (found[(sets - 1) / 2] + found[sets / 2]) / 2;
        return new(median, found.Count(r => r > 0.95) / (double)sets, sets);
    }
}
