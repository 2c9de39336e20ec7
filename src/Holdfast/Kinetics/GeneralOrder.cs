using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Uptake of free order n: first order at n = 1, second at n = 2.</summary>
/// <remarks>
/// The solution of dq/dt = kn·(qe − q)^n with k = kn·qe^(n−1), which is one over a time for every n. Below n = 1 the plateau is reached at the
/// finite time 1/((1 − n)·k) and the curve stays there.
/// </remarks>
public readonly struct GeneralOrder : ICurve<GeneralOrder>
{
    /// <summary>Highest order a fit may take; an order that ends here was not determined.</summary>
    public const double HighestOrder = 10;

    public static ModelCard Card { get; } = new(
        "General order",
        "q = qe·(1 − (1 + (n − 1)·k·t)^(−1/(n − 1)))",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("k", Kind.PerX, "1/{x}", "rate constant kn·qe^(n−1)", Above: 0),
            new("n", Kind.Exponent, "", "order: 1 is pseudo-first-order, 2 pseudo-second-order", Above: 0, Below: HighestOrder),
        ],
        "Solved from dq/dt = kn·(qe − q)^n",
        "Without a plateau in the data n and qe run away together. The order is a shape: it shows no molecularity.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var time = p[1] * x;
        var bend = (p[2] - 1) * time;
        return bend.Value <= -1 ? p[0] : -p[0] * T.ExpM1(-time * LogP1Over(bend));
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
    {
        if (p[2] is > 0.01 and < 0.99 * HighestOrder)
            return [];
        return [Finding.Of("HF-471", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
            $"The order ran to its bound (n = {p[2]:0.00}): the data do not determine it. Measure later times until uptake is level."))];
    }

    // ln(1 + z)/z, smooth through z = 0, where the order is 1. The series keeps the slopes exact where the quotient would cancel.
    private static T LogP1Over<T>(T z) where T : struct, IReal<T>
    {
        if (Math.Abs(z.Value) > 0.02)
            return T.LogP1(z) / z;
        T sum = 1.0 / 10;
        for (var i = 9; i >= 1; i--)
            sum = 1.0 / i - z * sum;
        return sum;
    }
}
