namespace Holdfast.BatchSorption;

/// <summary>Checks on whether a loss may be called sorption and a factor called constant (rules B2, B6, B8, B10 and B11).</summary>
public static class Attribution
{
    /// <summary>Closer to the onset of precipitation than this, nothing is decided; pH units.</summary>
    public const double NearOnset = 0.5;

    /// <summary>A pH that moves further than this from start to end was not held constant; common practice; pH units.</summary>
    public const double LargestPHShift = 0.5;

    /// <summary>A start concentration further than this from its nominal value is looked into; common practice; share.</summary>
    public const double LargestStartError = 0.05;

    /// <summary>Separate vessels for any statement about a difference; common practice.</summary>
    public const int VesselsNeeded = 3;

    /// <summary>"The loss is sorption", as far as precipitation goes (rule B6).</summary>
    /// <param name="finalPH">Highest pH the vessel reached, usually the end pH.</param>
    /// <param name="saturationPH">pH at which the solid can form at the start concentration.</param>
    public static Standing NotPrecipitation(double finalPH, double saturationPH)
        => finalPH >= saturationPH ? Standing.Contradicted : finalPH >= saturationPH - NearOnset ? Standing.NotShown : Standing.Holds;

    /// <summary>A statement that rests on a sorbent-free control at the same end pH, time and vessel (rule B2).</summary>
    /// <param name="matchingControls">Number of such controls.</param>
    public static Standing HasControl(int matchingControls) => matchingControls > 0 ? Standing.Holds : Standing.NotShown;

    /// <summary>A difference rests on separate vessels; readings of one filtrate count once (rule B8).</summary>
    /// <param name="separateVessels">Number of separate vessels for each condition, the smallest.</param>
    public static Standing HasReplicates(int separateVessels) => separateVessels >= VesselsNeeded ? Standing.Holds : Standing.NotShown;

    /// <summary>"The pH was held" (rule B10).</summary>
    /// <param name="startPH">pH at the start, or null when not measured.</param>
    /// <param name="finalPH">pH at the end, or null when not measured.</param>
    public static Standing PHWasHeld(double? startPH, double? finalPH)
        => startPH is { } start && finalPH is { } end
            ? Math.Abs(end - start) > LargestPHShift ? Standing.Contradicted : Standing.Holds
            : Standing.NotShown;

    /// <summary>True when the measured start or control is so far from the nominal concentration that the dilution must be looked into (rule B11).</summary>
    /// <param name="measured">Measured start concentration, mg/L.</param>
    /// <param name="nominal">Nominal start concentration, mg/L, above 0.</param>
    public static bool StartIsOff(double measured, double nominal)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nominal);
        return Math.Abs(measured - nominal) > LargestStartError * nominal;
    }
}
