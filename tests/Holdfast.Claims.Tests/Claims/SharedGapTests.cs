using System.Collections.Immutable;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Grounds that several claims share are told once.</summary>
public sealed class SharedGapTests
{
    // Two kinds of ground, by hand: three claims stand on the one of two series, one of them on the other as well.
    [Fact]
    public void Gaps_OfClaimsThatShareThem_AreOneEachMostSharedFirst()
    {
        var (one, other, lone) = (Ground("ph-recorded", "DOSE"), Ground("ph-recorded", "KIN"), Ground("controls-clean", "KIN"));
        var gaps = SharedGap.Of([Standing("a", one), Standing("b", other), Standing("c", one, other, lone), Standing("d")]);
        Assert.Equal(["ph-recorded", "controls-clean"], gaps.Select(g => g.Rule));
        Assert.Equal(["a", "b", "c"], gaps[0].Claims.Select(c => c.Claim.Id));
        Assert.Equal("ph-recorded of DOSE and KIN is shown.", gaps[0].Sentence);
        Assert.Equal(2, gaps[0].Grounds.Length);
        Assert.Equal("controls-clean of KIN is shown.", gaps[1].Sentence);
    }

    [Fact]
    public void Gaps_OfClaimsWithoutOpenGrounds_AreNone() => Assert.Empty(SharedGap.Of([Standing("a"), Standing("b")]));

    // Sentences that differ in more than the series cannot be one.
    [Fact]
    public void Sentence_OfClaimsThatDifferOtherwise_IsEachInItsOwnWords()
    {
        var (one, other) = (Ground("capacity", "DOSE"), Ground("capacity", "KIN") with { Sentence = "The capacity of KIN is 3 mg/g." });
        Assert.Equal("capacity of DOSE is shown. The capacity of KIN is 3 mg/g.", Together.Sentence([one, other]));
        Assert.Equal(one.Sentence, Together.Sentence([one]));
        Assert.Equal("", Together.Sentence([]));
    }

    private static Verdict Ground(string rule, string series)
        => new Decision(Ruling.NotShownYet, "Not yet.", "none").On(Made.Claim(rule) with { Id = rule + series, Rule = rule, Parameters = ImmutableSortedDictionary<string, string>.Empty.Add("series", series) }, $"{rule} of {series} is shown.", null, []);

    private static Verdict Standing(string id, params Verdict[] grounds)
        => new Decision(Ruling.Holds, "Yes.", "none").On(Made.Claim("rule") with { Id = id }, "A sentence.", null, []) with { OpenGrounds = [.. grounds] };
}
