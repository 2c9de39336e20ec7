using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>The fitted isotherm series that a claim speaks of.</summary>
internal static class FittedIsotherm
{
    /// <summary>The series a claim names, or the one with most levels, or null.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static FittedSeries? Of(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name
            ? evidence.Isotherms.FirstOrDefault(f => string.Equals(f.Series.Name, name, StringComparison.OrdinalIgnoreCase))
            : evidence.Isotherms.MaxBy(f => f.Series.Levels.Length);
}
