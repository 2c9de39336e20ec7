namespace Holdfast.Fitting;

/// <summary>
/// The points that a curve is fitted to, with their units, with what is known of their errors, and with the id of the vessel or
/// reading that each one came from. Negative readings are data and are kept.
/// </summary>
public sealed class Points
{
    /// <summary>Points of a curve.</summary>
    /// <param name="x">Abscissas, in <paramref name="xUnit"/>; finite.</param>
    /// <param name="y">Readings, in <paramref name="yUnit"/>; finite.</param>
    /// <param name="xUnit">Unit of x, for example "mg/L".</param>
    /// <param name="yUnit">Unit of y, for example "mg/g".</param>
    /// <param name="u">Standard uncertainties of y when they are known, in the unit of y; null when only the scatter can tell.</param>
    /// <param name="weights">Relative weights of y, without a scale of their own; not together with <paramref name="u"/>.</param>
    /// <param name="ids">Id of each point (a vessel code), or null to number them from 1.</param>
    /// <param name="xU">Standard uncertainties of x, in the unit of x; needs <paramref name="u"/>. The fit then weighs by the effective variance.</param>
    /// <param name="xyCovariance">Covariance of the errors of x and y at each point (unit of x times unit of y); null when independent.
    /// For a loading computed from Ce it is −(V/m)·u(Ce)².</param>
    /// <exception cref="ArgumentException">Lengths differ, a number is not finite, an uncertainty or weight is not above 0, or both kinds are given.</exception>
    public Points(
        IReadOnlyList<double> x,
        IReadOnlyList<double> y,
        string xUnit = "",
        string yUnit = "",
        IReadOnlyList<double>? u = null,
        IReadOnlyList<double>? weights = null,
        IReadOnlyList<string>? ids = null,
        IReadOnlyList<double>? xU = null,
        IReadOnlyList<double>? xyCovariance = null)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (u is not null && weights is not null)
            throw new ArgumentException("Give either standard uncertainties or relative weights, not both.", nameof(weights));
        if (xU is not null && u is null)
            throw new ArgumentException("Uncertainties of x need uncertainties of y.", nameof(xU));
        XValues = Finite(x, x.Count, nameof(x));
        YValues = Finite(y, x.Count, nameof(y));
        UValues = u is null ? null : Positive(u, x.Count, nameof(u));
        RelativeWeights = weights is null ? null : Positive(weights, x.Count, nameof(weights));
        XUValues = xU is null ? null : Finite(xU, x.Count, nameof(xU));
        XYCovarianceValues = xyCovariance is null ? null : Finite(xyCovariance, x.Count, nameof(xyCovariance));
        if (ids is not null && ids.Count != x.Count)
            throw new ArgumentException(FormattableString.Invariant($"{ids.Count} ids for {x.Count} points."), nameof(ids));
        Ids = ids is null ? [.. Enumerable.Range(1, x.Count).Select(i => FormattableString.Invariant($"point {i}"))] : [.. ids];
        (XUnit, YUnit) = (xUnit, yUnit);
    }

    /// <summary>Number of points.</summary>
    public int Count => XValues.Length;

    /// <summary>Abscissas, in <see cref="XUnit"/>.</summary>
    public IReadOnlyList<double> X => XValues;

    /// <summary>Readings, in <see cref="YUnit"/>.</summary>
    public IReadOnlyList<double> Y => YValues;

    /// <summary>Known standard uncertainties of y, or null.</summary>
    public IReadOnlyList<double>? U => UValues;

    /// <summary>Relative weights of y, or null.</summary>
    public IReadOnlyList<double>? Weights => RelativeWeights;

    /// <summary>Known standard uncertainties of x, or null.</summary>
    public IReadOnlyList<double>? XU => XUValues;

    /// <summary>Id of each point.</summary>
    public IReadOnlyList<string> Ids { get; }

    /// <summary>Unit of x.</summary>
    public string XUnit { get; }

    /// <summary>Unit of y.</summary>
    public string YUnit { get; }

    internal double[] XValues { get; }

    internal double[] YValues { get; }

    internal double[]? UValues { get; }

    internal double[]? XUValues { get; }

    internal double[]? XYCovarianceValues { get; }

    private double[]? RelativeWeights { get; }

    /// <summary>The weights of a first fit: 1/u², the relative weights, or 1.</summary>
    internal double[] FirstWeights()
        => UValues is { } u ? [.. u.Select(v => 1 / (v * v))]
            : RelativeWeights is { } w ? [.. w]
            : [.. Enumerable.Repeat(1.0, Count)];

    /// <summary>The same points without one of them.</summary>
    /// <param name="index">Which point to leave out, from 0.</param>
    public Points Without(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
        return new(
            Rest(XValues)!, Rest(YValues)!, XUnit, YUnit, Rest(UValues), Rest(RelativeWeights), [.. Ids.Where((_, i) => i != index)],
            Rest(XUValues), Rest(XYCovarianceValues));

        double[]? Rest(double[]? all) => all is null ? null : [.. all.Where((_, i) => i != index)];
    }

    private static double[] Finite(IReadOnlyList<double> values, int count, string name)
    {
        if (values.Count != count)
            throw new ArgumentException(FormattableString.Invariant($"{values.Count} values for {count} points."), name);
        for (var i = 0; i < count; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException(FormattableString.Invariant($"Value {i + 1} is {values[i]}; it must be a finite number."), name);
        }

        return [.. values];
    }

    private static double[] Positive(IReadOnlyList<double> values, int count, string name)
    {
        var checkedValues = Finite(values, count, name);
        for (var i = 0; i < count; i++)
        {
            if (checkedValues[i] <= 0)
                throw new ArgumentException(FormattableString.Invariant($"Value {i + 1} is {values[i]}; it must be above 0."), name);
        }

        return checkedValues;
    }
}
