namespace Holdfast.Claims.Tests.Waters;

// Limits by name: EU 2020/2184 nickel 0.020 mg/L; 40 CFR 433.15 nickel, monthly mean 2.38 mg/L (reference/measurement/water-limits.csv).
public sealed class NamedLimitTests
{
    [Theory]
    [InlineData("WATER-rinse", "US metal finishing monthly average", Ruling.Holds)]
    [InlineData("WATER-rinse", "EU drinking water 2020/2184 nickel", Ruling.Contradicted)]
    [InlineData("WATER-roof", "EU drinking water 2020/2184 nickel", Ruling.NotShownYet)]
    public void MeetsLimit_ByName_IsJudgedAsByItsNumber(string series, string limit, Ruling ruling)
    {
        var verdict = Judged(series, limit);
        Assert.True(ruling == verdict.Ruling, verdict.Reason);
        Assert.Contains(verdict.Warnings, w => w.Contains("Local codes prevail", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("drinking water", "fits several")]
    [InlineData("US EPA primary", "none is set")]
    [InlineData("Mars", "cannot be read")]
    public void MeetsLimit_UnclearName_SaysWhatItFits(string limit, string says)
    {
        var verdict = Judged("WATER-rinse", limit);
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains(says, verdict.Reason, StringComparison.Ordinal);
    }

    private static Verdict Judged(string series, string limit)
        => Defence.RuleNamed("meets-limit")!.Judge(Made.Claim("meets-limit", ("series", series), ("limit", limit)), DemoStudy.Dossier.Evidence);
}
