using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>The rule on composition on plain numbers for each of its rulings, on both sides of its limits, and on whole files.</summary>
public class CompositionRuleTests
{
    private static readonly double[] Five = [0.0402, 0.0421, 0.0399, 0.0410, 0.0405];

    // 2 % bias stated: 0.0407 ± 0.0014; against 0.04 with the next formula at 0.08 it agrees within 10 %, against 0.05 it does not.
    [Theory]
    [InlineData(0.04, 0.08, 0.02, Ruling.Holds)]
    [InlineData(0.05, 0.08, 0.02, Ruling.Contradicted)]
    [InlineData(0.04, 0.042, 0.02, Ruling.NotShownYet)]
    [InlineData(0.05, 0.08, null, Ruling.NotShownYet)]
    public void Composition_ByMarginAndBias_IsRuled(double formula, double rival, double? bias, Ruling ruling)
        => Assert.Equal(ruling, CompositionMatches.Decide("x", Five, formula, rival, dissolved: false, totalKnown: true, bias).Gated);

    // reference/composition/elements.json: six spots, 0.04023 ± 0.00307 by scatter, nominal 0.05 rejected.
    [Fact]
    public void Composition_OfTheReferenceSpots_RejectsTheNominal()
    {
        var decision = CompositionMatches.Decide("x", [0.03875049, 0.04246795, 0.03712575, 0.03951487, 0.04497992, 0.03853794], 0.05, null, dissolved: true, totalKnown: true, 0.02);
        Assert.Equal(Ruling.Contradicted, decision.Gated);
        Assert.Equal(0.04022949, decision.Numbers[0].Value, 1e-7);
        Assert.Equal(0.00306931, decision.Numbers[0].High!.Value - decision.Numbers[0].Value, 1e-6);
    }

    [Theory, InlineData(CompositionMatches.Limits.Places, Ruling.Holds), InlineData(CompositionMatches.Limits.Places - 1, Ruling.NotShownYet)]
    public void Composition_WithFewerPlaces_IsNotShown(int places, Ruling ruling)
        => Assert.Equal(ruling, CompositionMatches.Decide("x", Alike(places), 0.04, 0.08, dissolved: false, totalKnown: true, 0.02).Gated);

    [Theory, InlineData(CompositionMatches.Limits.Digests, Ruling.Holds), InlineData(CompositionMatches.Limits.Digests - 1, Ruling.NotShownYet)]
    public void Composition_WithFewerDigests_IsNotShown(int digests, Ruling ruling)
        => Assert.Equal(ruling, CompositionMatches.Decide("x", Alike(digests), 0.04, 0.08, dissolved: true, totalKnown: true, null).Gated);

    [Theory, InlineData(true, Ruling.Holds), InlineData(false, Ruling.NotShownYet)]
    public void Composition_OfNormalisedTotals_IsNotShown(bool known, Ruling ruling)
        => Assert.Equal(ruling, CompositionMatches.Decide("x", Five, 0.04, 0.08, dissolved: false, totalKnown: known, 0.02).Gated);

    // Both sides of |difference| − U = margin, and of |difference| + U = margin, with a margin of half the way to the next formula.
    [Theory, InlineData(1e-6, Ruling.NotShownYet), InlineData(-1e-6, Ruling.Contradicted)]
    public void Composition_AtTheOuterEdgeOfTheMargin_Turns(double wider, Ruling ruling)
    {
        var formula = Five.Average() + U(0.02) + 0.001;
        Assert.Equal(ruling, CompositionMatches.Decide("x", Five, formula, formula + 2 * (0.001 + wider), dissolved: false, totalKnown: true, 0.02).Gated);
    }

    [Theory, InlineData(1e-6, Ruling.Holds), InlineData(-1e-6, Ruling.NotShownYet)]
    public void Composition_AtTheInnerEdgeOfTheMargin_Turns(double wider, Ruling ruling)
    {
        var formula = Five.Average() + 0.001;
        Assert.Equal(ruling, CompositionMatches.Decide("x", Five, formula, formula + 2 * (0.001 + U(0.02) + wider), dissolved: false, totalKnown: true, 0.02).Gated);
    }

