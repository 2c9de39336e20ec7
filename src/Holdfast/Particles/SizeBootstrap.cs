using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>Interval of a quantile of sizes by drawing the particles again, or whole images where they are named.</summary>
/// <remarks>
/// Percentile interval (B. Efron, Ann. Stat. 7 (1979) 1; from memory). Drawing k blocks from k gives (k − 1)/k of their variance, and so few blocks know their own scatter badly: each side is widened,
/// in the logarithm, by √(k/(k − 1))·t(k − 1)/z. Without it the interval held the truth in 85 to 90 of 100 studies with four or five images (docs/coverage-powder.md).
/// </remarks>
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
        double[][] blocks = Blocks(particles);
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
        var k1 = blocks.Length - 1.0;
        var wider = Math.Sqrt(blocks.Length / k1) * StudentDistribution.TwoSided(confidence, k1) / NormalDistribution.Quantile(1 - tail);
        var found = SizeStatistics.QuantileOf([.. particles.Select(p => p.Size).Order()], share);
        double Side(double end) => found * Math.Pow(end / found, wider);
        return new(Side(SizeStatistics.QuantileOf(drawn, tail)), Side(SizeStatistics.QuantileOf(drawn, 1 - tail)), confidence);
    }

    /// <summary>What is drawn: whole images where enough are named, else single particles.</summary>
    /// <param name="particles">Sizes with their images.</param>
    public static double[][] Blocks(IReadOnlyList<(double Size, string? Image)> particles)
        => SizeComparison.Images(particles) >= SizeComparison.FewestImages
            ? [.. particles.GroupBy(p => p.Image, StringComparer.Ordinal).Select(g => g.Select(p => p.Size).ToArray())]
            : [.. particles.Select(p => new[] { p.Size })];

    /// <summary>The mean by number with its standard error: images count as the values where enough are named, since particles beside each other are alike; null without scatter.</summary>
    /// <param name="particles">Sizes with their images, one or more.</param>
    /// <remarks>Ratio estimate over clusters: u² = k/(k − 1)·Σ(Σd − n·mean)²/N², k − 1 degrees of freedom (W. G. Cochran, Sampling Techniques, 1977; from memory).</remarks>
    public static Estimate? Mean(IReadOnlyList<(double Size, string? Image)> particles)
    {
        ArgumentNullException.ThrowIfNull(particles);
        var blocks = Blocks(particles);
        if (blocks.Length == particles.Count)
            return Summary.Of([.. particles.Select(p => p.Size)]).MeanEstimate().Value;
        var mean = particles.Average(p => p.Size);
        var k = blocks.Length;
        var u = Math.Sqrt(k / (k - 1.0) * blocks.Sum(b => Math.Pow(b.Sum() - b.Length * mean, 2))) / particles.Count;
        return u > 0 ? new("mean by number, images as the values", mean, u, k - 1, k) : null;
    }
}
