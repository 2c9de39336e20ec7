namespace Holdfast.Calibration;

/// <summary>One independent reading of one standard: a separate aliquot, not another flash of the same aspiration.</summary>
/// <param name="Level">Concentration of the standard, in the run's concentration unit; 0 for the zero standard.</param>
/// <param name="Signal">What the instrument showed, in its own unit.</param>
/// <param name="Id">Where it is recorded, or null.</param>
public readonly record struct StandardReading(double Level, double Signal, string? Id = null);
