using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Two first-order processes side by side, the faster written first.</summary>
/// <remarks>A. Wilczak and T. M. Keinath 1993 (from memory).</remarks>
public readonly struct DoubleExponential : ICurve<DoubleExponential>
{
    public static ModelCard Card { get; } = new(
        "Double exponential",
        "q = qe·(1 − a·exp(−kf·t) − (1 − a)·exp(−ks·t))",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("a", Kind.Fraction, "", "share of the fast process", Above: 0, Below: 1),
            new("kf", Kind.PerX, "1/{x}", "rate constant of the fast process", Above: 0),
            new("ks", Kind.PerX, "1/{x}", "rate constant of the slow process", Above: 0),
        ],
        "A. Wilczak and T. M. Keinath 1993, from memory",
        "Four parameters: ten or more times. With kf near ks it is pseudo-first-order. Two terms do not show two processes.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => -p[0] * (p[1] * T.ExpM1(-p[2] * x) + (1 - p[1]) * T.ExpM1(-p[3] * x));

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = shapes[0];
        p[2] = Math.Max(shapes[1], shapes[2]);
        p[3] = Math.Min(shapes[1], shapes[2]);
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => Math.Max(p[2], p[3]) > 3 * Math.Min(p[2], p[3])
            ? []
            : [Finding.Of("HF-473", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"The two rates are nearly one ({p[2]:G3} and {p[3]:G3}). The data do not tell two processes apart; use pseudo-first-order."))];
}
