using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>A curve read at the abscissas of the data.</summary>
/// <typeparam name="TCurve">The curve.</typeparam>
/// <param name="x">Abscissas, in the unit of the data.</param>
public readonly struct CurvePrediction<TCurve>(double[] x) : IPrediction where TCurve : struct, ICurve<TCurve>
{
    private readonly double[] x = x;

    /// <inheritdoc/>
    public int Count => x.Length;

    /// <inheritdoc/>
    public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T> => TCurve.Value<T>(x[i], p);
}
