using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Langmuir: one kind of site, one ion on each, no pull between neighbours.</summary>
/// <remarks>I. Langmuir, J. Am. Chem. Soc. 40 (1918) 1361–1403.</remarks>
public readonly struct Langmuir : ICurve<Langmuir>
{
    public static ModelCard Card { get; } = new(
        "Langmuir",
        "q = qm·K·C / (1 + K·C)",
        [
            new("qm", Kind.Response, "{y}", "capacity: uptake with every site filled", Above: 0),
            new("K", Kind.PerX, "1/({x})", "affinity: half the sites are filled at C = 1/K", Above: 0),
        ],
        "I. Langmuir, J. Am. Chem. Soc. 40 (1918) 1361",
        "qm and K are known apart only if the data reach coverage 0.5 and more and start well below it. "
            + "A close fit shows neither a monolayer nor one kind of site.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var filled = p[1] * x;
        return p[0] * filled / (1 + filled);
    }

    /// <summary>Coverage K·C / (1 + K·C), the share of the fitted capacity in use.</summary>
    /// <param name="k">Affinity, in one over the unit of <paramref name="c"/>.</param>
    /// <param name="c">Equilibrium concentration.</param>
    public static T Coverage<T>(T k, T c) where T : struct, IReal<T>
    {
        var filled = k * c;
        return filled / (1 + filled);
    }

    /// <summary>
    /// Separation factor 1 / (1 + K·C0). It lies between 0 and 1 for every positive K and C0, by construction: it restates K and
    /// tests nothing, so that "favourable" may never rest on it.
    /// </summary>
    /// <param name="k">Affinity, in one over the unit of <paramref name="c0"/>.</param>
    /// <param name="c0">Starting concentration.</param>
    /// <remarks>Weber and Chakravorti 1974, from memory.</remarks>
    public static T SeparationFactor<T>(T k, T c0) where T : struct, IReal<T> => 1 / (1 + k * c0);
}
