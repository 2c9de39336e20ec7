using Holdfast.Amounts;
using Holdfast.Claims.Rules;
using Holdfast.Statistics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// The limit laid exactly on the bound that the data give, and a last bit to either side of it. A bound that only touches the limit does not pass it: "below" and "above" in the rules' words leave the
/// equal case out, so neither side of the claim is shown.
/// </summary>
public sealed class EqualBoundTests
{
    private const Ruling Yes = Ruling.Holds, No = Ruling.Contradicted, Open = Ruling.NotShownYet;

    // An estimate without scatter is its own bound.
    [Fact]
    public void Rulings_OnABoundThatTouches_AreOpen()
    {
        Estimate at = new("exact", 2, 0, 10, 12);
        Assert.Equal([Open, No, Yes], Beside(2, l => IntervalRuling.Below(at, l)));
        Assert.Equal([Open, Yes, No], Beside(2, l => IntervalRuling.Above(at, l)));
        Assert.Equal(Open, IntervalRuling.Within(at, 2, 3));
        Assert.Equal(Open, IntervalRuling.Within(at, 1, 2));
        Assert.Equal(No, IntervalRuling.Within(at, Math.BitIncrement(2), 3));
        Assert.Equal(No, IntervalRuling.Within(at, 1, Math.BitDecrement(2)));
        Assert.Equal(Yes, IntervalRuling.Within(at, Math.BitDecrement(2), Math.BitIncrement(2)));
        Assert.Equal(Open, IntervalRuling.All([]));
    }

    // What is found by several looks is judged at 0.05 over their number: t(0.975, 10) = 2.2281 and t(0.95, 10) = 1.8125 (t table).
    [Fact]
    public void Ruling_OfSeveralLooks_DividesTheChanceOfAnError()
    {
        Estimate Above(double t) => new("found", 2 + t, 1, 10, 12);
        Assert.Equal(No, IntervalRuling.Within(Above(1.8126), 1, 2));
        Assert.Equal(Open, IntervalRuling.Within(Above(1.8124), 1, 2));
        Assert.Equal(Open, IntervalRuling.Within(Above(2.2280), 1, 2, 2));
        Assert.Equal(No, IntervalRuling.Within(Above(2.2282), 1, 2, 2));
    }

    [Fact]
    public void SufficientDose_MarginOnTheBoundOfAGainOrALoss_LeavesItOpen()
    {
        Setting[] alike = [At(1, 70, 70.3, 69.8), At(2, 86, 86.2, 85.9), At(3, 86.4, 86.1, 86.6)];
        var gain = SmallestSufficientDose.Decide(2, alike, 2).Numbers.Single(n => n.Name.StartsWith("gain", StringComparison.Ordinal));
        Assert.Equal([Open, Open, Yes], Beside(gain.High!.Value, m => SmallestSufficientDose.Decide(2, alike, m).Ruling));
        Setting[] more = [At(1, 70, 70.3, 69.8), At(2, 86, 86.2, 85.9), At(3, 93, 92.8, 93.1)];
        var rise = SmallestSufficientDose.Decide(2, more, 2).Numbers.Single(n => n.Name.StartsWith("gain", StringComparison.Ordinal));
        Assert.Equal([Open, No, Open], Beside(rise.Low!.Value, m => SmallestSufficientDose.Decide(2, more, m).Ruling));
        var loss = SmallestSufficientDose.Decide(2, alike, 2).Numbers.Single(n => n.Name.StartsWith("loss", StringComparison.Ordinal));
        Assert.Equal([Open, Yes, Open], Beside(loss.Low!.Value, m => SmallestSufficientDose.Decide(2, alike, m).Ruling));
        Assert.Equal([Open, Open, No], Beside(loss.High!.Value, m => SmallestSufficientDose.Decide(2, alike, m).Ruling));
    }

    [Fact]
    public void BetterThanPublished_ValueOnTheBound_LeavesItOpen()
    {
        Estimate own = new("own", 11, 0.2, 20, 24);
        Ruling Of(double published) => BetterThanPublished.Decide(own, published, 0, []).Ruling;
        Assert.Equal([Open, Yes, Open], Beside(own.LowerBound(), Of));
        Assert.Equal([Open, Open, No], Beside(own.UpperBound(), Of));

        // Theirs counts with its own one-sided 95 %: 1.6449 of its standard uncertainty (normal table), at no error of one's own.
        Ruling Exact(double published) => BetterThanPublished.Decide(own with { StandardError = 0 }, published, 1, []).Ruling;
        Assert.Equal((Yes, Open, Open, No), (Exact(11 - 1.6450), Exact(11 - 1.6448), Exact(11 + 1.6448), Exact(11 + 1.6450)));
    }

