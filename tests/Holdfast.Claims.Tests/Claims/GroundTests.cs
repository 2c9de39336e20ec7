namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// What each claim stands on: our own requirement that a claim is only as good as its ground. Sorption at each condition used under every claim of uptake by
/// sorption, equilibrium under every claim at equilibrium, stability under what needs the powder to stay, the response under every claim about a sensor.
/// </summary>
public sealed class GroundTests
{
    [Theory]
    [InlineData("optimum-dose", "not-precipitation")]
    [InlineData("smallest-sufficient-dose", "not-precipitation")]
    [InlineData("capacity", "not-precipitation", "equilibrium-reached")]
    [InlineData("best-kinetic-model", "not-precipitation")]
    [InlineData("best-isotherm", "not-precipitation", "equilibrium-reached")]
    [InlineData("monolayer", "not-precipitation", "equilibrium-reached", "capacity")]
    [InlineData("favourable", "not-precipitation")]
    [InlineData("removal-falls-with-concentration", "equilibrium-reached")]
    [InlineData("spontaneous-and-endothermic", "not-precipitation", "equilibrium-reached")]
    [InlineData("selective", "equilibrium-reached")]
    [InlineData("reusable", "not-precipitation", "stable-in-water")]
    [InlineData("regenerated-better", "not-precipitation", "stable-in-water")]
    [InlineData("ion-exchange", "not-precipitation", "stable-in-water")]
    [InlineData("meets-limit", "stable-in-water", "calibration-fit")]
    [InlineData("optimum-ph", "equilibrium-reached", "stable-in-water")]
    [InlineData("better-than-published", "equilibrium-reached")]
    [InlineData("low-cost", "reusable")]
    [InlineData("sensor-detection-limit", "sensor-responds")]
    [InlineData("sensor-linear", "sensor-responds")]
    [InlineData("quenching-mechanism", "sensor-responds")]
    [InlineData("works-in-water", "sensor-responds")]
    public void StandsOn_OfARule_NamesTheGroundItNeeds(string rule, params string[] grounds)
    {
        var found = new[] { StrongStudy.Dossier, StrongReuseStudy.Dossier, DemoStudy.Dossier }
            .SelectMany(d => Defence.ClaimsOf(d.Evidence).Where(c => c.Rule == rule).SelectMany(c => Defence.RuleNamed(rule)!.StandsOn(c, d.Evidence)))
            .Select(c => c.Rule).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(grounds.Except(found));
    }

    [Fact]
    public void MeetsLimit_OfAPowderThatDissolves_IsCapped()
    {
        var study = StrongStudy.Build();
        var dissolving = study with
        {
            Samples = [.. study.Samples.Select(s => s.Code.StartsWith("POWDER", StringComparison.Ordinal)
                ? s with { Facts = s.Facts.SetItem("dissolved-calcium", s.Facts["dissolved-calcium"] with { Value = 10 * s.Facts["dissolved-calcium"].Value }) } : s)],
        };
        var verdict = Dossier.Of(dissolving).Verdicts.First(v => v.Claim.Rule == "meets-limit");
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains("“The powder is stable in water at pH 6.”, and the data speak against that", verdict.Reason, StringComparison.Ordinal);
    }
}
