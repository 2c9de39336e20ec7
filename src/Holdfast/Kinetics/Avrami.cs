using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Avrami: an exponential stretched (n below 1) or delayed (n above 1) in time.</summary>
/// <remarks>M. Avrami 1939 (from memory). Some write k·t^n; their k has the unit of time to the power −n.</remarks>
public readonly struct Avrami : ICurve<Avrami>
{
    public static ModelCard Card { get; } = new(
        "Avrami",
        "q = qe·(1 − exp(−(k·t)^n))",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("k", Kind.PerX, "1/{x}", "rate constant: 63 % of qe at t = 1/k", Above: 0),
            new("n", Kind.Exponent, "", "exponent: 1 is pseudo-first-order", Above: 0),
        ],
        "M. Avrami 1939, from memory",
        "An exponent below 1 stretches the curve as a spread of rates, diffusion or a bad zero of time would; it counts no steps and shows no mechanism.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => -p[0] * T.ExpM1(-T.Pow(p[1] * x, p[2]));

    /// <summary>Time to half the uptake, (ln 2)^(1/n)/k.</summary>
    /// <param name="k">Rate constant, one over time.</param>
    /// <param name="n">Exponent, without unit.</param>
    public static T HalfTime<T>(T k, T n) where T : struct, IReal<T> => T.Pow(Math.Log(2), 1 / n) / k;
}
