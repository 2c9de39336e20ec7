using Holdfast.Statistics;

namespace Holdfast.Fitting;

/// <summary>An F test: the ratio of two variances and how often chance alone gives more.</summary>
/// <param name="F">Ratio.</param>
/// <param name="Above">Degrees of freedom of the numerator.</param>
/// <param name="Below">Degrees of freedom of the denominator.</param>
/// <param name="P">Probability of a larger ratio.</param>
public sealed record FTest(double F, int Above, int Below, double P)
{
    /// <summary>The test of a ratio.</summary>
    /// <param name="f">Ratio, 0 or above.</param>
    /// <param name="above">Degrees of freedom of the numerator.</param>
    /// <param name="below">Degrees of freedom of the denominator.</param>
    public static FTest Of(double f, int above, int below) => new(f, above, below, FisherDistribution.Above(f, above, below));

    /// <summary>
    /// A curve against one that contains it: F = ((S1 − S2)/(p2 − p1)) / (S2/(n − p2)). Only for nested curves fitted to the same readings with the
    /// same weights; rough when the smaller curve lies on a bound of the larger.
    /// </summary>
    /// <param name="smaller">The curve with fewer parameters.</param>
    /// <param name="larger">The curve that contains it.</param>
    /// <exception cref="ArgumentException">The larger has not more parameters, or nothing is left over to judge by.</exception>
    public static FTest Nested(FitResult smaller, FitResult larger)
    {
        ArgumentNullException.ThrowIfNull(smaller);
        ArgumentNullException.ThrowIfNull(larger);
        var more = larger.P - smaller.P;
        if (more <= 0 || larger.Nu <= 0 || smaller.N != larger.N)
            throw new ArgumentException("The larger curve needs more parameters, the same points, and at least one point to spare.", nameof(larger));
        return Of((smaller.SumOfSquares - larger.SumOfSquares) / more / (larger.SumOfSquares / larger.Nu), more, larger.Nu);
    }
}
