namespace Holdfast.Calibration;

/// <summary>Blanks of a run that must show nothing.</summary>
public static class CarryOver
{
    /// <summary>Judges the blank read after the highest sample: the system must have been washed clean.</summary>
    /// <param name="id">The blank.</param>
    /// <param name="found">Its concentration, any unit.</param>
    /// <param name="limit">Detection limit, same unit.</param>
    /// <returns>A finding, or null when the blank is clean.</returns>
    public static Finding? AfterHighest(string id, double found, double limit)
        => found > limit ? CalibrationFindings.CarriedOver(id, found, limit) : null;

    /// <summary>Judges a blank of a step that holds no metal.</summary>
    /// <param name="id">The blank.</param>
    /// <param name="found">Its concentration, any unit.</param>
    /// <param name="limit">Detection limit, same unit.</param>
    /// <returns>A finding, or null when the blank is clean.</returns>
    public static Finding? Contamination(string id, double found, double limit)
        => found > limit ? CalibrationFindings.Contaminated(id, found, limit) : null;
}
