using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Regeneration;

/// <summary>Each cycle loses the same amount: a straight line over the cycle number.</summary>
public readonly struct LinearLoss : ICurve<LinearLoss>
{
    public static ModelCard Card { get; } = new(
        "Linear loss",
        "q = q1·(1 − d·(i − 1))",
        [
            new("q1", Kind.Response, "{y}", "uptake in the first cycle by the line", Above: 0),
            new("d", Kind.Other, "", "share of the first uptake lost in each cycle; below 0 when uptake rises"),
        ],
        "a straight line, common practice",
        "Between the first and the last cycle measured only. Over five cycles it cannot be told from a geometric loss.")
    {
        Abscissa = "i",
    };

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * (1 - p[1] * (x - 1));

    /// <summary>The fit starts from no loss and needs no scan.</summary>
    public static IReadOnlyList<Kind> Scan => [];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = 0;
    }
}
