using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>
/// What a model says each observation should read. A plain curve answers f(x; p); a batch vessel answers the concentration that its
/// mass balance leaves. Implement it as a <c>readonly struct</c>: the fit is compiled once for each.
/// </summary>
public interface IPrediction
{
    /// <summary>Number of observations.</summary>
    int Count { get; }

    /// <summary>The predicted reading of one observation, in the unit in which it was read.</summary>
    /// <param name="i">Which observation, from 0.</param>
    /// <param name="p">Parameters in the card's order.</param>
    T At<T>(int i, ReadOnlySpan<T> p) where T : struct, IReal<T>;
}
