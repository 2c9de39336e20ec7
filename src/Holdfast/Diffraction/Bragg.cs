namespace Holdfast.Diffraction;

/// <summary>Bragg's law, λ = 2d·sin θ, in the ways it is read.</summary>
public static class Bragg
{
    /// <summary>Spacing d of the planes, ångström.</summary>
    /// <param name="twoTheta">2θ, degrees, above 0 and below 180.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static double Spacing(double twoTheta, double wavelength) => wavelength / (2 * Math.Sin(Theta(twoTheta)));

    /// <summary>2θ in degrees, or null when the planes are too close to diffract (d below λ/2).</summary>
    /// <param name="spacing">d, ångström.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static double? TwoTheta(double spacing, double wavelength)
    {
        var sine = wavelength / (2 * spacing);
        return sine is > 0 and < 1 ? 2 * Math.Asin(sine) * 180 / Math.PI : null;
    }

    /// <summary>Where the line of another wavelength lies, degrees of 2θ, or null where it cannot.</summary>
    /// <param name="twoTheta">2θ of the first line, degrees.</param>
    /// <param name="from">Wavelength of the first line, ångström.</param>
    /// <param name="to">The other wavelength, ångström.</param>
    public static double? Moved(double twoTheta, double from, double to)
    {
        var sine = Math.Sin(Theta(twoTheta)) * to / from;
        return sine is > 0 and < 1 ? 2 * Math.Asin(sine) * 180 / Math.PI : null;
    }

    /// <summary>θ in radians.</summary>
    /// <param name="twoTheta">2θ, degrees.</param>
    internal static double Theta(double twoTheta) => twoTheta * Math.PI / 360;
}
