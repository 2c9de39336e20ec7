using System.Reflection;
using Holdfast.Amounts;
using Holdfast.Isotherms;

namespace Holdfast.Fitting;

/// <summary>A curve of the trade whose type is no longer known: for lists, screens and files.</summary>
public sealed class Model
{
    private readonly FitCall fit;
    private readonly BatchCall batch;
    private readonly SeriesCall series;
    private readonly SlopesCall slopes;
    private readonly MeasuredCall measured;
    private readonly AdmissibilityCall admissibility;
    private readonly LeftCall left;
    private readonly MeasuredLeftCall measuredLeft;

    private Model(
        Type curve, ModelCard card, FitCall fit, BatchCall batch, SeriesCall series, SlopesCall slopes, MeasuredCall measured, AdmissibilityCall admissibility,
        LeftCall left, MeasuredLeftCall measuredLeft)
    {
        (Curve, Card) = (curve, card);
        (this.fit, this.batch, this.series) = (fit, batch, series);
        (this.slopes, this.measured, this.admissibility) = (slopes, measured, admissibility);
        (this.left, this.measuredLeft) = (left, measuredLeft);
    }

    private delegate FitResult FitCall(Points points, FitOptions? options);

    private delegate FitResult BatchCall(BatchPoints vessels, FitOptions? options);

    private delegate FitResult SeriesCall(SeriesPoints points, FitOptions? options);

    private delegate Slopes SlopesCall(Slopes x, ReadOnlySpan<Slopes> p);

    private delegate Measured MeasuredCall(Measured x, ReadOnlySpan<Measured> p);

    private delegate Slopes LeftCall(Slopes c0, Slopes dose, ReadOnlySpan<Slopes> p);

    private delegate Measured MeasuredLeftCall(Measured c0, Measured dose, ReadOnlySpan<Measured> p);

    private delegate IReadOnlyList<Finding> AdmissibilityCall(ReadOnlySpan<double> p, double lowestX, double highestX);

    /// <summary>The curve's type.</summary>
    public Type Curve { get; }

    /// <summary>The curve's card.</summary>
    public ModelCard Card { get; }

    /// <summary>The model of a curve.</summary>
    public static Model Of<TCurve>() where TCurve : struct, ICurve<TCurve> => Known<TCurve>.Model;

