using Holdfast.Amounts;

namespace Holdfast.Claims.Analyses;

/// <summary>A check standard read back on the run's own line.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Order">Where in the run it was read.</param>
/// <param name="Known">What it should hold, mg/L.</param>
/// <param name="Found">What was found, mg/L, or null when the reading is off the line.</param>
public sealed record CheckReading(string Code, int Order, double Known, Measured? Found)
{
    /// <summary>Found over known, in %; null when nothing was found.</summary>
    public double? Recovery => Found is { } found ? 100 * found.Value / Known : null;
}
