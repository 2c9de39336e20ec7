using Holdfast.Statistics;

namespace Holdfast.Amounts;

/// <summary>What the draws of a Monte Carlo propagation say.</summary>
/// <param name="Draws">How many draws it rests on.</param>
/// <param name="Mean">Mean of the draws; null when the distribution has none.</param>
/// <param name="U">Standard deviation of the draws; null when the distribution has none.</param>
/// <param name="Median">Median.</param>
/// <param name="EqualTails">Interval with equal tails.</param>
/// <param name="Shortest">Shortest interval.</param>
/// <param name="Settled">True when more draws would not change a digit shown.</param>
public sealed record PropagatedDistribution(int Draws, double? Mean, double? U, double Median, Interval EqualTails, Interval Shortest, bool Settled)
{
    /// <summary>A ratio whose denominator is known less well than this has neither mean nor standard uncertainty worth the name; share.</summary>
    public const double LargestDenominatorU = 0.10;

    /// <summary>True when the two intervals differ by more than a tenth of their width, so that both are shown.</summary>
    public bool IsSkewed
        => Math.Max(Math.Abs(EqualTails.Low - Shortest.Low), Math.Abs(EqualTails.High - Shortest.High)) > 0.1 * (EqualTails.High - EqualTails.Low);

    /// <summary>Reads the distribution off sorted draws (JCGM 101, 7.6 and 7.7).</summary>
    /// <param name="sorted">Draws in rising order, in the unit of the result.</param>
    /// <param name="confidence">Coverage probability; no unit.</param>
    /// <param name="hasMoments">False when mean and standard deviation do not exist.</param>
    /// <param name="settled">True when more draws would not change a digit shown.</param>
    internal static PropagatedDistribution Of(double[] sorted, double confidence, bool hasMoments, bool settled)
    {
        var (mean, u) = Moments(sorted);
        var m = sorted.Length;
        var q = Math.Min((int)Math.Floor(confidence * m + 0.5), m - 1);
        var shortest = 0;
        for (var r = 1; r < m - q; r++)
        {
            if (sorted[r + q] - sorted[r] < sorted[shortest + q] - sorted[shortest])
                shortest = r;
        }

        var (low, high) = Tails(sorted, confidence);
        return new(
            m, hasMoments ? mean : null, hasMoments ? u : null, sorted[m / 2],
            new(low, high, confidence), new(sorted[shortest], sorted[shortest + q], confidence), settled);
    }

    internal static (double Mean, double U) Moments(ReadOnlySpan<double> draws)
    {
        double mean = 0, squares = 0;
        foreach (var y in draws)
            mean += y / draws.Length;
        foreach (var y in draws)
            squares += (y - mean) * (y - mean);
        return (mean, Math.Sqrt(squares / (draws.Length - 1)));
    }

    internal static (double Low, double High) Tails(ReadOnlySpan<double> sorted, double confidence)
    {
        var q = Math.Min((int)Math.Floor(confidence * sorted.Length + 0.5), sorted.Length - 1);
        var r = Math.Max((sorted.Length - q + 1) / 2 - 1, 0);
        return (sorted[r], sorted[r + q]);
    }
}
