using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Kinetics;

/// <summary>Mixed first and second order: the exact solution of Langmuir's rate law in a closed vessel.</summary>
/// <remarks>
/// A. W. Marczewski 2010 (from memory). For Langmuir kinetics f2 = coverage × fraction removed (see <see cref="LangmuirKinetics"/>), so that
/// with the isotherm known f2 is a prediction to test, not a number to read.
/// </remarks>
public readonly struct MixedOrder : ICurve<MixedOrder>
{
    public static ModelCard Card { get; } = new(
        "Mixed 1,2-order",
        "q = qe·(1 − exp(−k·t)) / (1 − f2·exp(−k·t))",
        [
            new("qe", Kind.Response, "{y}", "uptake at equilibrium", Above: 0),
            new("k", Kind.PerX, "1/{x}", "rate constant", Above: 0),
            new("f2", Kind.Fraction, "", "share of second order: 0 is first order, towards 1 second order", Below: 1),
        ],
        "A. W. Marczewski 2010, from memory; derived from Langmuir's rate law",
        "f2 → 1 with k → 0 is second order: then report second order with k2·qe = k/(1 − f2). f2 depends on dose and concentration and shows no mechanism.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        if (x.Value == 0)
            return 0;
        var done = -T.ExpM1(-p[1] * x);

        // 1 − f2·exp(−kt) = (1 − f2) + f2·(1 − exp(−kt)) keeps its digits when f2 is close to 1 and k·t is small.
        return p[0] * done / (1 - p[2] + p[2] * done);
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => p[2] < 0.99
            ? []
            : [Finding.Of("HF-472", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"Mixed order ran to f2 = {p[2]:0.0000}: it is second order here. Report pseudo-second-order with k2·qe = {p[1] / (1 - p[2]):G3}."))];
}
