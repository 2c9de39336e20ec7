namespace Holdfast.Studies;

/// <summary>
/// What the results of a batch test can be, wherever they are looked at: when a sheet is taken in, and when it is worked out. Beyond these ends a slip of unit, column or decimal is likelier than the number. Common practice: no powder takes
/// up more than its own mass of a metal, a slurry of more powder than this cannot be stirred as a batch, and removal is a share.
/// </summary>
/// <param name="MostUptake">Most uptake q, mg/g.</param>
/// <param name="MostDose">Most powder in the liquid, g/L.</param>
/// <param name="LeastRemoval">Least removal, %: a little below nothing, for the scatter of vessels that take up nothing.</param>
/// <param name="MostRemoval">Most removal, %.</param>
public sealed record PhysicalLimits(double MostUptake, double MostDose, double LeastRemoval, double MostRemoval)
{
    /// <summary>The limits that are used.</summary>
    public static PhysicalLimits Usual { get; } = new(MostUptake: 1000, MostDose: 60, LeastRemoval: -10, MostRemoval: 100);
}
