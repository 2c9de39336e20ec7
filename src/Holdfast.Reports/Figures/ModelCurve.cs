using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>A fitted model as a line: whole over the fitted range, short dashes beyond it.</summary>
/// <param name="Points">Points along the line by rising x, dense enough to look smooth; in axis units.</param>
/// <param name="FittedFrom">Lower end of the fitted range, in the unit of x.</param>
/// <param name="FittedTo">Upper end of the fitted range, in the unit of x.</param>
public sealed record ModelCurve(IReadOnlyList<(double X, double Y)> Points, double FittedFrom, double FittedTo) : SeriesLayer
{
    private const int Steps = 200;

    /// <summary>The formula behind the points; null for a line known by its points alone.</summary>
    public Func<double, double>? Formula { get; private init; }

    /// <summary>The line as a closer look needs it: as many places between two values as it had altogether.</summary>
    /// <param name="low">Lower value, in the unit of x.</param>
    /// <param name="high">Upper value, in the unit of x.</param>
    /// <param name="logarithmic">True to space the places evenly in log x.</param>
    internal ModelCurve Between(double low, double high, bool logarithmic)
    {
        var (from, to) = (Math.Max(low, Points[0].X), Math.Min(high, Points[^1].X));
        return Formula is null || !(from < to) || (logarithmic && from <= 0)
            ? this
            : this with { Points = Of(Formula, from, to, FittedFrom, FittedTo, logarithmic).Points };
    }

    /// <summary>A line from a formula, evaluated at evenly spaced places and at both ends of the fitted range.</summary>
    /// <param name="model">The formula; x and y in axis units.</param>
    /// <param name="from">First place, in the unit of x.</param>
    /// <param name="to">Last place, in the unit of x.</param>
    /// <param name="fittedFrom">Lower end of the fitted range, in the unit of x.</param>
    /// <param name="fittedTo">Upper end of the fitted range, in the unit of x.</param>
    /// <param name="logarithmic">True to space the places evenly in log x.</param>
    /// <exception cref="ArgumentException">The places do not rise, or logarithmic spacing is asked from zero or below.</exception>
    public static ModelCurve Of(
        Func<double, double> model, double from, double to, double? fittedFrom = null, double? fittedTo = null, bool logarithmic = false)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!(from < to))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A line needs from < to; these are {from} and {to}."), nameof(from));
        if (logarithmic && from <= 0)
            throw new ArgumentException("Logarithmic spacing starts above zero.", nameof(from));

        var places = new SortedSet<double> { from, to };
        for (var i = 1; i < Steps; i++)
            places.Add(logarithmic ? from * Math.Pow(to / from, (double)i / Steps) : from + (to - from) * i / Steps);
        foreach (var end in new[] { fittedFrom ?? from, fittedTo ?? to })
        {
            if (end > from && end < to)
                places.Add(end);
        }

        return new(places.Select(x => (x, model(x))).ToArray(), fittedFrom ?? from, fittedTo ?? to) { Formula = model };
    }
}
