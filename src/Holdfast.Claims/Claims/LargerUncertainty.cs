using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Claims;

/// <summary>
/// Scatter of replicates and propagated uncertainty answer one question by two ways; the larger counts. What two means share (one
/// flask, one line) cancels in the propagated uncertainty of their difference, as it does in the bench work.
/// </summary>
internal static class LargerUncertainty
{
    /// <summary>The estimate with the larger of its own standard error and the propagated one.</summary>
    /// <param name="estimate">From the scatter of replicates.</param>
    /// <param name="propagated">The same number with its propagated uncertainty, or null when that is not known.</param>
    public static Estimate Of(Estimate estimate, Measured? propagated)
        => propagated is { } p && p.U > estimate.StandardError
            ? estimate with
            {
                StandardError = p.U,
                DegreesOfFreedom = Math.Max(1, p.DegreesOfFreedom),
                Method = estimate.Method + ", propagated uncertainty",
            }
            : estimate;

    /// <summary>Difference of two settings' means, the first less the second.</summary>
    /// <param name="first">First setting.</param>
    /// <param name="second">Second setting.</param>
    /// <param name="sd">Standard deviation of one value, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Estimate Difference(Setting first, Setting second, double sd, double degreesOfFreedom)
        => Of(
            TwoMeans.WithSd(first.Values, second.Values, sd, degreesOfFreedom),
            first.PropagatedMean is { } a && second.PropagatedMean is { } b ? a - b : null);

    /// <summary>Mean of replicates.</summary>
    /// <param name="values">Replicates with their propagated uncertainties, or with none.</param>
    /// <returns>The mean, or null when there is neither scatter nor a propagated uncertainty.</returns>
    public static Estimate? Mean(Setting values)
    {
        var mean = values.PropagatedMean;
        if (Summary.Of(values.Values).MeanEstimate().Value is { } estimate)
            return Of(estimate, mean);
        return mean is { U: > 0 } p
            ? new("mean, propagated uncertainty", p.Value, p.U, Math.Max(1, p.DegreesOfFreedom), values.Values.Length)
            : null;
    }
}
