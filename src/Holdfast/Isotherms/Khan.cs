using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Khan: Langmuir at a = 1, without limit below, with a maximum above.</summary>
/// <remarks>A. R. Khan and co-workers 1996 (from memory).</remarks>
public readonly struct Khan : ICurve<Khan>
{
    public static ModelCard Card { get; } = new(
        "Khan",
        "q = qs·b·C / (1 + b·C)^a",
        [
            new("qs", Kind.Response, "{y}", "scale of uptake; a capacity only at a = 1", Above: 0),
            new("b", Kind.PerX, "1/({x})", "affinity: qs·b is the slope at the start", Above: 0),
            new("a", Kind.Exponent, "", "exponent: 1 is Langmuir; the curve is admissible for 0 < a ≤ 1", Above: 0),
        ],
        "A. R. Khan and co-workers 1996, from memory",
        "Admissible for 0 < a ≤ 1: above 1 uptake falls beyond C = 1/(b·(a − 1)). Below 1 uptake has no limit and qs is no capacity. "
            + "A close fit shows no kind of site.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var reduced = p[1] * x;
        return p[0] * reduced * T.Exp(-p[2] * T.LogP1(reduced));
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => p[2] <= 1
            ? []
            : [Finding.Of("HF-476", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"Khan has a = {p[2]:0.000} > 1: uptake falls beyond C = {MaximumAt(p[1], p[2]):G4}. Reject it for an isotherm."))];

    /// <summary>Concentration of the maximum that exists for a above 1: 1/(b·(a − 1)).</summary>
    /// <param name="b">Affinity, one over the unit of concentration.</param>
    /// <param name="a">Exponent above 1, without unit.</param>
    public static double MaximumAt(double b, double a)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(a, 1);
        return 1 / (b * (a - 1));
    }
}
