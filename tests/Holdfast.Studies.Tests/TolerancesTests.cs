namespace Holdfast.Studies.Tests;

/// <summary>Settings that count as one: on both sides of each limit, the limit itself inside. Common practice.</summary>
public class TolerancesTests
{
    private const double Step = 1e-6;

    [Fact]
    public void Reaches_MayFallShortByTheToleranceOfStarts()
    {
        Assert.True(Tolerances.Reaches(40 * (1 - Tolerances.Start), 40));
        Assert.False(Tolerances.Reaches(40 * (1 - Tolerances.Start - Step), 40));
    }

    [Theory]
    [InlineData(40)]
    [InlineData(0.5)]
    public void SameSolution_IsAShareOfTheLarger_WhicheverComesFirst(double larger)
    {
        var limit = larger * (1 - Tolerances.Solution);
        Assert.True(Tolerances.SameSolution(larger, limit));
        Assert.True(Tolerances.SameSolution(limit, larger));
        Assert.False(Tolerances.SameSolution(larger, limit * (1 - Step)));
        Assert.False(Tolerances.SameSolution(double.NaN, larger));
    }
}
