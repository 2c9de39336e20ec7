using Holdfast.Amounts;
using Holdfast.Fitting;

namespace Holdfast.Isotherms;

/// <summary>Henry's straight line: uptake in proportion to concentration.</summary>
/// <remarks>W. Henry 1803 (from memory). Every isotherm with finite slope at the origin is this line at low coverage.</remarks>
public readonly struct Henry : ICurve<Henry>
{
    public static ModelCard Card { get; } = new(
        "Henry",
        "q = Kd·C",
        [new("Kd", Kind.ResponsePerX, "{y}/({x})", "distribution coefficient: uptake per concentration", Above: 0)],
        "W. Henry 1803, from memory",
        "Low coverage, or partition of an organic solute into organic matter. A straight line over a short range does not show that there is no capacity.");

    public static T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T> => p[0] * x;
}
