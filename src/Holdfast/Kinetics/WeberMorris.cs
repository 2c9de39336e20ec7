using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Weber-Morris: a line on the square root of time.</summary>
/// <remarks>W. J. Weber and J. C. Morris 1963 (from memory).</remarks>
public readonly struct WeberMorris : ICurve<WeberMorris>
{
    public static ModelCard Card { get; } = new(
        "Weber-Morris",
        "q = ki·√t + c",
        [
            new("ki", Kind.Other, "{y}·{x}^(−1/2)", "slope on the square root of time", Above: 0),
            new("c", Kind.Other, "{y}", "intercept; not a layer thickness"),
        ],
        "W. J. Weber and J. C. Morris 1963, from memory",
        "The square-root law holds to 5 % up to F = 0.17. Pore diffusion as the only control needs one line, an intercept whose interval contains 0, and F below 0.3. "
            + "Hand-drawn segments are no evidence.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => x.Value == 0 ? p[1] : p[0] * T.Sqrt(x) + p[1];

    /// <summary>A straight line: the fit starts from the line through the origin and needs no scan.</summary>
    public static IReadOnlyList<Kind> Scan => [];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = 0;
    }
}
