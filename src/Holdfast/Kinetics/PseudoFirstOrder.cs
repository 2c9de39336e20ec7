using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Pseudo-first-order uptake.</summary>
/// <remarks>S. Lagergren 1898 (from memory). Also the exact shape of film diffusion with a straight isotherm.</remarks>
public readonly struct PseudoFirstOrder : ICurve<PseudoFirstOrder>
{
    public static ModelCard Card { get; } = new(
        "Pseudo-first-order",
        "q = qe·(1 − exp(−k1·t))",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("k1", Kind.PerX, "1/{x}", "rate constant", Above: 0),
        ],
        "S. Lagergren 1898, from memory",
        "qe is measured only if the last times reach it. The curve is also that of film diffusion: it shows no mechanism.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => -p[0] * T.ExpM1(-p[1] * x);

    /// <summary>Initial rate qe·k1, uptake per time.</summary>
    /// <param name="qe">Uptake at equilibrium, in the unit of uptake.</param>
    /// <param name="k1">Rate constant, one over time.</param>
    public static T InitialRate<T>(T qe, T k1) where T : struct, IReal<T> => qe * k1;

    /// <summary>Time to half the uptake, ln 2 / k1.</summary>
    /// <param name="k1">Rate constant, one over time.</param>
    public static T HalfTime<T>(T k1) where T : struct, IReal<T> => Math.Log(2) / k1;
}
