namespace Holdfast.Fitting.Lines;

/// <summary>The straight line when the ratio of the error variances of the two axes is known and the same everywhere.</summary>
/// <remarks>W. E. Deming, Statistical Adjustment of Data, 1943 (from memory). The ratio to infinity gives ordinary least squares.</remarks>
public static class Deming
{
    /// <summary>The line.</summary>
    /// <param name="x">Abscissas, any unit.</param>
    /// <param name="y">Ordinates, any unit.</param>
    /// <param name="varianceRatio">Variance of the error of y over that of x, above 0, in unit of y² over unit of x².</param>
    /// <exception cref="ArgumentException">Fewer than two points, unequal lengths, or x and y without any covariance.</exception>
    public static LineWithErrors Through(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double varianceRatio)
    {
        if (x.Length != y.Length || x.Length < 2)
            throw new ArgumentException("A line needs two or more pairs.", nameof(x));
        if (!(varianceRatio > 0))
            throw new ArgumentOutOfRangeException(nameof(varianceRatio), varianceRatio, "The ratio of variances is above 0.");
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

        if (sxy == 0)
            throw new ArgumentException("x and y do not vary together: the line has no direction.", nameof(y));

        // The root without cancellation: from the side on which the two terms add.
        var gap = syy - varianceRatio * sxx;
        var root = double.IsPositiveInfinity(varianceRatio) ? 0 : Math.Sqrt(gap * gap + 4 * varianceRatio * sxy * sxy);
        var slope = double.IsPositiveInfinity(varianceRatio) ? sxy / sxx
            : gap >= 0 ? (gap + root) / (2 * sxy)
            : 2 * varianceRatio * sxy / (root - gap);
        return new(meanY - slope * meanX, slope, null, null, null);
    }
}
