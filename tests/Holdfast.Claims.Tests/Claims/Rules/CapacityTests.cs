using Holdfast.Claims.Rules;

namespace Holdfast.Claims.Tests.Claims.Rules;

public sealed class CapacityTests
{
    private static readonly FittedCapacity Found = new("Langmuir", 13.5, 0.26, 12.97, 14.06, 0.93, 12.8, 34, null, -0.9, 24, 8);

    [Theory]
    [InlineData(13.5, Ruling.Holds)]
    [InlineData(14.1, Ruling.Holds)] // outside the interval, yet nearer than the margin: the same capacity for every use
    [InlineData(14.8, Ruling.NotShownYet)] // the interval reaches beyond 10 % of it
    [InlineData(15.5, Ruling.NotShownYet)] // the interval reaches within 10 % of it
    [InlineData(15.7, Ruling.Contradicted)]
    [InlineData(11.9, Ruling.NotShownYet)]
    [InlineData(11.7, Ruling.Contradicted)]
    public void Capacity_StatedNumber_IsHeldAgainstIntervalAndMargin(double stated, Ruling ruling)
        => Assert.Equal(ruling, Capacity.Decide(Found, stated, 0.10, null).Gated);

    [Fact]
    public void Capacity_UptakeMeasuredAboveIt_IsContradicted()
        => Assert.Equal(Ruling.Contradicted, Capacity.Decide(Found with { HighestUptake = 15 }, null, 0.10, null).Gated);

    // reference/sorption/flag-cases.csv, I2: coverage below 0.5 not shown, 0.5 to 0.8 weak (not enough to hold), from 0.8 holds.
    [Theory]
    [InlineData(0.1304, Ruling.NotShownYet)]
    [InlineData(0.6610, Ruling.NotShownYet)]
    [InlineData(0.8606, Ruling.Holds)]
    [InlineData(0.9730, Ruling.Holds)]
    public void Capacity_CoverageReached_DecidesWhetherItIsOne(double coverage, Ruling ruling)
        => Assert.Equal(ruling, Capacity.Decide(Found with { Coverage = coverage }, null, 0.10, null).Gated);
}