    /// <summary>Every curve in a namespace of this library, ordered by name.</summary>
    /// <param name="space">For example "Holdfast.Isotherms".</param>
    public static IReadOnlyList<Model> AllIn(string space)
    {
        var of = typeof(Model).GetMethod(nameof(Of), BindingFlags.Public | BindingFlags.Static)!;
        return [.. typeof(Model).Assembly.GetExportedTypes()
            .Where(t => t is { IsValueType: true, IsGenericTypeDefinition: false } && string.Equals(t.Namespace, space, StringComparison.Ordinal)
                && t.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(ICurve<>)))
            .Select(t => (Model)of.MakeGenericMethod(t).Invoke(null, null)!)
            .OrderBy(m => m.Card.Name, StringComparer.Ordinal)];
    }

    /// <summary>The curve's value.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <param name="p">Parameters in the card's order.</param>
    public double Value(double x, ReadOnlySpan<double> p)
    {
        Span<Slopes> known = stackalloc Slopes[p.Length];
        for (var j = 0; j < p.Length; j++)
            known[j] = p[j];
        return slopes(x, known).Value;
    }

    /// <summary>The curve's value with the uncertainty and trail of its abscissa and parameters.</summary>
    /// <param name="x">Abscissa.</param>
    /// <param name="p">Parameters in the card's order.</param>
    public Measured Value(Measured x, ReadOnlySpan<Measured> p) => measured(x, p);

    /// <summary>The curve's value and its slopes by the parameters (at most four).</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <param name="p">Parameters in the card's order.</param>
    /// <param name="byParameter">Receives ∂f/∂p.</param>
    public double Value(double x, ReadOnlySpan<double> p, Span<double> byParameter)
    {
        Span<Slopes> seeds = stackalloc Slopes[p.Length];
        for (var j = 0; j < p.Length; j++)
            seeds[j] = Slopes.Parameter(p[j], j);
        var f = slopes(x, seeds);
        for (var j = 0; j < p.Length; j++)
            byParameter[j] = f[j];
        return f.Value;
    }

    /// <summary>The curve's slope df/dx.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <param name="p">Parameters in the card's order.</param>
    public double SlopeAt(double x, ReadOnlySpan<double> p)
    {
        Span<Slopes> known = stackalloc Slopes[p.Length];
        for (var j = 0; j < p.Length; j++)
            known[j] = p[j];
        return slopes(Slopes.Parameter(x, 0), known)[0];
    }

    /// <summary>What makes parameters inadmissible or suspect over a range of x.</summary>
    /// <param name="p">Parameters in the card's order.</param>
    /// <param name="lowestX">Lowest x of the data, in its unit.</param>
    /// <param name="highestX">Highest x of the data, in its unit.</param>
    public IReadOnlyList<Finding> Admissibility(ReadOnlySpan<double> p, double lowestX, double highestX) => admissibility(p, lowestX, highestX);

    /// <summary>For an isotherm: the concentration left in a vessel, with its slopes by the parameters (at most four).</summary>
    /// <param name="c0">Starting concentration, 0 or above, in the isotherm's unit.</param>
    /// <param name="dose">Sorbent per volume, above 0, in (unit of C)/(unit of q).</param>
    /// <param name="p">Parameters in the card's order.</param>
    /// <param name="byParameter">Receives ∂Ce/∂p.</param>
    public double ConcentrationLeft(double c0, double dose, ReadOnlySpan<double> p, Span<double> byParameter)
    {
        Span<Slopes> seeds = stackalloc Slopes[p.Length];
        for (var j = 0; j < p.Length; j++)
            seeds[j] = Slopes.Parameter(p[j], j);
        var ce = left(c0, dose, seeds);
        for (var j = 0; j < p.Length; j++)
            byParameter[j] = ce[j];
        return ce.Value;
    }

    /// <summary>For an isotherm: the concentration left in a vessel, with the uncertainty and trail of everything that went in.</summary>
    /// <param name="c0">Starting concentration, 0 or above, in the isotherm's unit.</param>
    /// <param name="dose">Sorbent per volume, above 0, in (unit of C)/(unit of q).</param>
    /// <param name="p">Parameters in the card's order.</param>
    public Measured ConcentrationLeft(Measured c0, Measured dose, ReadOnlySpan<Measured> p) => measuredLeft(c0, dose, p);

    /// <summary>Fits the curve to points.</summary>
    /// <param name="points">The points.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult Fit(Points points, FitOptions? options = null) => fit(points, options);

    /// <summary>Fits the curve, an isotherm, to batch vessels through the mass balance.</summary>
    /// <param name="vessels">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult Batch(BatchPoints vessels, FitOptions? options = null) => batch(vessels, options);

    /// <summary>Fits the curve to the vessels of a series with one error model.</summary>
    /// <param name="points">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult Series(SeriesPoints points, FitOptions? options = null) => series(points, options);

    /// <summary>Fits the curve in a room of its own: a fault gives a refused fit that says so, and the other curves of its family stand.</summary>
    /// <param name="points">The points.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult FitInRoom(Points points, FitOptions? options = null) => InRoom(points, () => fit(points, options));

    /// <summary><see cref="Batch"/> in a room of its own.</summary>
    /// <param name="vessels">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult BatchInRoom(BatchPoints vessels, FitOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(vessels);
        return InRoom(vessels.Readings, () => batch(vessels, options));
    }

    /// <summary><see cref="Series"/> in a room of its own.</summary>
    /// <param name="points">The vessels.</param>
    /// <param name="options">How; null for the defaults.</param>
    public FitResult SeriesInRoom(SeriesPoints points, FitOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        return InRoom(points.Plain, () => series(points, options));
    }

    private FitResult InRoom(Points points, Func<FitResult> work)
    {
        var outcome = Room.Of($"the fit of {Card.Name}", work);
        return outcome.Value ?? FitResult.None(Card, points, outcome.Findings);
    }

    private static class Known<TCurve> where TCurve : struct, ICurve<TCurve>
    {
        public static readonly Model Model = new(
            typeof(TCurve), TCurve.Card, Fitting.Fit.Of<TCurve>, Fitting.Fit.Batch<TCurve>, Fitting.Fit.Series<TCurve>,
            TCurve.Value, TCurve.Value, TCurve.Admissibility,
            BatchEquilibrium.Concentration<TCurve, Slopes>, BatchEquilibrium.Concentration<TCurve, Measured>);
    }
}
