using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.BatchSorption;

/// <summary>Whether a vessel lost solute at all, and how much uptake it would have taken to see it (rule B1).</summary>
/// <remarks>
/// Scheme of L. A. Currie, Anal. Chem. 40 (1968) 586–593 (from memory): decision at 1.645 u with 5 % false alarms, detection at twice that.
/// Where u rests on few readings, Student's t at 95 % one-sided takes the place of 1.645.
/// </remarks>
/// <param name="Z">Difference over its uncertainty, (C0 − Ce)/u; null when the difference has no uncertainty.</param>
/// <param name="CriticalUptake">Smallest uptake that counts as shown, mg/g.</param>
/// <param name="DetectableUptake">Uptake that would be seen in 95 of 100 such vessels, mg/g.</param>
/// <param name="Removed">Holds when solute was removed; contradicted when the vessel gained some.</param>
public sealed record Significance(double? Z, double CriticalUptake, double DetectableUptake, Ruling Removed)
{
    /// <summary>One-sided 95 % point of the normal distribution, as the scheme rounds it.</summary>
    public const double OneSided = 1.645;

    /// <summary>Judges one vessel.</summary>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="c">Concentration at the end, mg/L; what it shares with <paramref name="c0"/> is taken into account.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g, above 0.</param>
    public static Significance Of(Measured c0, Measured c, double volume, double mass)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass);
        var difference = c0 - c;
        var u = difference.U;
        if (u == 0)
            return new(null, 0, 0, difference.Value > 0 ? Ruling.Holds : difference.Value < 0 ? Ruling.Contradicted : Ruling.NotShownYet);

        var point = OneSidedPoint(difference);
        var z = difference.Value / u;
        var critical = point * u * volume / mass;
        return new(z, critical, 2 * critical, z > point ? Ruling.Holds : z < -point ? Ruling.Contradicted : Ruling.NotShownYet);
    }

    /// <summary>Standard uncertainties to a one-sided 95 % limit: 1.645, or Student's t where the uncertainty rests on few readings; no unit.</summary>
    /// <param name="value">The value the limit is for.</param>
    public static double OneSidedPoint(Measured value)
        => double.IsPositiveInfinity(value.DegreesOfFreedom) ? OneSided : StudentDistribution.Quantile(0.95, value.DegreesOfFreedom);
}
