namespace Holdfast.Claims.Tests.Claims;

/// <summary>Strictness that nobody can satisfy teaches nothing: a study done as it should be gets its claims.</summary>
public sealed class StrongStudyTests
{
    // Optimum dose and chemisorption are left out: an interior optimum is not there to be found, and a bond needs evidence that a batch study has not got.
    // The four of the plan need one: they hold in the study of PlanVerdictTests.
    // The best pH and stability in water hold in the studies made for them (WaterVerdictTests).
    public static TheoryData<string> Stated => [.. StrongStudy.Dossier.Verdicts.Where(v => v.Claim.Stated).Select(v => v.Claim.Rule)];

    [Theory]
    [MemberData(nameof(Stated))]
    public void StrongStudy_EachStatedClaim_Holds(string rule)
    {
        var verdict = StrongStudy.Dossier.Verdicts.First(v => v.Claim.Rule == rule);
        Assert.True(verdict.Ruling == Ruling.Holds, $"{verdict.Ruling}: {verdict.Reason} {string.Join(" ", verdict.Warnings)}");
        Assert.NotNull(verdict.Scope);
        Assert.DoesNotContain(verdict.Warnings, w => w.Contains("not shown yet", StringComparison.Ordinal) || w.Contains("speak against", StringComparison.Ordinal));
    }

    [Fact]
    public void StrongStudy_AllItsRules_AreStatedButThese()
        => Assert.Equal(["blocks-complete", "chemisorption", "margins-fixed-before", "optimum-dose", "optimum-ph", "order-randomised", "rate-step", "replicates-as-planned"], Defence.Rules.Select(r => r.Id).Except(StrongStudy.Dossier.Verdicts.Concat(StrongReuseStudy.Dossier.Verdicts).Where(v => v.Claim.Stated).Select(v => v.Claim.Rule)).Order());
}