    // The widest margin, from the limit itself: a formula at which the interval just lies inside, and one at which it does not.
    [Theory, InlineData(1e-4, Ruling.Holds), InlineData(-1e-4, Ruling.NotShownYet)]
    public void Composition_AtTheWidestMargin_Turns(double nearer, Ruling ruling)
    {
        var formula = (Five.Average() + U(0.02)) / (1 + CompositionMatches.Limits.Margin) * (1 + nearer);
        Assert.Equal(ruling, CompositionMatches.Decide("x", Five, formula, null, dissolved: false, totalKnown: true, 0.02).Gated);
    }

    [Fact]
    public void Composition_WithoutAnotherFormula_HasTenPerCent()
    {
        double[] sharp = [.. Alike(5).Select(v => 0.04 + 0.01 * (v - 0.04))];
        Assert.Equal(Ruling.Holds, CompositionMatches.Decide("x", sharp, 0.04 * 1.05, null, dissolved: false, totalKnown: true, 0.001).Gated);
        Assert.Equal(Ruling.Contradicted, CompositionMatches.Decide("x", sharp, 0.04 * 1.12, null, dissolved: false, totalKnown: true, 0.001).Gated);
    }

    // Three digests of a made powder, Co/(Co+Zn) 0.0404: agrees with x = 0.04 against 0.08, not with 0.06; without one of its elements nothing is decided.
    [Fact]
    public void Claims_OnAWholeFile_AreJudged()
    {
        var study = Reading.Taken(Studies.Import.Answers.None.With("technique", "elements"), ("ZC.csv", "digest,Co (mg/g),Zn (mg/g)\nD1,29.2,768.6\nD2,29.0,765.0\nD3,29.3,768.9\n"));
        Assert.Equal(Ruling.Holds, Judged("Zn1-xCoxO, x = 0.04", "Zn0.92Co0.08O"));
        Assert.Equal(Ruling.Contradicted, Judged("Zn0.94Co0.06O", null));
        Assert.Equal(Ruling.NotShownYet, Judged("no formula", null));
        Assert.Equal(Ruling.NotShownYet, Judged("Zn0.96Co0.04O", null, "Co/(Co+Fe)"));

        Ruling Judged(string formula, string? rival, string ratio = "Co/(Co+Zn)") => Defence.Rules.Single(r => r.Id == "composition-matches")
            .Judge(Claim.Raised("composition-matches", ("powder", "ZC"), ("ratio", ratio), ("formula", formula), ("rival", rival)), Evidence.Of(study)).Ruling;
    }

    // By simulation: of powders whose ratio is that of the formula at most one in twenty is contradicted; at the margin at most one in twenty holds.
    [Theory, InlineData(0.04, Ruling.Contradicted), InlineData(0.044, Ruling.Holds)]
    public void Composition_OfSimulatedPowders_IsSeldomWrong(double truth, Ruling wrong)
    {
        var random = new SeededStream(31, "composition");
        var wrongly = Enumerable.Range(0, 2000).Count(_ =>
        {
            var bias = 1 + 0.02 / 1.96 * random.Normal();
            double[] places = [.. Enumerable.Range(0, 5).Select(_ => bias * truth * (1 + 0.06 * random.Normal()))];
            return CompositionMatches.Decide("x", places, 0.04, 0.08, dissolved: false, totalKnown: true, 0.02).Gated == wrong;
        });
        Assert.InRange(wrongly, 0, 100);
    }

    private static double[] Alike(int count) => [.. Enumerable.Range(0, count).Select(i => 0.04 + 1e-4 * (i % 2 == 0 ? 1 : -1))];

    private static double U(double bias)
    {
        var mean = Summary.Of(Five).MeanEstimate().Value!;
        return Math.Sqrt(Math.Pow(mean.Interval().Half, 2) + Math.Pow(bias * mean.Value, 2));
    }
}
