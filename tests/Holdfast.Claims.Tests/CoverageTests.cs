using Holdfast.Coverage;

namespace Holdfast.Claims.Tests;

/// <summary>A small seeded part of docs/coverage.md: simulated studies with hidden truth through calibration, work-up and fit.</summary>
public class CoverageTests
{
    // Binomial standard deviation of 120 studies at 0.95: 0.02. Unweighted least squares of q on Ce covers 53 to 83 % of these truths.
    [Theory, InlineData("Langmuir, good, 8 × 3, constant noise, vessels scatter 2 %"), InlineData("Freundlich, steep, 8 × 1, proportional noise, vessels scatter 2 %")]
    [InlineData("Langmuir, good, 8 × 3, constant noise, vessels scatter 2 % in the amount"), InlineData("Pseudo-second-order, 8 × 1, constant noise, vessels scatter 2 %")]
    public void Intervals_OfSimulatedStudies_HoldTheTruthAsOftenAsPrinted(string condition)
    {
        var simulated = Condition.All.Single(c => c.Name == condition);
        var tallies = Tally.Count(simulated, 0, 120);
        Assert.All(tallies.Take(simulated.Truth.Length), t =>
        {
            Assert.Equal(120, t.Printed);
            Assert.InRange(t.Share!.Value, 0.89, 1.0);
        });
    }
}
