namespace Holdfast.BatchSorption;

/// <summary>Checks on whether a loss may be called sorption and a factor called constant (rules B10 and B11).</summary>
public static class Attribution
{
    /// <summary>A pH that moves further than this from start to end was not held constant; common practice; pH units.</summary>
    public const double LargestPHShift = 0.5;

    /// <summary>A start concentration further than this from its nominal value is looked into; common practice; share.</summary>
    public const double LargestStartError = 0.05;

    /// <summary>True when the measured start or control is so far from the nominal concentration that the dilution must be looked into (rule B11).</summary>
    /// <param name="measured">Measured start concentration, mg/L.</param>
    /// <param name="nominal">Nominal start concentration, mg/L, above 0.</param>
    public static bool StartIsOff(double measured, double nominal)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nominal);
        return Math.Abs(measured - nominal) > LargestStartError * nominal;
    }
}
