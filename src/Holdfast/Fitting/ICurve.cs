using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>
/// A curve y = f(x; p) of the trade: one formula, one card. Everything else (derivatives, starting points, bands, uncertainty)
/// is derived from these two. Implement it as a <c>readonly struct</c> so that the compiler specialises the fit for it.
/// </summary>
/// <remarks>
/// Starting points are found by variable projection (Golub and Pereyra 1973): every curve here is proportional to one of its
/// parameters once the others are held, so that the scan runs over the others alone. <see cref="FromScale"/> says how.
/// </remarks>
/// <typeparam name="TSelf">The curve itself.</typeparam>
public interface ICurve<TSelf> where TSelf : struct, ICurve<TSelf>
{
    /// <summary>Name, formula, parameters with symbol, unit and meaning, source, valid range.</summary>
    static abstract ModelCard Card { get; }

    /// <summary>The formula.</summary>
    /// <param name="x">The abscissa in the card's unit.</param>
    /// <param name="p">Parameters in the card's order.</param>
    static abstract T Value<T>(T x, ReadOnlySpan<T> p) where T : struct, IReal<T>;

    /// <summary>
    /// Parameters from the scale c ≥ 0 that multiplies the curve and the shape parameters that the scan runs over. With c = 1 the
    /// curve must be f/c. Parameter 0 is the scale in most curves, so the default puts c first and the shapes after it.
    /// </summary>
    /// <param name="c">Scale, in the unit of y.</param>
    /// <param name="shapes">One number for each <see cref="Scan"/> axis.</param>
    /// <param name="p">Receives the parameters.</param>
    static virtual void FromScale(double c, ReadOnlySpan<double> shapes, Span<double> p)
    {
        p[0] = c;
        shapes.CopyTo(p[1..]);
    }

    /// <summary>The axes the scan runs over; by default one for each parameter after the first, by its <see cref="Parameter.Kind"/>.</summary>
    static virtual IReadOnlyList<Kind> Scan => [.. TSelf.Card.Parameters.Skip(1).Select(p => p.Kind)];

    /// <summary>
    /// What makes these parameters inadmissible or suspect over a range of x, however small the residuals: a maximum where a plateau
    /// should be, a negative value, a pole, a parameter that ran to its bound. Nothing for a curve without such limits.
    /// </summary>
    /// <param name="p">Fitted parameters in the card's order.</param>
    /// <param name="lowestX">Lowest x of the data, in the card's unit.</param>
    /// <param name="highestX">Highest x of the data, in the card's unit.</param>
    static virtual IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX) => [];
}
