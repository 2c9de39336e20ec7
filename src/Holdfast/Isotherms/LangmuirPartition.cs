using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Langmuir sites plus a straight partition term.</summary>
public readonly struct LangmuirPartition : ICurve<LangmuirPartition>
{
    public static ModelCard Card { get; } = new(
        "Langmuir with partition",
        "q = qm·K·C / (1 + K·C) + Kd·C",
        [
            new("qm", Kind.Response, "{y}", "capacity of the sites", Above: 0),
            new("K", Kind.PerX, "1/({x})", "affinity of the sites", Above: 0),
            new("Kd", Kind.ResponsePerX, "{y}/({x})", "slope of the partition term", Above: 0),
        ],
        "Sum of Langmuir and Henry; common practice",
        "The last slope decides: eight or more levels, several beyond the bend. Slow precipitation gives the same upward end: a close fit does not show partition.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => Langmuir.Value(x, p[..2]) + p[2] * x;

    /// <summary>The scan runs over K and over Kd/qm, both one over a concentration.</summary>
    public static IReadOnlyList<Kind> Scan => [Kind.PerX, Kind.PerX];

    public static void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        p[1] = shapes[0];
        p[2] = c * shapes[1];
    }
}
