namespace Holdfast.Diffraction;

/// <summary>Crystallite size from the breadth of one line: D = Kλ/(β·cos θ), a volume-weighted length of columns, not a particle size.</summary>
/// <param name="TwoTheta">2θ of the line, degrees.</param>
/// <param name="K">Shape factor, without unit.</param>
/// <param name="Smallest">Size when the instrument's width is taken off in squares (Gauss), nm; without an instrument width the lower limit.</param>
/// <param name="Largest">Size when it is taken off plainly (Lorentz), nm; null when only a lower limit can be given.</param>
/// <param name="RelativeU">Standard uncertainty of either as a share: of the breadth and of K. Without unit.</param>
/// <remarks>P. Scherrer 1918 (from memory). A profile between Gauss and Lorentz lies within the bracket.</remarks>
public sealed record Scherrer(double TwoTheta, double K, double Smallest, double? Largest, double RelativeU)
{
    /// <summary>Usual shape factor for the width at half height, 0.89 to 0.94 (common practice).</summary>
    public const double UsualK = 0.9;

    /// <summary>Relative standard uncertainty of K (common practice).</summary>
    public const double RelativeUOfK = 0.05;

    /// <summary>A breadth of the sample below this part of the instrument's tells no size.</summary>
    public const double LeastBroadening = 0.2;

    /// <summary>The bracket of one line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    /// <param name="instrument">Instrument's width at that angle, degrees; null when not measured, which leaves a lower limit.</param>
    /// <param name="k">Shape factor.</param>
    public static Scherrer Of(FittedLine line, double wavelength, double? instrument, double k = UsualK)
    {
        ArgumentNullException.ThrowIfNull(line);
        // Not less broad than measured less nothing: every correction makes the crystallites larger.
        var least = Size(line.Width, line.TwoTheta, wavelength, k);
        if (instrument is not { } b)
            return new(line.TwoTheta, k, least, null, Share(line.WidthU / line.Width));
        if (line.Width - b < LeastBroadening * b)
        {
            // The most that can hide in such a width, taken off in squares.
            var hidden = b * Math.Sqrt(Math.Pow(1 + LeastBroadening, 2) - 1);
            return new(line.TwoTheta, k, Size(hidden, line.TwoTheta, wavelength, k), null, RelativeUOfK);
        }

        var (lorentz, gauss) = (line.Width - b, Math.Sqrt(line.Width * line.Width - b * b));
        // Both breadths rise with the width; the plain difference feels it most.
        return new(line.TwoTheta, k, Size(gauss, line.TwoTheta, wavelength, k), Size(lorentz, line.TwoTheta, wavelength, k), Share(line.WidthU / lorentz));
    }

    /// <summary>Kλ/(β·cos θ), nm.</summary>
    /// <param name="breadth">β, degrees of 2θ.</param>
    /// <param name="twoTheta">2θ, degrees.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    /// <param name="k">Shape factor, without unit.</param>
    public static double Size(double breadth, double twoTheta, double wavelength, double k)
        => k * wavelength / 10 / (breadth * Math.PI / 180 * Math.Cos(Bragg.Theta(twoTheta)));

    private static double Share(double breadth) => Math.Sqrt(breadth * breadth + RelativeUOfK * RelativeUOfK);
}
