using Holdfast.Testing;
using Holdfast.WaterLimits;

namespace Holdfast.Tests.WaterLimits;

// reference/measurement/water-limits.csv: the table as typed, source and status in every row.
public sealed class WaterLimitTests
{
    [Fact]
    public void All_EveryTypedRow_IsThereWithItsStatus()
    {
        var rows = ReferenceTable.Read("measurement", "water-limits.csv");
        Assert.All(rows, row =>
        {
            var found = WaterLimit.All.Single(l => l.Element == row["metal"] && l.Scheme == row["scheme"] && l.Kind == row["kind"]);
            Assert.Equal(row.Has("value_mg_L") ? row.Number("value_mg_L") : null, found.Value);
            Assert.Equal((row.Number("year"), row["note"], row["source"]), (found.Year, found.Note, found.Status));
        });
        Assert.Equal(rows.Count, WaterLimit.All.Count(l => l.Kind != "any one day"));
    }

    // 40 CFR 433.15: the daily maximum stands beside the monthly mean; nickel 3.98 and 2.38 mg/L.
    [Theory]
    [InlineData("US metal finishing any one day", 3.98)]
    [InlineData("US metal finishing daily maximum", 3.98)]
    [InlineData("US metal finishing monthly average", 2.38)]
    [InlineData("40 CFR 433.15 monthly mean", 2.38)]
    [InlineData("EU drinking water 2020/2184 nickel", 0.020)]
    [InlineData("EU", 0.020)]
    [InlineData("WHO drinking water", 0.07)]
    [InlineData("India inland surface water", 3.0)]
    public void Named_Nickel_IsTheOneLimit(string words, double value) => Assert.Equal(value, Assert.Single(WaterLimit.Named("Ni", words)).Value);

    [Theory]
    [InlineData("EU drinking water lead")]
    [InlineData("Mars drinking water")]
    [InlineData("0.020 mg/L")]
    [InlineData("")]
    public void Named_AnotherMetalOrNothingKnown_IsNone(string words) => Assert.Empty(WaterLimit.Named("Ni", words));

    [Fact]
    public void Named_WordsThatFitSeveral_GiveThemAll()
        => Assert.Equal(3, WaterLimit.Named("Ni", "drinking water").Count);
}
