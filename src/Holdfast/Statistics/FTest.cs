namespace Holdfast.Statistics;

/// <summary>A ratio of two mean squares and what chance would make of it.</summary>
/// <param name="Method">What is tested, in words.</param>
/// <param name="F">The ratio; no unit.</param>
/// <param name="Above">Degrees of freedom of the numerator.</param>
/// <param name="Below">Degrees of freedom of the denominator.</param>
public sealed record FTest(string Method, double F, double Above, double Below)
{
    /// <summary>Is the first scatter larger than the second?</summary>
    /// <param name="first">Standard deviation thought larger, any unit.</param>
    /// <param name="above">Its degrees of freedom.</param>
    /// <param name="second">The other, above 0, same unit.</param>
    /// <param name="below">Its degrees of freedom.</param>
    public static FTest OfScatter(double first, double above, double second, double below)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(second);
        Probability.RequireDegreesOfFreedom(above);
        Probability.RequireDegreesOfFreedom(below);
        return new("ratio of variances", first * first / (second * second), above, below);
    }

    /// <summary>Probability of a ratio this large by chance; no unit.</summary>
    public double P => FisherDistribution.Above(F, Above, Below);

    /// <summary>The ratio that chance stays below with the stated confidence; no unit.</summary>
    /// <param name="confidence">Between 0 and 1, for example 0.99; no unit.</param>
    public double Critical(double confidence) => FisherDistribution.Quantile(confidence, Above, Below);
}
