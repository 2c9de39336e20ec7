using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Regeneration;

/// <summary>Each cycle keeps the same share of the one before.</summary>
public readonly struct GeometricLoss : ICurve<GeometricLoss>
{
    public static ModelCard Card { get; } = new(
        "Geometric loss",
        "q = q1·r^(i − 1)",
        [
            new("q1", Kind.Response, "{y}", "uptake in the first cycle by the curve", Above: 0),
            new("r", Kind.Exponent, "", "share kept from one cycle to the next", Above: 0),
        ],
        "a constant share kept, common practice",
        "Between the first and the last cycle measured only: a share kept five times is no promise for fifty.")
    {
        Abscissa = "i",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * T.Exp((x - 1) * T.Log(p[1]));
}
