using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Elovich: uptake that slows exponentially with uptake and never levels off.</summary>
/// <remarks>S. Z. Roginsky and J. B. Zeldovich 1934 (from memory).</remarks>
public readonly struct Elovich : ICurve<Elovich>
{
    public static ModelCard Card { get; } = new(
        "Elovich",
        "q = (1/β)·ln(1 + α·β·t)",
        [
            new("α", Kind.Other, "{y}/{x}", "initial rate", Above: 0),
            new("β", Kind.PerResponse, "1/({y})", "how fast the rate falls with uptake", Above: 0),
        ],
        "S. Z. Roginsky and J. B. Zeldovich 1934, from memory",
        "It has no plateau: if it describes the data best, equilibrium was not reached. It shows no spread of energies.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => T.LogP1(p[0] * p[1] * x) / p[1];

    /// <summary>The curve is proportional to 1/β once α·β, one over a time, is held.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c * shapes[0];
        p[1] = 1 / c;
    }

    /// <summary>Time at which uptake reaches q: (exp(β·q) − 1)/(α·β).</summary>
    /// <param name="q">Uptake, in the unit of uptake.</param>
    /// <param name="alpha">Initial rate, uptake per time.</param>
    /// <param name="beta">One over uptake.</param>
    public static T TimeTo<T>(T q, T alpha, T beta) where T : struct, IReal<T> => T.ExpM1(beta * q) / (alpha * beta);
}
