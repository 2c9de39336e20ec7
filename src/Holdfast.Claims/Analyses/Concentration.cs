using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>A concentration found from the readings of one sample, in mg/L, corrected for dilution.</summary>
/// <param name="Value">The signed value with its uncertainty; null when no reading can be turned into a number (outside the calibrated range, no calibration).</param>
/// <param name="DetectionLimit">The detection limit of the run in the sample's own unit, mg/L, or null when not known.</param>
/// <param name="QuantificationLimit">Ten blank standard deviations, in mg/L, or null.</param>
/// <param name="Readings">The readings it rests on.</param>
/// <param name="Findings">Caveats: outside the range, extrapolated, censored.</param>
public sealed record Concentration(
    Measured? Value, double? DetectionLimit, double? QuantificationLimit, ImmutableArray<Reading> Readings, ImmutableArray<Finding> Findings)
{
    /// <summary>True when the value lies below the detection limit: it is printed as "&lt; limit" and stays signed inside.</summary>
    public bool IsBelowDetection => IsOnlyBelow || (Value is { } v && DetectionLimit is { } limit && v.Value < limit);

    /// <summary>True when all that is known is a limit that somebody wrote ("&lt; 0.05"): there is no signed value to fit.</summary>
    public bool IsOnlyBelow => Value is null && DetectionLimit is not null && !Readings.IsEmpty && Readings.All(r => r is { Value: null, Below: not null });

    /// <summary>True when the value lies below the limit of quantification.</summary>
    public bool IsBelowQuantification => Value is { } v && QuantificationLimit is { } limit && v.Value < limit;
}
