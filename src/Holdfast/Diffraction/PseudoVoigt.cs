namespace Holdfast.Diffraction;

/// <summary>The profile of a line: η Lorentz and 1 − η Gauss of one full width at half height, height 1.</summary>
/// <remarks>L = 1/(1 + 4u²/w²), G = exp(−4·ln 2·u²/w²), u the distance from the line (common practice).</remarks>
internal static class PseudoVoigt
{
    private const double FourLn2 = 4 * 0.693147180559945309417;

    /// <summary>Height at a distance, with the slopes by place, width and mixing.</summary>
    /// <param name="u">Distance from the line, degrees.</param>
    /// <param name="w">Full width at half height, degrees.</param>
    /// <param name="eta">Lorentz share, 0 to 1.</param>
    public static (double Value, double ByPlace, double ByWidth, double ByEta) At(double u, double w, double eta)
    {
        var t = u / w;
        var lorentz = 1 / (1 + 4 * t * t);
        var exponent = FourLn2 * t * t;
        var gauss = exponent < 700 ? Math.Exp(-exponent) : 0;
        // d/du of each; a step of the place moves u the other way, and d/dw is −u/w of d/du.
        var slope = eta * -8 * t * lorentz * lorentz + (1 - eta) * -2 * FourLn2 * t * gauss;
        return (eta * lorentz + (1 - eta) * gauss, -slope / w, -slope * t / w, lorentz - gauss);
    }

    /// <summary>Area for height 1 and width 1: η·π/2 + (1 − η)·√(π/ln 2)/2.</summary>
    /// <param name="eta">Lorentz share, 0 to 1.</param>
    public static double Area(double eta) => eta * Math.PI / 2 + (1 - eta) * Math.Sqrt(4 * Math.PI / FourLn2) / 2;
}
