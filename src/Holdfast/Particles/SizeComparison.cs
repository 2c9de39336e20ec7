using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>
/// Two powders by their particles. The headline is the ratio of geometric means by Welch on ln d, chosen before the data are seen; the others support it.
/// Particles of one batch say nothing of the next batch.
/// </summary>
/// <param name="Ratio">First over second, geometric means.</param>
/// <param name="Means">First less second, arithmetic means, Welch.</param>
/// <param name="Ranks">Mann–Whitney with the Hodges–Lehmann shift.</param>
/// <param name="Shapes">Kolmogorov–Smirnov.</param>
/// <param name="Unit">What counts as one value: particles, or images where there are enough of them.</param>
public sealed record SizeComparison(Estimate Ratio, Estimate Means, MannWhitney Ranks, KolmogorovSmirnov Shapes, SizeUnit Unit)
{
    /// <summary>Images of each powder from which the images are the values and no longer the particles.</summary>
    public const int FewestImages = 4;

    /// <summary>Compares two powders.</summary>
    /// <param name="first">Sizes of the first with the image that each was seen in; null where nobody said.</param>
    /// <param name="second">Sizes of the second, same unit.</param>
    /// <param name="scaleRelativeU">Relative standard uncertainty of the scale that the two do not share; 0 for one magnification and calibration; no unit.</param>
    public static Outcome<SizeComparison> Of(
        IReadOnlyList<(double Size, string? Image)> first, IReadOnlyList<(double Size, string? Image)> second, double scaleRelativeU = 0)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        double[] a = [.. first.Select(p => p.Size)], b = [.. second.Select(p => p.Size)];
        var unit = Images(first) >= FewestImages && Images(second) >= FewestImages ? SizeUnit.Images : SizeUnit.Particles;
        var ratio = unit == SizeUnit.Images ? Statistics.Ratio.OfGeometricMeans(ImageMeans(first), ImageMeans(second)) : Statistics.Ratio.OfGeometricMeans(a, b);
        var means = TwoMeans.Welch(a, b);
        var ranks = MannWhitney.Of(a, b);
        if (ratio.Value is null || means.Value is null || ranks.Value is null)
            return Outcome<SizeComparison>.None([.. ratio.Findings, .. means.Findings, .. ranks.Findings]);

        // Both scales are in doubt: the error of ln ratio has √2 of one scale's.
        var widened = Math.Sqrt(ratio.Value.StandardError * ratio.Value.StandardError + 2 * scaleRelativeU * scaleRelativeU);
        return new(new(ratio.Value with { StandardError = widened }, means.Value, ranks.Value, KolmogorovSmirnov.Of(a, b), unit), []);
    }

    /// <summary>Different images that are named; 0 where none is.</summary>
    /// <param name="particles">Sizes with their images.</param>
    public static int Images(IReadOnlyList<(double Size, string? Image)> particles)
    {
        ArgumentNullException.ThrowIfNull(particles);
        return particles.Any(p => p.Image is null) ? 0 : particles.Select(p => p.Image).Distinct(StringComparer.Ordinal).Count();
    }

    /// <summary>Geometric mean of each image, in order of first appearance, in the unit of the sizes.</summary>
    /// <param name="particles">Sizes with their images, all named.</param>
    public static double[] ImageMeans(IReadOnlyList<(double Size, string? Image)> particles)
    {
        ArgumentNullException.ThrowIfNull(particles);
        return [.. particles.GroupBy(p => p.Image, StringComparer.Ordinal).Select(g => Math.Exp(g.Average(p => Math.Log(p.Size))))];
    }
}

/// <summary>What counts as one value when sizes are compared.</summary>
public enum SizeUnit
{
    /// <summary>Each particle: right only if they were taken at random, not in clusters.</summary>
    Particles,

    /// <summary>Each image, since particles beside each other are alike.</summary>
    Images,
}
