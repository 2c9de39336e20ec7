namespace Holdfast.Diffraction;

/// <summary>Size and strain from the breadths of several lines: β·cos θ = Kλ/D + 4e·sin θ.</summary>
/// <param name="Size">D, nm; null when the line through the breadths does not stay above zero.</param>
/// <param name="SizeU">Its standard uncertainty from the breadths, nm; that of K comes on top.</param>
/// <param name="Strain">e, without unit.</param>
/// <param name="StrainU">Its standard uncertainty.</param>
/// <param name="K">Shape factor, without unit.</param>
/// <param name="Lines">Number of lines.</param>
/// <param name="ReducedChiSquare">χ²/(n − 2) about the line: far above 1, breadths depend on direction.</param>
/// <remarks>G. K. Williamson, W. H. Hall, Acta Metall. 1 (1953) 22 (from memory). Weights 1/u(β·cos θ)².</remarks>
public sealed record WilliamsonHall(double? Size, double SizeU, double Strain, double StrainU, double K, int Lines, double ReducedChiSquare)
{
    /// <summary>Fewest lines that tell size from strain.</summary>
    public const int FewestLines = 5;

    /// <summary>True when the strain is below zero by more than two standard uncertainties: breadths depend on direction, or the instrument's width is wrong.</summary>
    public bool IsImpossible => Strain < -2 * StrainU || Size is null;

    /// <summary>The line through breadths of the sample alone.</summary>
    /// <param name="breadths">2θ, breadth β (instrument taken off) and its standard uncertainty, all degrees.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    /// <param name="k">Shape factor.</param>
    /// <returns>Size and strain, or null with fewer than five lines or an uncertainty of zero.</returns>
    public static WilliamsonHall? Of(IReadOnlyList<(double TwoTheta, double Breadth, double U)> breadths, double wavelength, double k = Scherrer.UsualK)
    {
        ArgumentNullException.ThrowIfNull(breadths);
        if (breadths.Count < FewestLines || breadths.Any(b => !(b.U > 0)))
            return null;
        double s = 0, sx = 0, sy = 0, sxx = 0, sxy = 0;
        foreach (var (twoTheta, breadth, u) in breadths)
        {
            var (x, y, w) = Point(twoTheta, breadth, u);
            (s, sx, sy, sxx, sxy) = (s + w, sx + w * x, sy + w * y, sxx + w * x * x, sxy + w * x * y);
        }

        var d = s * sxx - sx * sx;
        var (slope, intercept) = ((s * sxy - sx * sy) / d, (sxx * sy - sx * sxy) / d);
        var chi = breadths.Sum(b => Point(b.TwoTheta, b.Breadth, b.U) is var (x, y, w) ? w * Math.Pow(y - intercept - slope * x, 2) : 0) / (breadths.Count - 2);
        double? size = intercept > 0 ? k * wavelength / 10 / intercept : null;
        return new(size, size is { } nm ? nm * Math.Sqrt(sxx / d) / intercept : double.NaN, slope / 4, Math.Sqrt(s / d) / 4, k, breadths.Count, chi);
    }

    private static (double X, double Y, double Weight) Point(double twoTheta, double breadth, double u)
    {
        var cosine = Math.Cos(Bragg.Theta(twoTheta)) * Math.PI / 180;
        return (Math.Sin(Bragg.Theta(twoTheta)), breadth * cosine, 1 / Math.Pow(u * cosine, 2));
    }
}
