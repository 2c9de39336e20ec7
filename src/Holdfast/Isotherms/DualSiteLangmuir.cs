using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Two kinds of Langmuir site side by side, the stronger written first.</summary>
public readonly struct DualSiteLangmuir : ICurve<DualSiteLangmuir>
{
    public static ModelCard Card { get; } = new(
        "Dual-site Langmuir",
        "q = q1·K1·C / (1 + K1·C) + q2·K2·C / (1 + K2·C)",
        [
            new("q1", Kind.Response, "{y}", "capacity of the stronger sites", Above: 0),
            new("K1", Kind.PerX, "1/({x})", "affinity of the stronger sites", Above: 0),
            new("q2", Kind.Response, "{y}", "capacity of the weaker sites", Above: 0),
            new("K2", Kind.PerX, "1/({x})", "affinity of the weaker sites", Above: 0),
        ],
        "Sum of two Langmuir isotherms; common practice",
        "Ten or more levels over three decades of concentration; with less it cannot be told from Freundlich. Two terms do not show two kinds of site.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => Langmuir.Value(x, p[..2]) + Langmuir.Value(x, p[2..4]);

    /// <summary>The scan runs over both affinities and the share of the first kind.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.PerX, Kind.Fraction];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c * shapes[2];
        p[1] = Math.Max(shapes[0], shapes[1]);
        p[2] = c * (1 - shapes[2]);
        p[3] = Math.Min(shapes[0], shapes[1]);
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => Math.Max(p[1], p[3]) > 3 * Math.Min(p[1], p[3])
            ? []
            : [Finding.Of("HF-479", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"The two sites have nearly one affinity ({p[1]:G3} and {p[3]:G3}). The data do not tell two kinds of site apart; use Langmuir."))];
}
