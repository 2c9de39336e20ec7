using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>Where a batch vessel measures well: below 20 % removal the uptake is noise, above 95 % the end concentration is (rules B4 and B5).</summary>
/// <remarks>20 % follows OECD Test Guideline 106 (from memory); 95 % and 10 % follow from the propagation of 2 % readings.</remarks>
public static class WorkingWindow
{
    /// <summary>Lowest removal for an uptake worth fitting, percent.</summary>
    public const double LowestRemoval = 20;

    /// <summary>Highest removal for an end concentration worth fitting, percent.</summary>
    public const double HighestRemoval = 95;

    /// <summary>Largest relative uncertainty of an uptake that is not marked weak; no unit.</summary>
    public const double LargestRelativeU = 0.10;

    /// <summary>An uptake with a larger relative uncertainty, or from too small a removal, is weak: mark it and weigh it by its u.</summary>
    /// <param name="removal">Removal, percent.</param>
    /// <param name="uptake">Uptake, mg/g.</param>
    public static bool UptakeIsWeak(double removal, Measured uptake) => removal < LowestRemoval || uptake.RelativeU > LargestRelativeU;

    /// <summary>Relative uncertainty of an uptake when both concentrations have the same relative uncertainty: r·√(1 + (1 − R)²)/R; no unit.</summary>
    /// <param name="relativeU">Relative standard uncertainty of each concentration, for example 0.02.</param>
    /// <param name="removedShare">Removed share R, above 0, at most 1.</param>
    public static double RelativeUOfUptake(double relativeU, double removedShare)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(removedShare);
        return relativeU * Math.Sqrt(1 + (1 - removedShare) * (1 - removedShare)) / removedShare;
    }
}
