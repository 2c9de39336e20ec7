using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Toth: straight at the start and level at the end, with a slower bend than Langmuir for t below 1.</summary>
/// <remarks>J. Toth 1971 (from memory).</remarks>
public readonly struct Toth : ICurve<Toth>
{
    public static ModelCard Card { get; } = new(
        "Toth",
        "q = qm·K·C / (1 + (K·C)^t)^(1/t)",
        [
            new("qm", Kind.Response, "{y}", "capacity", Above: 0),
            new("K", Kind.PerX, "1/({x})", "affinity: qm·K is the slope at the start", Above: 0),
            new("t", Kind.Exponent, "", "exponent: 1 is Langmuir, smaller bends more slowly", Above: 0),
        ],
        "J. Toth 1971, from memory",
        "Has both the Henry and the saturation limit. A small t pushes qm far beyond the data: such a capacity belongs to the curve, not to the material. "
            + "A close fit does not show a spread of energies.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var reduced = p[1] * x;

        // u/(1 + u^t)^(1/t) = (1 + u^(−t))^(−1/t): each side of u = 1 in the form that cannot overflow.
        return reduced.Value <= 1
            ? p[0] * reduced * T.Exp(-T.LogP1(T.Pow(reduced, p[2])) / p[2])
            : p[0] * T.Exp(-T.LogP1(T.Pow(reduced, -p[2])) / p[2]);
    }
}