    [Fact]
    public void MeetsLimitAndOutlet_LimitOnTheBound_LeavesItOpen()
    {
        var water = At(0, 0.653, 0.685, 0.57);
        double Bound(string which) => MeetsLimit.Decide(water, 1, 0.1, 0.03).Numbers.Single(n => n.Name == $"one-sided 95 % {which} bound").Value;
        Assert.Equal([Open, Open, Yes], Beside(Bound("upper"), l => MeetsLimit.Decide(water, l, 0.1, 0.03).Ruling));
        Assert.Equal([Open, No, Open], Beside(Bound("lower"), l => MeetsLimit.Decide(water, l, 0.1, 0.03).Ruling));
        var beds = At(0, 240, 251, 246);
        var time = OutletMeetsLimit.DecideBed(beds, 200).Numbers[0];
        Assert.Equal([Open, Yes, Open], Beside(time.Low!.Value, t => OutletMeetsLimit.DecideBed(beds, t).Ruling));
        Assert.Equal([Open, Open, No], Beside(time.High!.Value, t => OutletMeetsLimit.DecideBed(beds, t).Ruling));
    }

    [Fact]
    public void Reproducible_MarginOnTheUpperBoundOfTheScatter_LeavesItOpen()
    {
        Group[] batches = [new("B1", [8.000, 8.001, 7.999]), new("B2", [8.030, 8.031, 8.029]), new("B3", [8.060, 8.061, 8.059])];
        var upper = Reproducible.Decide(batches, 0.1).Numbers.Single(n => n.Name.Contains("upper bound", StringComparison.Ordinal)).Value / 100;
        Assert.Equal([Open, Yes], [Reproducible.Decide(batches, upper * (1 - 1e-12)).Ruling, Reproducible.Decide(batches, upper * (1 + 1e-12)).Ruling]);
    }

    // Losses without scatter are their own bound; 5 % and 50 % of a removal of 80 % are 4 and 40.
    [Fact]
    public void NotPrecipitation_LossOnTheShareOfTheRemoval_IsLeftOutBelowAndTakenAbove()
    {
        Hydroxide bare = new("Ni(OH)2", 20e-3 / 58.693, 2, 5.48e-16);
        Ruling Of(double loss) => NotPrecipitation.Decide(6, 6.7, bare, At(0, 80, 80), new(0, [loss]) { Propagated = [Measured.From(loss, new Source("loss", "loss", 1e-150))] }).Ruling;
        Assert.Equal([Open, Yes, Open], Beside(NotPrecipitation.Limits.Passing * 80, Of));
        Assert.Equal([No, Open, No], Beside(NotPrecipitation.Limits.Failing * 80, Of));
    }

    [Fact]
    public void Selective_AndRelease_BothSidesOfTheirBounds()
    {
        // Two kinds of limits that Chemisorption prints: 20 % held, 80 % loose. Readings without scatter have no bound; a hundredth of a per cent on either side decides.
        static Ruling? Released(double mean) => Chemisorption.Release([mean - 0.001, mean, mean + 0.001])?.Ruling;
        Assert.Equal((Yes, Open), (Released(Chemisorption.Limits.Held - 0.01), Released(Chemisorption.Limits.Held + 0.01)));
        Assert.Equal((Open, No), (Released(Chemisorption.Limits.Loose - 0.01), Released(Chemisorption.Limits.Loose + 0.01)));
        var release = Chemisorption.Release([3, 3.5, 2.9])!.Numbers[0];

        // t(0.95, 2) = 2.9200 (t table), sd of the three 0.32146.
        Assert.Equal(3.13333 + 2.9200 * 0.32146 / Math.Sqrt(3), release.High!.Value, 3);
        Assert.Equal([No, Open, Yes], new[] { 1.0, 3.0, 4.0 }.Select(mean => Selective.Decide([("Zn", [.. new[] { mean - 0.1, mean, mean + 0.1 }.Select(v => (Measured)v)])], 3).Ruling));
    }

