using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>Quenching by one process: F0/F is a straight line over the quencher.</summary>
/// <remarks>O. Stern and M. Volmer, Physikalische Zeitschrift 20 (1919) 183 (from memory). Fitted as F, so that F0 is a parameter like any other.</remarks>
public readonly struct SternVolmer : ICurve<SternVolmer>
{
    public static ModelCard Card { get; } = new(
        "Stern-Volmer",
        "F = F0 / (1 + K·Q)",
        [
            new("F0", Kind.Response, "{y}", "signal without quencher", Above: 0),
            new("K", Kind.PerX, "1/{x}", "quenching constant: half of the signal is lost at Q = 1/K", Above: 0),
        ],
        "O. Stern and M. Volmer, Phys. Z. 20 (1919) 183, from memory",
        "A straight line of F0/F shows neither collisions nor complexes: both give it, and so does light lost to absorption. Lifetimes tell.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] / (1 + p[1] * x);

    /// <summary>Quencher at which half of the signal is left, 1/K, in the unit of Q.</summary>
    /// <param name="k">Quenching constant, one over the unit of Q.</param>
    public static T HalfQuenching<T>(T k) where T : struct, IReal<T> => 1 / k;
}
