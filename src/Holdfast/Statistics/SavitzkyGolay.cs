using Holdfast.Fitting.Lines;

namespace Holdfast.Statistics;

/// <summary>Smoothing for the eye: each point becomes the value of a polynomial through its neighbours. Nothing is measured on a smoothed curve.</summary>
/// <remarks>A. Savitzky and M. J. E. Golay, Anal. Chem. 36 (1964) 1627 (from memory). The ends take the polynomial of the first and the last window.</remarks>
public static class SavitzkyGolay
{
    /// <summary>Smoothed readings, in their own unit.</summary>
    /// <param name="intensities">Intensities at equal steps, at least as many as the window.</param>
    /// <param name="window">Points in the window, odd, 5 to 51; keep it below half the narrowest band.</param>
    /// <param name="order">Order of the polynomial, 2 or 3.</param>
    public static double[] Smooth(IReadOnlyList<double> intensities, int window = 7, int order = 2)
    {
        ArgumentNullException.ThrowIfNull(intensities);
        if (window is < 5 or > 51 || window % 2 == 0)
            throw new ArgumentOutOfRangeException(nameof(window), window, "The window is an odd number of points from 5 to 51.");
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(order, 3);
        if (intensities.Count < window)
            throw new ArgumentException(FormattableString.Invariant($"{intensities.Count} points are fewer than the window of {window}."), nameof(intensities));
        var half = window / 2;
        double[][] weights = [.. Enumerable.Range(-half, window).Select(at => Weights(half, order, at))];
        return [.. Enumerable.Range(0, intensities.Count).Select(i =>
        {
            var first = Math.Clamp(i - half, 0, intensities.Count - window);
            var own = weights[i - first];
            return Enumerable.Range(0, window).Sum(k => own[k] * intensities[first + k]);
        })];
    }

    // The smoothed value is linear in the readings: its weight on one of them is the fit to a single reading of 1.
    private static double[] Weights(int half, int order, int at)
    {
        double[][] powers = [.. Enumerable.Range(0, order + 1).Select(p => Enumerable.Range(-half, 2 * half + 1).Select(x => Math.Pow((double)x / half, p)).ToArray())];
        return [.. Enumerable.Range(0, 2 * half + 1).Select(k =>
        {
            var unit = new double[2 * half + 1];
            unit[k] = 1;
            return LinearModel.Of(powers, unit).Value!.Coefficients.Select((c, p) => c * Math.Pow((double)at / half, p)).Sum();
        })];
    }
}
