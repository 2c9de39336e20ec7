using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>
/// Collisions and complexes together: F0/F = (1 + KD·Q)(1 + KS·Q) bends upward. The two constants enter alike, so the fit gives their sum and
/// product; intensities cannot say which of the two is which.
/// </summary>
/// <remarks>J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8 (from memory).</remarks>
public readonly struct StaticAndDynamic : ICurve<StaticAndDynamic>
{
    public static ModelCard Card { get; } = new(
        "Static and dynamic",
        "F = F0 / (1 + S·Q + P·Q²)",
        [
            new("F0", Kind.Response, "{y}", "signal without quencher", Above: 0),
            new("S", Kind.PerX, "1/{x}", "sum of the static and the dynamic constant, KD + KS", Above: 0),
            new("P", Kind.Other, "1/({x}·{x})", "product of the two, KD·KS", Above: 0),
        ],
        "J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8, from memory",
        "Which constant is the static one, the curve does not show: lifetimes do. Real constants need S² ≥ 4P. The sphere of action bends nearly alike.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] / (1 + x * (p[1] + p[2] * x));

    /// <summary>The scan runs over the sum and over 4P/S², which lies between 0 and 1 for real constants.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.Fraction];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = shapes[0];
        p[2] = shapes[1] * shapes[0] * shapes[0] / 4;
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => Constants(p[1], p[2]) is not null
            ? []
            : [FluorescenceFindings.ConstantsNotReal(p[1], p[2])];

    /// <summary>The two constants from their sum and product, larger first, in one over the unit of Q; null when they are not real.</summary>
    /// <param name="sum">KD + KS, one over the unit of Q.</param>
    /// <param name="product">KD·KS, one over the unit of Q squared.</param>
    public static (double Larger, double Smaller)? Constants(double sum, double product)
    {
        var discriminant = sum * sum - 4 * product;
        if (!(discriminant >= 0))
            return null;
        var larger = (sum + Math.Sqrt(discriminant)) / 2;
        return (larger, larger == 0 ? 0 : product / larger);
    }
}
