using Holdfast.Amounts;

namespace Holdfast.Fluorescence;

/// <summary>
/// Light that never arrived, or never came out: the mixture absorbs at the excitation or at the emission wavelength. Absorbances are those of the
/// mixture in the cell that is read, less the cell. In a suspension the absorbance holds scatter, so that the correction is an estimate.
/// </summary>
/// <remarks>
/// Centre of a 1 cm cell: F·10^((Aex + Aem)/2), J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 2 (from memory). Whole
/// illuminated cell: 2.303·A/(1 − 10^−A) at both wavelengths (Lambert and Beer, averaged over the path). The two limits bracket the geometry.
/// </remarks>
public static class InnerFilter
{
    /// <summary>Sum of the absorbances above which the correction is large and said to be; no unit.</summary>
    public const double Warns = 0.3;

    /// <summary>Sum of the absorbances above which no number is given; no unit.</summary>
    public const double Refuses = 0.7;

    /// <summary>Factor that must be applied before any word on quenching; no unit (5 %, common practice).</summary>
    public const double Matters = 1.05;

    private static readonly double Ln10 = Math.Log(10);
    private static readonly Source Geometry = new(
        "inner-filter/geometry", "inner filter: centre of the cell or the whole of it", 1, Shape: Shape.Rectangular, Unit: "");

    /// <summary>Factor for light collected from the centre of a 1 cm cell; no unit.</summary>
    /// <param name="excitation">Absorbance at the excitation wavelength, 1 cm.</param>
    /// <param name="emission">Absorbance at the emission wavelength, 1 cm.</param>
    public static T AtCentre<T>(T excitation, T emission) where T : struct, IReal<T> => T.Exp(Ln10 / 2 * (excitation + emission));

    /// <summary>Factor for light collected from the whole illuminated cell; no unit.</summary>
    /// <param name="excitation">Absorbance at the excitation wavelength over the path, no unit.</param>
    /// <param name="emission">Absorbance at the emission wavelength over the path, no unit.</param>
    public static double OverWholeCell(double excitation, double emission) => OverPath(excitation) * OverPath(emission);

    /// <summary>Corrects a signal. No number where the sum of the absorbances is above 0.7.</summary>
    /// <param name="id">The reading.</param>
    /// <param name="signal">Signal, in any unit.</param>
    /// <param name="excitation">Absorbance at the excitation wavelength, 1 cm.</param>
    /// <param name="emission">Absorbance at the emission wavelength, 1 cm.</param>
    public static Outcome<InnerFilterCorrection> Correct(string id, Measured signal, Measured excitation, Measured emission)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        var sum = excitation.Value + emission.Value;
        if (sum > Refuses)
            return Outcome<InnerFilterCorrection>.None(FluorescenceFindings.InnerFilterRefused(id, sum));
        var centre = AtCentre(excitation, emission);
        var whole = OverWholeCell(excitation.Value, emission.Value);

        // The true geometry lies between the two formulas: half their difference is the half-width of a rectangle.
        var factor = centre + Measured.From(0, [new(Geometry, Math.Abs(centre.Value - whole) / 2 / Math.Sqrt(3))]);
        return new(new(signal * factor, factor, whole), sum > Warns ? [FluorescenceFindings.InnerFilterLarge(id, sum, factor.Value, whole)] : []);
    }

    private static double OverPath(double absorbance) => absorbance == 0 ? 1 : -Ln10 * absorbance / Elementary.ExpM1(-Ln10 * absorbance);
}

/// <summary>A signal without the inner filter.</summary>
/// <param name="Signal">Corrected signal, in the unit given.</param>
/// <param name="Factor">Factor applied, with the uncertainty of the absorbances and of the geometry; no unit.</param>
/// <param name="WholeCell">What the factor would be if the whole cell were seen; no unit.</param>
public sealed record InnerFilterCorrection(Measured Signal, Measured Factor, double WholeCell);
