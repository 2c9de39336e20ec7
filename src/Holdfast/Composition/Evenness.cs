using Holdfast.Statistics;

namespace Holdfast.Composition;

/// <summary>Do spots differ more than the counting of X-rays lets expect?</summary>
/// <remarks>χ² = Σ(r − r̄)²/(r̄·rsd)², n − 1 degrees of freedom (common practice).</remarks>
/// <param name="ChiSquare">χ²; no unit.</param>
/// <param name="DegreesOfFreedom">Spots less one.</param>
/// <param name="P">Chance of as much spread or more from counting alone; no unit.</param>
public sealed record Evenness(double ChiSquare, int DegreesOfFreedom, double P)
{
    /// <summary>Below this p the spots are uneven beyond counting error; no unit.</summary>
    public const double Level = 0.05;

    /// <summary>True when counting alone does not explain the spread.</summary>
    public bool IsUneven => P < Level;

    /// <summary>Compares the spread of a ratio with its counting error.</summary>
    /// <param name="ratios">The ratio in each spot, three or more, mean above 0; no unit.</param>
    /// <param name="countingRelativeSd">Relative standard deviation of one ratio from counting, above 0; no unit.</param>
    public static Evenness Of(IReadOnlyList<double> ratios, double countingRelativeSd)
    {
        var summary = Summary.Of(ratios);
        ArgumentOutOfRangeException.ThrowIfLessThan(summary.N, 3, nameof(ratios));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(summary.Mean, nameof(ratios));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(countingRelativeSd);
        var expected = summary.Mean * countingRelativeSd;
        var chi = summary.Sd!.Value * summary.Sd.Value * (summary.N - 1) / (expected * expected);
        return new(chi, summary.N - 1, ChiSquareDistribution.Above(chi, summary.N - 1));
    }
}
