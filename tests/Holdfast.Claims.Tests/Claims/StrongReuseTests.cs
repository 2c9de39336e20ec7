using Holdfast.Claims.Analyses;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>A study of temperature, rivals, exchange, reuse and a bed that is done as it should be gets its claims.</summary>
public sealed class StrongReuseTests
{
    public static TheoryData<string> Stated => [.. StrongReuseStudy.Dossier.Verdicts.Where(v => v.Claim.Stated).Select(v => v.Claim.Rule)];

    [Theory]
    [MemberData(nameof(Stated))]
    public void StrongReuse_EachStatedClaim_Holds(string rule)
    {
        var verdict = StrongReuseStudy.Dossier.Verdicts.First(v => v.Claim.Rule == rule);
        Assert.True(verdict.Ruling == Ruling.Holds, $"{verdict.Ruling}: {verdict.Reason} {string.Join(" ", verdict.Warnings)}");
        Assert.NotNull(verdict.Scope);
        Assert.DoesNotContain(verdict.Warnings, w => w.Contains("not shown yet", StringComparison.Ordinal) || w.Contains("speak against", StringComparison.Ordinal));
    }

    // The truth that was put in comes out: 20 kJ/mol at every uptake, one calcium for one metal, preferences 3 and 25.
    [Fact]
    public void Analyses_OfTheStrongStudy_FindTheTruthPutIn()
    {
        var evidence = StrongReuseStudy.Dossier.Evidence;
        var family = Assert.Single(TemperatureStudy.Of(evidence).Families);
        Assert.True(family.Line!.Enthalpy.Interval(0.99).Contains(20));
        Assert.Equal(3, family.Heats.Length);
        Assert.All(family.Heats, h => Assert.True(h.Heat.Interval(0.99).Contains(20), h.ToString()));
        Assert.True(Assert.Single(ExchangeStudy.Of(evidence).Ions).Ratio!.Slope.Interval(0.99).Contains(1));
        Assert.All(MixtureStudy.Of(evidence).Rivals, r => Assert.True(r.Preference!.Interval(0.99).Contains(r.Metal == "Zn" ? 3 : 25)));
    }

    // Logistic with k 0.02/min and τ 400 min at 20 mg/L and 10 mL/min over 5 g: q0 = 400·20·0.01/5 = 16 mg/g, 5 % after 400 − ln 19/0.02 = 252.8 min.
    [Fact]
    public void Beds_OfTheStrongStudy_GiveBackTheirFront()
    {
        var study = ColumnStudy.Of(StrongReuseStudy.Dossier.Evidence);
        Assert.Equal(2, study.Runs.Length);
        Assert.Empty(study.Findings);
        Assert.Null(study.ServiceTime);
        foreach (var run in study.Runs)
        {
            Agree.Relative(0.01, 400, run.Curve["τ"].Value);
            Agree.Relative(0.02, 16, run.Capacity!.Value.Value);
            Agree.Relative(0.03, 252.8, run.BreakTime!.Value.Value);
            Agree.Relative(0.03, 252.8, run.TimeTo(1)!.Value.Value);
            Assert.InRange(run.UnusedLength!.Value.Value, 3, 5);
        }
    }

    // Uptake on the mass present: the powder that was lost is not counted as lost capacity.
    [Fact]
    public void Cycles_WeighedEachTime_AreOnTheMassPresent()
    {
        var series = Assert.Single(ReuseStudy.Of(StrongReuseStudy.Dossier.Evidence).Series);
        Assert.Empty(series.Findings);
        Assert.All(series.Cycles.Skip(1), c => Assert.All(c.Vessels, v => Assert.True(v.Uptake.Value > v.OnFirstMass)));
        Agree.Relative(0.02, 8.2, series.Cycles[4].Vessels.Average(v => v.Uptake.Value));
        Agree.Relative(0.001, 0.97, series.DesorptionEfficiency(1)!.Value);
        Assert.True(series.DesorptionEfficiency(5) < series.DesorptionEfficiency(1));
        Agree.Relative(0.001, 0.03 * series.Cycles.Sum(c => c.Vessels.Average(v => v.OnFirstMass)), series.LeftAtTheEnd!.Value);
    }
}
