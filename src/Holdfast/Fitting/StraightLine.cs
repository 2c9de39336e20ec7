namespace Holdfast.Fitting;

/// <summary>An unweighted least-squares line y = a + b·x with its standard errors.</summary>
/// <param name="Slope">b, unit of y over unit of x.</param>
/// <param name="Intercept">a, unit of y.</param>
/// <param name="SlopeError">Standard error of b; null with fewer than three points.</param>
/// <param name="InterceptError">Standard error of a; null with fewer than three points.</param>
/// <param name="ResidualSquares">Sum of squared residuals, unit of y squared.</param>
/// <param name="TotalSquares">Sum of squares of y about its mean.</param>
/// <param name="Count">Number of points.</param>
public readonly record struct StraightLine(
    double Slope, double Intercept, double? SlopeError, double? InterceptError, double ResidualSquares, double TotalSquares, int Count)
{
    /// <summary>Share of the scatter of y that the line takes up, 1 − RSS/TSS; null when y does not vary. It judges no model.</summary>
    public double? RSquared => TotalSquares > 0 ? 1 - ResidualSquares / TotalSquares : null;

    /// <summary>The line's y at x.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    public double At(double x) => Intercept + Slope * x;

    /// <summary>The line through points of equal weight.</summary>
    /// <param name="x">Abscissas, any unit; at least two different values.</param>
    /// <param name="y">Ordinates, any unit.</param>
    /// <exception cref="ArgumentException">Lengths differ, or the abscissas are all equal.</exception>
    public static StraightLine Through(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length || x.Length < 2)
            throw new ArgumentException($"A line needs two or more pairs; got {x.Length} abscissas and {y.Length} ordinates.", nameof(x));
        double meanX = 0, meanY = 0;
        for (var i = 0; i < x.Length; i++)
        {
            meanX += x[i] / x.Length;
            meanY += y[i] / x.Length;
        }

        double sxx = 0, sxy = 0, syy = 0;
        for (var i = 0; i < x.Length; i++)
        {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
            syy += (y[i] - meanY) * (y[i] - meanY);
        }

        if (!(sxx > 0))
            throw new ArgumentException("A line needs two different abscissas.", nameof(x));
        var slope = sxy / sxx;
        var rss = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - meanY - slope * (x[i] - meanX);
            rss += residual * residual;
        }

        if (x.Length == 2)
            return new(slope, meanY - slope * meanX, null, null, 0, syy, 2);
        var variance = rss / (x.Length - 2);
        return new(
            slope, meanY - slope * meanX, Math.Sqrt(variance / sxx), Math.Sqrt(variance * (1.0 / x.Length + meanX * meanX / sxx)), rss, syy, x.Length);
    }
}
