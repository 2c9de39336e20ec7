using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>How many particles an average needs, for a log-normal distribution: n = z²α²s²(1 + 2c²s²)/δ², c = β + α/2, s = ln GSD.</summary>
/// <remarks>
/// Derived for this project from the delta method; same form as H. Masuda and K. Iinoya, J. Chem. Eng. Jpn 4 (1971) 60 (from memory). ISO 13322-1:2004 says
/// over 6 000 for the mean volume at GSD 1.6 and 5 %, and at least 61 000 for the sixth power, which this gives.
/// </remarks>
/// <param name="Alpha">Power that is averaged.</param>
/// <param name="Beta">Power of the weight: 0 by number, 3 by volume.</param>
public sealed record CountNeeded(int Alpha, int Beta)
{
    /// <summary>Mean diameter by number.</summary>
    public static CountNeeded NumberMean { get; } = new(1, 0);

    /// <summary>Mean diameter by volume.</summary>
    public static CountNeeded VolumeMean { get; } = new(1, 3);

    /// <summary>Mean volume.</summary>
    public static CountNeeded MeanVolume { get; } = new(3, 0);

    /// <summary>Particles needed; broken, round up.</summary>
    /// <param name="gsd">Geometric standard deviation, 1 or more; no unit.</param>
    /// <param name="relativeError">Relative error that is not passed, above 0; no unit.</param>
    /// <param name="probability">How surely, two-sided; no unit.</param>
    public double For(double gsd, double relativeError = 0.05, double probability = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(relativeError);
        return Spread(gsd, probability) / (relativeError * relativeError);
    }

    /// <summary>Relative error reached with the particles counted; no unit.</summary>
    /// <param name="gsd">Geometric standard deviation, 1 or more; no unit.</param>
    /// <param name="counted">Particles counted, 1 or more.</param>
    /// <param name="probability">How surely, two-sided; no unit.</param>
    public double Reached(double gsd, int counted, double probability = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(counted, 1);
        return Math.Sqrt(Spread(gsd, probability) / counted);
    }

    private double Spread(double gsd, double probability)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(gsd, 1);
        double s = Math.Log(gsd), z = NormalDistribution.Quantile(0.5 * (1 + probability)), c = Beta + Alpha / 2.0;
        return z * z * Alpha * Alpha * s * s * (1 + 2 * c * c * s * s);
    }
}
