using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Redlich-Peterson: straight at the start, between Langmuir (g = 1) and a power law later.</summary>
/// <remarks>O. Redlich and D. L. Peterson 1959 (from memory).</remarks>
public readonly struct RedlichPeterson : ICurve<RedlichPeterson>
{
    public static ModelCard Card { get; } = new(
        "Redlich-Peterson",
        "q = KR·C / (1 + a·C^g)",
        [
            new("KR", Kind.ResponsePerX, "{y}/({x})", "slope at the start", Above: 0),
            new("a", Kind.Other, "({x})^(−g)", "bend; its unit depends on g", Above: 0),
            new("g", Kind.Exponent, "", "exponent: 1 is Langmuir; the curve is admissible for 0 < g ≤ 1", Above: 0),
        ],
        "O. Redlich and D. L. Peterson 1959, from memory",
        "Admissible for 0 < g ≤ 1; above 1 it has a maximum. No capacity unless g = 1. "
            + "For a·C^g far above 1 only KR/a and g are known (Freundlich, 1/n = 1 − g). A close fit shows no kind of site.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * x / (1 + p[1] * T.Pow(x, p[2]));

    /// <summary>The scan runs over a concentration scale and g, since a itself has a unit that depends on g: a = K^g.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.Exponent];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = Math.Pow(shapes[0], shapes[1]);
        p[2] = shapes[1];
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => p[2] <= 1
            ? []
            : [Finding.Of("HF-475", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"Redlich-Peterson has g = {p[2]:0.000} > 1: the curve has a maximum at C = {MaximumAt(p[1], p[2]):G4}. Reject it for an isotherm."))];

    /// <summary>Concentration of the maximum that exists for g above 1: a·C^g = 1/(g − 1).</summary>
    /// <param name="a">Bend, in the unit of concentration to the power −g.</param>
    /// <param name="g">Exponent above 1, without unit.</param>
    public static double MaximumAt(double a, double g)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(g, 1);
        return Math.Pow(1 / (a * (g - 1)), 1 / g);
    }
}
