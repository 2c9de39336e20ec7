using Holdfast.Claims.Rules;

namespace Holdfast.Claims.Tests.Claims.Rules;

public sealed class EquilibriumReachedTests
{
    private static readonly Setting[] Levels =
    [
        new(30, [4.0, 4.1, 3.9]), new(60, [5.90, 6.02, 5.95]), new(90, [5.92, 6.05, 5.98]), new(200, [6.02, 6.10, 5.95]),
    ];

    [Theory]
    [InlineData(60, Ruling.Holds)]
    [InlineData(1440, Ruling.Holds)] // long after: equilibrium by 90 min is equilibrium by then
    [InlineData(75, Ruling.Holds)] // between: judged at 60 min
    [InlineData(200, Ruling.NotShownYet)] // the last time cannot show its own plateau
    [InlineData(30, Ruling.Contradicted)]
    [InlineData(45, Ruling.NotShownYet)] // no equilibrium by 30 min says nothing of 45 min
    [InlineData(10, Ruling.NotShownYet)]
    public void Equilibrium_ByATime_IsJudgedWhereItCanBe(double time, Ruling ruling)
        => Assert.Equal(ruling, EquilibriumReached.Decide("KIN", time, Levels, -0.05, 0.05).Gated);

    [Fact]
    public void Equilibrium_AtAHigherConcentrationThanTested_IsNotShown()
    {
        Assert.Equal(Ruling.Holds, EquilibriumReached.Decide("KIN", 60, Levels, -0.05, 0.05, 60, 60).Gated);
        Assert.Equal(Ruling.NotShownYet, EquilibriumReached.Decide("KIN", 60, Levels, -0.05, 0.05, 20, 60).Gated);
    }

    [Fact]
    public void Equilibrium_CurveThatLevelsOffHigher_IsNotShown()
        => Assert.Equal(Ruling.NotShownYet, EquilibriumReached.Decide("KIN", 60, Levels, -0.05, 0.05, plateau: 6.6).Gated);

    [Fact]
    public void Equilibrium_FallingUptake_IsContradictedToo()
    {
        Setting[] falling = [new(60, [6.0, 6.1, 6.05]), new(120, [5.5, 5.4, 5.45])];
        Assert.Equal(Ruling.Contradicted, EquilibriumReached.Decide("KIN", 60, falling, -0.05, 0.05).Gated);
    }

    // reference/sorption/flag-cases.csv, K2: nothing after the time is not shown. One later time is enough here and is warned of.
    [Fact]
    public void Equilibrium_OneLaterTime_IsWarnedOf()
    {
        var one = EquilibriumReached.Decide("KIN", 90, Levels, -0.05, 0.05);
        Assert.Equal(Ruling.Holds, one.Gated);
        Assert.Contains(one.Warnings, w => w.Contains("one later time", StringComparison.Ordinal));
        Assert.Empty(EquilibriumReached.Decide("KIN", 60, Levels, -0.05, 0.05).Warnings);
    }

    [Fact]
    public void Equilibrium_TwoVesselsPerTime_NeverHolds()
    {
        Setting[] two = [.. Levels.Select(l => new Setting(l.X, l.Values[..2]))];
        Assert.Equal(Ruling.NotShownYet, EquilibriumReached.Decide("KIN", 60, two, -0.05, 0.05).Gated);
    }
}
