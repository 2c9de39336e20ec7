using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Fluorescence;

/// <summary>
/// One quencher on each site, with the sites counted: what is bound is no longer free, so that the curve bends where the quencher added reaches
/// the sites present. The abscissa is the quencher added over the sites, Q/H0.
/// </summary>
/// <remarks>
/// Mass balance of H + Q = HQ: θ is the smaller root of θ² − (1 + x + 1/k)·θ + x = 0 with x = Q/H0 and k = K·H0 (derived; any text on binding).
/// Written as 2x over the sum of both terms, which loses no digits where the two nearly cancel.
/// </remarks>
public readonly struct BindingWithDepletion : ICurve<BindingWithDepletion>
{
    public static ModelCard Card { get; } = new(
        "1:1 binding with depletion",
        "F = F0·(1 − (1 − r)·θ), θ² − (1 + x + 1/k)·θ + x = 0",
        [
            new("F0", Kind.Response, "{y}", "signal without quencher", Above: 0),
            new("r", Kind.Fraction, "", "share of the signal left when every site is taken", Above: 0, Below: 1),
            new("k", Kind.PerX, "1/{x}", "binding constant times the concentration of sites, K·H0", Above: 0),
        ],
        "mass balance of one site and one quencher, derived",
        "Needs the concentration of sites, counted independently. A close fit shows no 1:1 complex: the double logarithmic slope near 1 is no evidence either.")
    {
        Abscissa = "Q/H0",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var sum = 1 + x + 1 / p[2];
        var taken = 2 * x / (sum + T.Sqrt(sum * sum - 4 * x));
        return p[0] * (1 - (1 - p[1]) * taken);
    }

    /// <summary>Binding constant from the fitted k, one over the unit of H0.</summary>
    /// <param name="k">K·H0, no unit.</param>
    /// <param name="sites">Concentration of sites H0, in the unit of Q.</param>
    public static T BindingConstant<T>(T k, T sites) where T : struct, IReal<T> => k / sites;
}
