using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Infrared;

/// <summary>
/// Bands of a spectrum: maxima of a smoothed copy that stand out by a multiple of the noise and are no narrower than the instrument can show. Positions
/// and heights are read from the spectrum itself.
/// </summary>
public static class BandSearch
{
    /// <summary>Least prominence in standard deviations of the noise.</summary>
    public const double LeastProminence = 5;

    // The top of a band, of which the parabola is drawn: this share of its height over the nearest saddle, and no fewer points.
    private const double TopShare = 0.2;
    private const int FewestTopPoints = 5;
    private const int SmoothingWindow = 7;

    /// <summary>All bands, from low to high wavenumbers.</summary>
    /// <param name="spectrum">The spectrum.</param>
    public static IReadOnlyList<Band> Of(InfraredSpectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        var smooth = SavitzkyGolay.Smooth(spectrum.Absorbances, SmoothingWindow);
        var threshold = LeastProminence * spectrum.Noise;
        var bands = new List<Band>();
        for (var i = 1; i < smooth.Length - 1; i++)
        {
            if (smooth[i] <= smooth[i - 1] || smooth[i] < smooth[i + 1])
                continue;
            var prominence = smooth[i] - Math.Max(Valley(smooth, i, -1), Valley(smooth, i, 1));
            if (prominence < threshold)
                continue;
            var width = WidthAt(spectrum, smooth, i, smooth[i] - prominence / 2);
            if (width >= spectrum.Limit)
                bands.Add(Read(spectrum, smooth, i, prominence, smooth[i] - Math.Max(Saddle(smooth, i, -1, threshold), Saddle(smooth, i, 1, threshold)), width));
        }

        return bands;
    }

    // The lowest point on the way to a higher one, or to the end of the spectrum.
    private static double Valley(double[] y, int top, int direction)
    {
        var low = y[top];
        for (var i = top + direction; i >= 0 && i < y.Length && y[i] <= y[top]; i += direction)
            low = Math.Min(low, y[i]);
        return low;
    }

    // The lowest point on the way to a neighbour that stands out, however high it is: beyond it the curve is the neighbour's.
    private static double Saddle(double[] y, int top, int direction, double threshold)
    {
        var low = y[top];
        for (var i = top + direction; i >= 0 && i < y.Length && y[i] <= y[top] && y[i] < low + threshold; i += direction)
            low = Math.Min(low, y[i]);
        return low;
    }

    private static double WidthAt(InfraredSpectrum spectrum, double[] y, int top, double level)
    {
        // Twice the nearer side: the other one may run into a neighbour.
        var (left, right) = Around(y, top, level);
        return 2 * Math.Min(spectrum.Wavenumbers[right] - spectrum.Wavenumbers[top], spectrum.Wavenumbers[top] - spectrum.Wavenumbers[left]);
    }

    private static (int Left, int Right) Around(double[] y, int top, double level)
    {
        int left = top, right = top;
        while (left > 0 && y[left] > level)
            left--;
        while (right < y.Length - 1 && y[right] > level)
            right++;
        return (left, right);
    }

    private static Band Read(InfraredSpectrum spectrum, double[] smooth, int top, double prominence, double overSaddle, double width)
    {
        var (left, right) = Around(smooth, top, smooth[top] - TopShare * overSaddle);
        var reach = FewestTopPoints / 2;
        left = Math.Max(0, Math.Min(left, top - reach));
        right = Math.Min(smooth.Length - 1, Math.Max(right, top + reach));
        double[] x = [.. spectrum.Wavenumbers.Skip(left).Take(right - left + 1)], y = [.. spectrum.Absorbances.Skip(left).Take(right - left + 1)];
        var least = Math.Max((spectrum.Resolution ?? 0) / 4, TypeB.Resolution(spectrum.Step));
        var fit = PolynomialFit.Of([.. x.Select(v => v - spectrum.Wavenumbers[top])], y, degree: 2);
        var coefficients = fit.Coefficients;
        var (slope, curvature) = (coefficients[1], coefficients[2]);
        var shift = -slope / (2 * curvature);
        if (!(curvature < 0) || spectrum.Wavenumbers[top] + shift < x[0] || spectrum.Wavenumbers[top] + shift > x[^1])
            return new(spectrum.Wavenumbers[top], Math.Max(least, TypeB.Rectangular((x[^1] - x[0]) / 2)), smooth[top], prominence, width);

        // Position −b/(2c): ∂/∂b = −1/(2c), ∂/∂c = b/(2c²).
        double bySlope = -1 / (2 * curvature), byCurvature = slope / (2 * curvature * curvature);
        var variance = bySlope * bySlope * fit.Covariance(1, 1) + byCurvature * byCurvature * fit.Covariance(2, 2) + 2 * bySlope * byCurvature * fit.Covariance(1, 2);
        return new(spectrum.Wavenumbers[top] + shift, Math.Max(least, Math.Sqrt(Math.Max(0, variance))), coefficients[0] + slope * shift / 2, prominence, width);
    }
}
