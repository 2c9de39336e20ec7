using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>Only a share of the emitters can be reached: F levels off and F0/F bends downward.</summary>
/// <remarks>S. S. Lehrer, Biochemistry 10 (1971) 3254 (from memory).</remarks>
public readonly struct AccessibleFraction : ICurve<AccessibleFraction>
{
    public static ModelCard Card { get; } = new(
        "Accessible fraction",
        "F = F0·(1 − fa + fa / (1 + Ka·Q))",
        [
            new("F0", Kind.Response, "{y}", "signal without quencher", Above: 0),
            new("fa", Kind.Fraction, "", "share of the signal that the quencher reaches", Above: 0, Below: 1),
            new("Ka", Kind.PerX, "1/{x}", "quenching constant of that share", Above: 0),
        ],
        "S. S. Lehrer, Biochemistry 10 (1971) 3254, from memory",
        "With fa near 1 it is Stern-Volmer. A background that was not subtracted gives the same curve, and two straight pieces of it show no two mechanisms.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * (1 - p[1] + p[1] / (1 + p[2] * x));
}
