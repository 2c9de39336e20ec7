namespace Holdfast.Statistics;

/// <summary>Is one scatter larger than another?</summary>
/// <param name="F">First variance over second; no unit.</param>
/// <param name="Above">Degrees of freedom of the first.</param>
/// <param name="Below">Degrees of freedom of the second.</param>
public sealed record VarianceRatio(double F, double Above, double Below)
{
    /// <summary>Compares two standard deviations.</summary>
    /// <param name="first">The one thought larger, in any unit.</param>
    /// <param name="above">Its degrees of freedom.</param>
    /// <param name="second">The other, above 0, same unit.</param>
    /// <param name="below">Its degrees of freedom.</param>
    public static VarianceRatio Of(double first, double above, double second, double below)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(second);
        Probability.RequireDegreesOfFreedom(above);
        Probability.RequireDegreesOfFreedom(below);
        return new(first * first / (second * second), above, below);
    }

    /// <summary>One-sided p of "the first is not larger"; no unit.</summary>
    public double P => FisherDistribution.Above(F, Above, Below);

    /// <summary>The ratio exceeded by chance once in a hundred; no unit.</summary>
    public double Critical99 => FisherDistribution.Quantile(0.99, Above, Below);
}
