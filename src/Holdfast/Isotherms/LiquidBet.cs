using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Brunauer-Emmett-Teller written for solutions: a first layer with constant KS, further layers with constant KL.</summary>
/// <remarks>Brunauer, Emmett and Teller 1938; for liquids A. Ebadi and co-workers 2009 (both from memory).</remarks>
public readonly struct LiquidBet : ICurve<LiquidBet>
{
    public static ModelCard Card { get; } = new(
        "BET in liquid",
        "q = qm·KS·C / ((1 − KL·C)·(1 − KL·C + KS·C))",
        [
            new("qm", Kind.Response, "{y}", "uptake in the first layer", Above: 0),
            new("KS", Kind.PerX, "1/({x})", "affinity of the first layer", Above: 0),
            new("KL", Kind.PerX, "1/({x})", "fitted constant of the further layers; the curve has its pole at C = 1/KL", Above: 0),
        ],
        "S. Brunauer, P. H. Emmett and E. Teller 1938; for solutions A. Ebadi and co-workers 2009; from memory",
        "Only below the pole C = 1/KL. KL is a fitted constant, not one over the solubility. An upward end may be precipitation: it does not show layers.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>
    {
        var first = p[1] * x;
        var rest = 1 - p[2] * x;
        return p[0] * first / (rest * (rest + first));
    }

    public static IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX)
        => p[2] * highestX < 1
            ? []
            : [Finding.Of("HF-477", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"BET in liquid has its pole at C = {1 / p[2]:G4}, inside the data, which reach {highestX:G4}. Reject this fit."))];
}