    [Fact]
    public void Ordinary_EqualCases_AreAsTheirWordsSay()
    {
        Assert.Equal(Yes, ReadingsInsideRange.Decide([("V-1", 0.216, 1)], 0.216).Ruling);
        Assert.Equal(No, ReadingsInsideRange.Decide([("V-1", Math.BitIncrement(0.216), 1)], 0.216).Ruling);
        Assert.Equal(Yes, PhRecorded.Decide([6, 6 + PhRecorded.Limits.Spread], null, constantPh: true).Gated);
        Assert.Equal(No, PhRecorded.Decide([6.5], 6.5, constantPh: true).Ruling);
        FittedCapacity found = new("Langmuir", 10, 0.2, 9.8, 10.2, 0.9, 9.4, 34, null, -0.95, 24, 8);
        Assert.DoesNotContain(Capacity.Decide(found, null, 0.1, null).Questions, q => q.Code == "Q22");
        Assert.Contains(Capacity.Decide(found with { Correlation = -0.951 }, null, 0.1, null).Questions, q => q.Code == "Q22");
        Assert.False(Adequacy.Usable(Made.Series("S", null, [(1, [Made.Vessel("V", "S", 10, 0, 2)])])).Passed);
        Assert.True(Adequacy.Usable(Made.Series("S", null, [(1, [Made.Vessel("V", "S", 10, 0.001, 2)])])).Passed);
        Assert.False(Made.Vessel("V", "S", 10, 0.05, 2, detection: 0.05, quantification: 0.05).End!.IsBelowDetection);
        Assert.False(Made.Vessel("V", "S", 10, 0.05, 2, detection: 0.05, quantification: 0.05).End!.IsBelowQuantification);
        Assert.Null(MarginKind.Read("removal", "-2", "-2").Margin);
        Assert.NotNull(MarginKind.Read("removal", "-2", "-1.99").Margin);
    }

    // A difference, a slope, a line without scatter at nothing: neither a rise nor a fall is shown, and nobody is asked about one.
    [Fact]
    public void Nothing_WithoutScatter_IsNoRiseAndNoFall()
    {
        Estimate none = new("exact", 0, 0, 10, 12);
        var level = RegeneratedBetter.Decide(none, massIsKnown: false, 0);
        Assert.Equal((Open, 0, 0), (level.Ruling, level.Warnings.Length, level.Questions.Length));
        Assert.Equal([Open, No, Yes], Beside(0, d => RegeneratedBetter.Decide(none with { Value = d }, true, 0).Ruling));
        Assert.Equal(["Q55", "Q56"], RegeneratedBetter.Decide(none with { Value = 1 }, false, 0).Questions.Select(q => q.Code));
        SensorResponse response = new(none with { N = SensorResponds.Limits.EnoughToDeny - 1 }, 5, 0.085, 0.55, 0.022, 0, 10, 10, Rising: false);
        Assert.Equal([Open, Open, Yes], Beside(0, s => SensorResponds.Decide(response with { Slope = response.Slope with { Value = s } }).Ruling));
        Assert.Equal([Open, Open, Yes], Beside(Math.Sqrt(2) * 0.0625, r => SensorResponds.Decide(response with { Slope = none with { Value = 1 }, Critical = 0.0625, Response = r }).Ruling));
    }

    // Mean 6 at the time; a curve that levels off at 8 lies 25 % above it, at 4.8 25 % below.
    [Theory, InlineData(8.0, false), InlineData(7.99, true), InlineData(4.8, false), InlineData(4.81, true)]
    public void Equilibrium_PlateauOfACurveAtAnEndOfTheMargin_IsNotWithinIt(double plateau, bool passed)
        => Assert.Equal(passed, EquilibriumReached.Decide("KIN", 120, [At(120, 5.5, 6, 6.5), At(240, 5.5, 6, 6.5)], -0.25, 0.25, plateau: plateau).Gates.Single(g => g.Name == "plateau of a curve").Passed);

