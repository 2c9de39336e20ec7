using Holdfast.Amounts;
using Holdfast.Isotherms;

namespace Holdfast.Fitting;

/// <summary>
/// The concentration left in a batch vessel: the root Ce of C0 − Ce = s·q(Ce; p) on [0, C0]. The fit then has one measured response and
/// independent inputs, instead of two axes that share an error.
/// </summary>
/// <typeparam name="TIsotherm">Loading against equilibrium concentration.</typeparam>
/// <param name="start">Start concentrations C0.</param>
/// <param name="dose">Doses s = m/V, in (unit of C)/(unit of q).</param>
public readonly struct BatchPrediction<TIsotherm>(double[] start, double[] dose) : IPrediction where TIsotherm : struct, ICurve<TIsotherm>
{
    private readonly double[] start = start;
    private readonly double[] dose = dose;

    /// <inheritdoc/>
    public int Count => start.Length;

    /// <inheritdoc/>
    public T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T>
        => BatchEquilibrium.Concentration<TIsotherm, T>(start[i], dose[i], p);
}
