namespace Holdfast.Kinetics;

/// <summary>
/// A reacted shell that grows inwards at constant bulk concentration: time over the time of full conversion, by what controls. The shell must
/// be seen in a cross-section before the picture is claimed, and the three laws are compared on q, not on the R² of their lines.
/// </summary>
/// <remarks>S. Yagi and D. Kunii 1955; O. Levenspiel, Chemical Reaction Engineering (both from memory).</remarks>
public static class ShrinkingCore
{
    /// <summary>t/τ at conversion F.</summary>
    /// <param name="control">What controls.</param>
    /// <param name="fraction">F, 0 to 1.</param>
    public static double Time(CoreControl control, double fraction)
    {
        if (!(fraction >= 0 && fraction <= 1))
            throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "The fraction lies from 0 to 1.");
        var core = Math.Cbrt(1 - fraction);
        return control switch
        {
            CoreControl.Film => fraction,

            // 1 − 3y² + 2y³ with y the core's radius, factored so that thin shells keep their digits.
            CoreControl.Layer => Shell(fraction, core) * Shell(fraction, core) * (1 + 2 * core),
            CoreControl.Reaction => Shell(fraction, core),
            _ => throw new ArgumentOutOfRangeException(nameof(control), control, "Unknown control."),
        };
    }

    /// <summary>Conversion F at t/τ; 1 from τ on.</summary>
    /// <param name="control">What controls.</param>
    /// <param name="time">t/τ, 0 or above.</param>
    public static double Fraction(CoreControl control, double time)
    {
        if (!(time >= 0))
            throw new ArgumentOutOfRangeException(nameof(time), time, "t/τ is 0 or above.");
        if (time >= 1)
            return 1;
        return control switch
        {
            CoreControl.Film => time,

            // 2y³ − 3y² + 1 = t/τ by the cosine of a third of the angle.
            CoreControl.Layer => 1 - Math.Pow(0.5 + Math.Cos((Math.Acos(2 * time - 1) - 2 * Math.PI) / 3), 3),
            CoreControl.Reaction => 1 - Math.Pow(1 - time, 3),
            _ => throw new ArgumentOutOfRangeException(nameof(control), control, "Unknown control."),
        };
    }

    // 1 − y from F = 1 − y³.
    private static double Shell(double fraction, double core) => fraction / (1 + core + core * core);
}

/// <summary>What controls the growth of the shell.</summary>
public enum CoreControl
{
    /// <summary>The liquid film: t/τ = F.</summary>
    Film,

    /// <summary>Diffusion through the reacted layer: t/τ = 1 − 3(1 − F)^(2/3) + 2(1 − F).</summary>
    Layer,

    /// <summary>The reaction at the core's surface: t/τ = 1 − (1 − F)^(1/3).</summary>
    Reaction,
}