    // Two doses or pH values are the fewest that can be compared; the lowest and the highest have one neighbour.
    [Fact]
    public void Settings_AtTheEnds_AreComparedWithTheirOneNeighbour()
    {
        Setting[] two = [At(1, 70, 70.1, 69.9), At(2, 86, 86.1, 85.9)];
        Assert.NotEmpty(OptimumDose.Decide(2, two, 2).Numbers);
        Assert.NotEmpty(SmallestSufficientDose.Decide(2, two, 2).Numbers);
        Assert.NotEmpty(OptimumPh.Decide(2, [.. two.Select(s => new PhLevel(s, Yes))], 2).Numbers);
        Assert.True(OptimumPh.Decide(2, [new(two[0], Yes), new(At(2, 86), Yes)], 2).IsUntested);
        Assert.True(OptimumDose.Decide(2, two[1..], 2).IsUntested);
        Assert.True(SmallestSufficientDose.Decide(2, two[1..], 2).IsUntested);

        // Half of the lowest and twice the highest are next; between, half way to each neighbour.
        Assert.Equal(["0.5 g/L", "1 g/L", "1.5 g/L"], OptimumDose.Decide(1, two, 2).Next!.Settings);
        Assert.Equal(["1.5 g/L", "2 g/L", "4 g/L"], OptimumDose.Decide(2, two, 2).Next!.Settings);
        Assert.Equal(["0.5 g/L", "1 g/L", "2 g/L"], SmallestSufficientDose.Decide(1, two, 2).Next!.Settings);
        Assert.Equal(["1 g/L", "2 g/L", "4 g/L"], SmallestSufficientDose.Decide(2, two, 2).Next!.Settings);
        Assert.Equal(["pH 1.5", "pH 2", "pH 2.5"], OptimumPh.Decide(2, [.. two.Select(s => new PhLevel(s, Yes))], 2).Next!.Settings);
        Setting[] three = [.. two, At(3, 80, 80.1, 79.9)];
        Assert.Equal(["1.5 g/L", "2 g/L", "2.5 g/L"], OptimumDose.Decide(2, three, 2).Next!.Settings);
        Assert.Equal([Yes, Open, Open], new[] { 2.0, 1, 3 }.Select(d => OptimumDose.Decide(d, d == 2 ? three : [.. two.Select(s => s with { Values = [70, 75, 80] }), At(3, 70, 75, 80)], 2).Ruling));
        bool Q71(params double?[] ends) => OptimumPh.Decide(2, [.. ends.Select((e, i) => new PhLevel(three[i], Yes, e))], 2).Questions.Any(q => q.Code == "Q71");
        Assert.True(Q71(6, 6.1, 6.2));
        Assert.False(Q71(6, 6 + OptimumPh.Limits.OnePh, 6));
        Assert.False(Q71(6, null, null));
    }

    // "Above 0" and "below the start": zero, and the start itself, are no answer.
    [Fact]
    public void Parameters_AtTheEndOfWhatTheyCanBe_AreRefused()
    {
        var evidence = StrongReuseStudy.Dossier.Evidence;
        Verdict Of(string rule, params (string, string?)[] parameters) => Defence.RuleNamed(rule)!.Judge(Made.Claim(rule, parameters), evidence);
        (string, string?)[] Cost(string limit) => [("c0", "20 mg/L"), ("limit", limit), ("price", "0 to 30"), ("rival", "2 to 3")];
        Assert.False(Of("low-cost", Cost("5 mg/L")).IsUntested);
        Assert.All(new[] { "0 mg/L", "20 mg/L" }, l => Assert.True(Of("low-cost", Cost(l)).IsUntested));
        Assert.True(Of("outlet-meets-limit", ("run", "BED-1"), ("time", "4 h"), ("limit", "20 mg/L")).IsUntested);
        Assert.False(Of("outlet-meets-limit", ("run", "BED-1"), ("time", "4 h"), ("limit", "19 mg/L")).IsUntested);
        Assert.Contains("Write it like", Of("selective", ("over", "Zn"), ("factor", "0")).Reason, StringComparison.Ordinal);
        Assert.Contains("Write it like", Of("ion-exchange", ("ion", "Ca"), ("ratio", "0")).Reason, StringComparison.Ordinal);
        Assert.Contains("Write it like", Of("outlet-meets-limit", ("dose", "2 g/L"), ("limit", "1 mg/L"), ("c0", "0 mg/L")).Reason, StringComparison.Ordinal);
    }

    // At the limit itself, a step below, a step above.
    private static Ruling[] Beside(double limit, Func<double, Ruling> of) => [of(limit), of(Math.BitDecrement(limit)), of(Math.BitIncrement(limit))];

    private static Setting At(double x, params double[] values) => new(x, [.. values]);
}
