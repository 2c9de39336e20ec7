using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>Interval of a quantile of sizes by drawing the particles again, or whole images where they are named.</summary>
/// <remarks>Percentile interval (B. Efron, Ann. Stat. 7 (1979) 1; from memory), narrow for D90 of few particles.</remarks>
public static class SizeBootstrap
{
    private const int Draws = 2000;

    /// <summary>Interval of the size below which a share of the particles lies, counted by number; in the unit of the sizes.</summary>
    /// <param name="particles">Sizes with their images, two or more.</param>
    /// <param name="share">0.5 for D50, 0.9 for D90; no unit.</param>
    /// <param name="seed">Seed of the study: the same seed gives the same interval.</param>
    /// <param name="confidence">Between 0 and 1; no unit.</param>
    public static Interval Quantile(IReadOnlyList<(double Size, string? Image)> particles, double share, ulong seed, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(particles);
        ArgumentOutOfRangeException.ThrowIfLessThan(particles.Count, 2, nameof(particles));
        Probability.Require(share);
        Probability.Require(confidence);
        double[][] blocks = SizeComparison.Images(particles) >= SizeComparison.FewestImages
            ? [.. particles.GroupBy(p => p.Image, StringComparer.Ordinal).Select(g => g.Select(p => p.Size).ToArray())]
            : [.. particles.Select(p => new[] { p.Size })];
        var random = new SeededStream(seed, "particle sizes");
        var drawn = new double[Draws];
        var again = new List<double>(particles.Count);
        for (var d = 0; d < Draws; d++)
        {
            again.Clear();
            for (var k = 0; k < blocks.Length; k++)
                again.AddRange(blocks[random.Below(blocks.Length)]);
            again.Sort();
            drawn[d] = SizeStatistics.QuantileOf([.. again], share);
        }

        Array.Sort(drawn);
        var tail = 0.5 * (1 - confidence);
        return new(SizeStatistics.QuantileOf(drawn, tail), SizeStatistics.QuantileOf(drawn, 1 - tail), confidence);
    }
}
