using Holdfast.Statistics;

namespace Holdfast.Infrared;

/// <summary>Noise of a spectrum: scatter about a parabola in short windows of a region where a powder has no bands.</summary>
/// <remarks>
/// 1900 to 2500 cm⁻¹ without the carbon dioxide of the air (common practice). Where the spectrum does not reach it, the quieter half of all windows
/// stands in. The middle window counts, so that a weak band in the region does little.
/// </remarks>
public static class SpectralNoise
{
    private const int Window = 25;
    private const double QuietFrom = 1900;
    private const double QuietTo = 2500;
    private const double LeastShareOfRange = 1e-7;

    /// <summary>Standard deviation of the noise, in the unit of the ordinate; never 0, at least a ten-millionth of the range.</summary>
    /// <param name="wavenumbers">cm⁻¹, rising, at least 25.</param>
    /// <param name="ordinates">As many, any unit.</param>
    public static double Of(IReadOnlyList<double> wavenumbers, IReadOnlyList<double> ordinates)
    {
        ArgumentNullException.ThrowIfNull(wavenumbers);
        ArgumentNullException.ThrowIfNull(ordinates);
        ArgumentOutOfRangeException.ThrowIfLessThan(wavenumbers.Count, Window, nameof(wavenumbers));
        var windows = Enumerable.Range(0, wavenumbers.Count / Window)
            .Select(w => (From: wavenumbers[w * Window], To: wavenumbers[w * Window + Window - 1], Sd: Scatter(wavenumbers, ordinates, w * Window))).ToList();
        double[] quiet = [.. windows.Where(w => w.From >= QuietFrom && w.To <= QuietTo && !AirBands.CarbonDioxide.Touches(w.From, w.To)).Select(w => w.Sd).Order()];
        double[] all = [.. windows.Select(w => w.Sd).Order()];
        var sd = quiet.Length > 0 ? Middle(quiet) : Middle(all[..((all.Length + 1) / 2)]);
        return Math.Max(sd, LeastShareOfRange * (ordinates.Max() - ordinates.Min()));
    }

    private static double Scatter(IReadOnlyList<double> x, IReadOnlyList<double> y, int first)
        => PolynomialFit.Of([.. x.Skip(first).Take(Window)], [.. y.Skip(first).Take(Window)], degree: 2).ResidualSd;

    private static double Middle(double[] sorted) => sorted[sorted.Length / 2];
}
