using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>The series in which the start concentration was varied, as the claims about isotherms see it.</summary>
internal static class IsothermSeries
{
    /// <summary>Every such series.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static IEnumerable<Series> All(Evidence evidence) => evidence.Series.Where(s => s.Varied == BatchProperties.InitialConcentration);

    /// <summary>The series a claim names, or the one with most levels, or null.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static Series? Of(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name
            ? evidence.SeriesNamed(name) is { } named && named.Varied == BatchProperties.InitialConcentration ? named : null
            : All(evidence).MaxBy(s => s.Levels.Length);
}
