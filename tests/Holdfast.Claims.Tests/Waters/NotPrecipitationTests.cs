namespace Holdfast.Claims.Tests.Waters;

// demo-scenario, section 6: pH 6 holds, pH 8 not shown, pH 9 contradicted; here by the constants, no solubility product being stated.
public sealed class NotPrecipitationTests
{
    [Theory]
    [InlineData("6", Ruling.Holds)]
    [InlineData("8", Ruling.NotShownYet)]
    [InlineData("9", Ruling.Contradicted)]
    public void Judge_NoProductStated_GoesByTheConstants(string ph, Ruling ruling)
    {
        var verdict = Judged(("series", "PH"), ("ph", ph));
        Assert.True(ruling == verdict.Ruling, verdict.Reason);
        Assert.Contains(verdict.Numbers, n => n.Name.Contains("Ni(OH)2 fresh", StringComparison.Ordinal) && n.Low < n.Value && n.High > n.Value);
    }

    [Fact]
    public void Judge_TextbookProduct_IsComparedAndAgrees()
    {
        var verdict = Judged(("series", "PH"), ("ph", "6"), ("ksp", "5.48e-16"));
        Assert.Equal(-0.07, verdict.Numbers.Single(n => n.Name.StartsWith("stated lg Ks", StringComparison.Ordinal)).Value, 0.005);
        Assert.DoesNotContain(verdict.Warnings, w => w.Contains("say where it is from", StringComparison.Ordinal));
    }

    [Fact]
    public void Judge_ProductFarFromOurs_AsksForItsSource()
    {
        var verdict = Judged(("series", "PH"), ("ph", "8"), ("ksp", "1e-12"));
        Assert.Contains(verdict.Warnings, w => w.Contains("say where it is from", StringComparison.Ordinal));
        Assert.Contains(verdict.Warnings, w => w.StartsWith("By the constants here", StringComparison.Ordinal));
    }

    private static Verdict Judged(params (string Name, string? Words)[] parameters)
        => Defence.RuleNamed("not-precipitation")!.Judge(Made.Claim("not-precipitation", parameters), DemoStudy.Dossier.Evidence);
}
