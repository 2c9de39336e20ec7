using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>Collisions, and emitters that never light up because a quencher already stands beside them: F0/F bends upward.</summary>
/// <remarks>J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8 (from memory); after J. M. Frank and S. I. Wawilow 1931 (from memory).</remarks>
public readonly struct SphereOfAction : ICurve<SphereOfAction>
{
    public static ModelCard Card { get; } = new(
        "Sphere of action",
        "F = F0·exp(−V·Q) / (1 + K·Q)",
        [
            new("F0", Kind.Response, "{y}", "signal without quencher", Above: 0),
            new("K", Kind.PerX, "1/{x}", "quenching constant of the collisions", Above: 0),
            new("V", Kind.PerX, "1/{x}", "volume of the sphere in which a quencher acts at once, by amount", Above: 0),
        ],
        "J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8, from memory",
        "Rarely told apart from static with dynamic quenching. A close fit shows no sphere; ask whether its radius is one.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * T.Exp(-p[2] * x) / (1 + p[1] * x);

    /// <summary>Radius of the sphere, nm. Some 1 nm is a distance of contact; 10 nm is not.</summary>
    /// <param name="v">Volume by amount, L/µmol.</param>
    public static double RadiusNm(double v)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(v);
        const double cubicNanometresPerLitre = 1e24;
        return Math.Cbrt(3 * v * 1e6 * cubicNanometresPerLitre / (4 * Math.PI * Constants.Avogadro));
    }
}
