using System.Text.RegularExpressions;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

public sealed partial class RuleTests
{
    private const int MostWords = 60;

    private static readonly string[] KeptOut = ["proves", "proven", "clearly", "excellent", "perfect"];

    public static TheoryData<string> Ids => [.. Defence.Rules.Select(r => r.Id)];

    // Snapshot of our own list: an addition shows up in review.
    [Fact]
    public void Rules_TheirIds_AreThese()
        => Assert.Equal(
        [
            "best-isotherm", "best-kinetic-model", "better-than-published", "blocks-complete", "calibration-fit", "capacity", "chemisorption", "controls-clean",
            "detection-limit", "equilibrium-reached", "favourable", "ion-exchange", "linear-calibration", "low-cost", "margins-fixed-before", "mass-balance", "meets-limit", "monolayer",
            "no-interference", "not-precipitation", "optimum-dose", "optimum-ph", "order-randomised", "outlet-meets-limit", "ph-recorded", "quenching-mechanism", "rate-step", "readings-inside-range",
            "regenerated-better", "removal-falls-with-concentration", "replicates-as-planned", "reproducible", "reusable", "selective", "sensor-detection-limit", "sensor-linear",
            "sensor-responds", "smallest-sufficient-dose", "spontaneous-and-endothermic", "stable-in-water", "works-in-water",
        ], Defence.Rules.Select(r => r.Id));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Rule_ItsSamples_CoverEveryRulingAsExpected(string id)
    {
        var samples = RuleSamples.All.Where(s => s.Rule == id).ToArray();
        Assert.All(samples, s => Assert.True(s.Expected == s.Decision.Gated, $"{s.Expected} expected: {s.Decision.Gated}, {Verdict(s.Decision).Reason}"));
        Assert.Equal(Enum.GetValues<Ruling>(), samples.Select(s => s.Expected).Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Rule_ItsWords_ArePlainAndShort(string id)
        => Assert.All(RuleSamples.All.Where(s => s.Rule == id), s => Plain(Verdict(s.Decision)));

    [Fact]
    public void DemoVerdicts_TheirWords_ArePlainAndShort()
        => Assert.All(DemoStudy.Dossier.Verdicts, Plain);

    // The two left out size their experiment from a fitted series, which a sample of plain numbers has not got.
    [Theory]
    [MemberData(nameof(Ids))]
    public void Rule_WhatDoesNotHold_LeadsToAnExperimentOrSaysWhatIsMissing(string id)
        => Assert.All(
            RuleSamples.All.Where(s => s.Rule == id && s.Expected != Ruling.Holds && s.Decision.Numbers.Length > 0 && id is not ("monolayer" or "best-isotherm")),
            s => Assert.NotNull(Verdict(s.Decision).Next));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Rule_DecidingNumbers_AreFiniteAndNamed(string id)
        => Assert.All(RuleSamples.All.Where(s => s.Rule == id).SelectMany(s => s.Decision.Numbers), n =>
        {
            Assert.True(double.IsFinite(n.Value) && (n.Low is not { } low || double.IsFinite(low)) && (n.High is not { } high || double.IsFinite(high)), n.ToString());
            Assert.NotEmpty(n.Name);
        });

    private static Verdict Verdict(Decision decision) => decision.On(Made.Claim("rule"), "A sentence.", "a scope", []);

    private static void Plain(Verdict verdict)
    {
        var words = Words().Count(verdict.Reason);
        Assert.True(words is > 5 and <= MostWords, Invariant($"{verdict.Claim.Id}: {words} words: {verdict.Reason}"));
        string[] all = [verdict.Sentence, verdict.Reason, .. verdict.Warnings, .. verdict.Questions.Select(q => q.Text), .. verdict.Gates.Select(g => g.Sentence), verdict.Next?.Sentence ?? ""];
        Assert.All(all, text =>
        {
            Assert.DoesNotContain(KeptOut, k => text.Contains(k, StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("{", text, StringComparison.Ordinal);
        });
        Assert.Equal(verdict.Ruling == Ruling.Holds, verdict.Scope is not null);
    }

    [GeneratedRegex(@"[\p{L}\p{N}]+\S*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Words();
}
