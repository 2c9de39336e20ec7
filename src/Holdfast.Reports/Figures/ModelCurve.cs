using System.Globalization;

namespace Holdfast.Reports.Figures;

/// <summary>A fitted model as a line: whole over the fitted range, short dashes beyond it.</summary>
/// <param name="Points">Points along the line by rising x, dense enough to look smooth; in axis units.</param>
/// <param name="FittedFrom">Lower end of the fitted range, in the unit of x.</param>
/// <param name="FittedTo">Upper end of the fitted range, in the unit of x.</param>
public sealed record ModelCurve(IReadOnlyList<(double X, double Y)> Points, double FittedFrom, double FittedTo) : SeriesLayer
{
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

        const int steps = 200;
        var places = new SortedSet<double> { from, to };
        for (var i = 1; i < steps; i++)
            places.Add(logarithmic ? from * Math.Pow(to / from, (double)i / steps) : from + (to - from) * i / steps);
        foreach (var end in new[] { fittedFrom ?? from, fittedTo ?? to })
        {
            if (end > from && end < to)
                places.Add(end);
        }

        return new(places.Select(x => (x, model(x))).ToArray(), fittedFrom ?? from, fittedTo ?? to);
    }
}
