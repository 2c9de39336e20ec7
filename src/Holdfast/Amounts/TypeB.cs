namespace Holdfast.Amounts;

/// <summary>Standard uncertainties from other knowledge than repetition: tolerances, certificates, resolutions (JCGM 100, 4.3).</summary>
public static class TypeB
{
    /// <summary>Any value within ± the half-width is as likely: a/√3. A tolerance without more knowledge, a range of temperature.</summary>
    /// <param name="halfWidth">Half-width a, in the unit of the input.</param>
    public static double Rectangular(double halfWidth) => NotNegative(halfWidth) / Math.Sqrt(3);

    /// <summary>Values near the middle are likelier: a/√6. The tolerance of class A glass (Eurachem/CITAC QUAM, from memory).</summary>
    /// <param name="halfWidth">Half-width a, in the unit of the input.</param>
    public static double Triangular(double halfWidth) => NotNegative(halfWidth) / Math.Sqrt(6);

    /// <summary>A cycling input is longest near its ends: a/√2. A thermostat's temperature.</summary>
    /// <param name="halfWidth">Half-width a, in the unit of the input.</param>
    public static double Arcsine(double halfWidth) => NotNegative(halfWidth) / Math.Sqrt(2);

    /// <summary>A display or a text with steps: d/√12.</summary>
    /// <param name="step">One step of the last digit, in the unit of the input.</param>
    public static double Resolution(double step) => NotNegative(step) / Math.Sqrt(12);

    /// <summary>A certificate's expanded uncertainty: U/k.</summary>
    /// <param name="expanded">U, in the unit of the input.</param>
    /// <param name="k">Coverage factor, above 0.</param>
    public static double Certificate(double expanded, double k = 2)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k);
        return NotNegative(expanded) / k;
    }

    /// <summary>A 95 % range of which no more is said: a/1.96.</summary>
    /// <param name="halfWidth">Half-width a, in the unit of the input.</param>
    public static double Range95(double halfWidth) => NotNegative(halfWidth) / 1.96;

    /// <summary>A tolerance as a source, drawn in its own shape by Monte Carlo.</summary>
    /// <param name="id">Stable identity.</param>
    /// <param name="name">In words: "flask F-3, 100 mL, tolerance".</param>
    /// <param name="halfWidth">Half-width, in the unit of the input.</param>
    /// <param name="shape">Rectangular, triangular or arcsine.</param>
    /// <param name="unit">Unit of the input, for the budget.</param>
    /// <exception cref="ArgumentOutOfRangeException">A normal shape has no half-width.</exception>
    public static Source Tolerance(string id, string name, double halfWidth, Shape shape = Shape.Rectangular, string? unit = null)
        => new(id, name, shape switch
        {
            Shape.Rectangular => Rectangular(halfWidth),
            Shape.Triangular => Triangular(halfWidth),
            Shape.Arcsine => Arcsine(halfWidth),
            _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "A normal distribution has no half-width."),
        }, Shape: shape, Unit: unit);

    private static double NotNegative(double value)
        => value >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A half-width is 0 or above.");
}
