using Holdfast.Claims.NextExperiments;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Claims on the same vessels that ask for the same setting get one experiment.</summary>
public sealed class CombinedExperimentTests
{
    // 6 and 8 vessels over two settings each, one in common: 3 + max(3, 4) + 4 = 11 in place of 14, by hand.
    [Fact]
    public void Claims_ThatShareVesselsAndASetting_AreRunAsOne()
    {
        var combined = Assert.Single(CombinedExperiment.Of([Asking("a", 6, ["2 g/L", "3 g/L"], "V1", "V2"), Asking("b", 8, ["3 g/L", "4 g/L"], "V2", "V3")]));
        Assert.Equal(["a", "b"], combined.Claims);
        Assert.Equal([("2 g/L", 3), ("3 g/L", 4), ("4 g/L", 4)], combined.Settings);
        Assert.Equal((11, 14), (combined.Vessels, combined.Apart));
        Assert.Equal("One experiment for a and b: 3 vessels at 2 g/L, 4 vessels at 3 g/L and 4 vessels at 4 g/L; 11 vessels in place of 14.", combined.Sentence);
    }

    // A third that meets both joins them, in whatever order they come.
    [Fact]
    public void Claims_JoinedByAThird_AreRunAsOne()
        => Assert.Equal(3, Assert.Single(CombinedExperiment.Of([Asking("a", 3, ["2 g/L"], "V1"), Asking("b", 3, ["4 g/L"], "V1"), Asking("c", 6, ["2 g/L", "4 g/L"], "V1")])).Claims.Length);

    [Fact]
    public void Claims_OfOtherVesselsOrSettingsOrWithoutVessels_StandAlone()
    {
        Assert.Empty(CombinedExperiment.Of([Asking("a", 6, ["2 g/L"], "V1"), Asking("b", 6, ["2 g/L"], "V2")]));
        Assert.Empty(CombinedExperiment.Of([Asking("a", 6, ["2 g/L"], "V1"), Asking("b", 6, ["3 g/L"], "V1")]));
        Assert.Empty(CombinedExperiment.Of([Asking("a", null, ["2 g/L"], "V1"), Asking("b", 6, ["2 g/L"], "V1")]));
        Assert.Empty(CombinedExperiment.Of([Asking("a", 0, ["2 g/L"], "V1"), Asking("b", 6, ["2 g/L"], "V1")]));
    }

    // 7 over 3 is 3 each: no setting is short of one.
    [Fact]
    public void Vessels_ThatDoNotDivide_AreRoundedUp()
        => Assert.All(CombinedExperiment.Of([Asking("a", 7, ["1 g/L", "2 g/L", "3 g/L"], "V1"), Asking("b", 1, ["1 g/L"], "V1")])[0].Settings, s => Assert.Equal(3, s.Vessels));

    private static Verdict Asking(string id, int? vessels, string[] settings, params string[] data)
        => new Decision(Ruling.NotShownYet, "Not yet.", "none") { Next = new("Run them.", vessels, [.. settings], "by hand") }.On(Made.Claim("rule") with { Id = id }, "A sentence.", null, data);
}
