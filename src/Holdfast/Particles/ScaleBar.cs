using Holdfast.Statistics;

namespace Holdfast.Particles;

/// <summary>The scale of a micrograph from its bar. Its error is common to all particles: it is added after averaging and does not shrink with their number.</summary>
/// <param name="PerPixel">Length of one pixel, in the unit of the bar.</param>
/// <param name="RelativeU">Relative standard uncertainty; no unit.</param>
public sealed record ScaleBar(double PerPixel, double RelativeU)
{
    /// <summary>Relative standard uncertainty of a bar that nobody calibrated; no unit (common practice: 2 to 5 %).</summary>
    public const double Uncalibrated = 0.03;

    /// <summary>Standard uncertainty of placing one end on a bar or a particle that was drawn once only, in pixels (half a pixel, a decision of this project).</summary>
    public const double EndOnce = 0.5;

    /// <summary>Relative standard uncertainty that comes from reading the bar alone; no unit.</summary>
    /// <param name="pixels">Length of the bar in pixels, each time it was measured; their mean is the reading.</param>
    public static double ReadingU(IReadOnlyList<double> pixels)
    {
        var measured = Summary.Of(pixels);
        var ends = Math.Sqrt(2) * EndOnce;
        return (measured.Sd is { } sd ? Math.Max(sd, ends) : ends) / measured.Mean / Math.Sqrt(measured.N);
    }

    /// <summary>True when the size of a pixel by the bar and that by the file differ by more than reading the bar explains.</summary>
    /// <param name="byBar">Size of a pixel by the bar.</param>
    /// <param name="byFile">Size of a pixel that the file states, same unit.</param>
    /// <param name="readingU">Relative standard uncertainty of reading the bar; no unit.</param>
    public static bool Contradicts(double byBar, double byFile, double readingU) => Math.Abs(Math.Log(byBar / byFile)) > Coverage * readingU;

    private const double Coverage = 2;

    /// <summary>The scale from a bar measured several times.</summary>
    /// <param name="bar">Length that the bar stands for, above 0.</param>
    /// <param name="barRelativeU">Relative standard uncertainty of that; no unit.</param>
    /// <param name="pixels">Length of the bar in pixels, each time it was measured.</param>
    public static ScaleBar Of(double bar, double barRelativeU, IReadOnlyList<double> pixels)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bar);
        ArgumentOutOfRangeException.ThrowIfNegative(barRelativeU);
        var measured = Summary.Of(pixels);
        var pixelU = (measured.Sd ?? 0) / measured.Mean / Math.Sqrt(measured.N);
        return new(bar / measured.Mean, Math.Sqrt(barRelativeU * barRelativeU + pixelU * pixelU));
    }

    /// <summary>Standard uncertainty of an average with the scale's own part, in the unit of the average.</summary>
    /// <param name="average">The average.</param>
    /// <param name="standardError">Its standard error from the particles, same unit.</param>
    /// <param name="relativeU">Relative standard uncertainty of the scale; no unit.</param>
    public static double Combine(double average, double standardError, double relativeU)
        => Math.Sqrt(standardError * standardError + average * average * relativeU * relativeU);
}
