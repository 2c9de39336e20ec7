using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;

namespace Holdfast.Claims;

/// <summary>What every claim about a sensor stands on: that it responds at all.</summary>
internal static class SensorGround
{
    /// <summary>The response of the series that the claim names, or of the only one.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static IEnumerable<Claim> Of(Claim claim, Evidence evidence)
    {
        var sensing = Sensing.Of(evidence);
        var series = sensing.SeriesNamed(claim.Words("series")) ?? sensing.SeriesNamed(null);
        return series is null ? [] : [Claim.Raised(SensorResponds.RuleId, ("series", series.Name))];
    }
}
