using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Competition;

/// <summary>
/// Which of two ions a sorbent prefers: the ratio of their distribution coefficients in one vessel, by amount of substance. Single-ion capacities
/// do not give it, and equal milligrams favour the heavy ion.
/// </summary>
/// <remarks>α(A/B) = Kd,A/Kd,B with Kd = (c0 − c)/c·V/m; volume and mass cancel.</remarks>
public static class Selectivity
{
    /// <summary>Selectivity coefficient α(A/B); no unit.</summary>
    /// <param name="firstAtStart">A at the start, mmol/L.</param>
    /// <param name="firstLeft">A left, mmol/L, above 0.</param>
    /// <param name="secondAtStart">B at the start, mmol/L.</param>
    /// <param name="secondLeft">B left, mmol/L, above 0 and below its start.</param>
    public static T Coefficient<T>(T firstAtStart, T firstLeft, T secondAtStart, T secondLeft) where T : struct, IReal<T>
        => (firstAtStart - firstLeft) / firstLeft * secondLeft / (secondAtStart - secondLeft);

    /// <summary>Geometric mean over vessels with the scatter of its logarithm.</summary>
    /// <param name="coefficients">α of each vessel, above 0.</param>
    public static Outcome<Estimate> Mean(IReadOnlyList<double> coefficients) => Ratio.GeometricMean(coefficients);

    /// <summary>Geometric mean over vessels by the larger of the scatter of its logarithm and what the vessels' own uncertainties leave; null without either.</summary>
    /// <param name="coefficients">α of each vessel, above 0.</param>
    public static Estimate? Mean(IReadOnlyList<Measured> coefficients)
    {
        ArgumentNullException.ThrowIfNull(coefficients);
        if (coefficients.Count == 0 || coefficients.Any(c => !(c.Value > 0)))
            return null;
        Measured log = 0;
        foreach (var c in coefficients)
            log += Measured.Log(c) / coefficients.Count;
        var carried = log.U == 0 ? null
            : new Estimate("geometric mean, propagated uncertainty", Math.Exp(log.Value), log.U, Math.Max(1, log.DegreesOfFreedom), coefficients.Count, Scale.Logarithmic);
        var scatter = Mean((IReadOnlyList<double>)[.. coefficients.Select(c => c.Value)]).Value;
        return scatter is null ? carried : carried is null ? scatter : scatter.AtLeast(carried.StandardError, carried.DegreesOfFreedom);
    }
}
