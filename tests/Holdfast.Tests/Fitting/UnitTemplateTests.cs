using Holdfast.Fitting.Solving;

namespace Holdfast.Tests.Fitting;

public class UnitTemplateTests
{
    [Theory]
    [InlineData("{y}", "mg/L", "mg/g", "mg/g")]
    [InlineData("1/({x})", "mg/L", "mg/g", "L/mg")]
    [InlineData("{y}/({x})", "mg/L", "mg/g", "L/g")]
    [InlineData("1/{x}", "min", "mg/g", "1/min")]
    [InlineData("1/({y}·{x})", "min", "mg/g", "g/(mg min)")]
    [InlineData("1/{x}", "µmol/L", "", "L/µmol")]
    [InlineData("1/({x}·{x})", "µmol/L", "", "L2/µmol2")]
    [InlineData("", "min", "mg/g", "")]
    [InlineData("{y}·({x})^(−1/n)", "mg/L", "mg/g", "mg/g·(mg/L)^(−1/n)")]
    [InlineData("1/({x})", "furlongs", "mg/g", "1/(furlongs)")]
    public void Unit_OfAParameter_FollowsTheUnitsOfTheData(string template, string x, string y, string expected)
        => Assert.Equal(expected, UnitTemplate.Fill(template, x, y).Replace('\u00A0', ' '));

    [Fact]
    public void Unit_WithARootOfTime_KeepsThePower()
        => Assert.Contains("0.5", UnitTemplate.Fill("{y}·{x}^(−1/2)", "min", "mg/g"), StringComparison.Ordinal);
}
