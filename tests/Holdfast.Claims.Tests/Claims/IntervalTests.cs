using CsCheck;
using Holdfast.Amounts;
using Holdfast.Claims.Rules;
using Holdfast.Statistics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Laws that every verdict from an interval keeps, seen through the rules that use them.</summary>
public sealed class IntervalTests
{
    private static readonly Gen<double[]> Triplet = Gen.Double[0.5, 1.5].Array[3];

    // Sameness needs an interval: wider scatter about the same means never turns "not shown yet" into "holds".
    [Fact]
    public void MassBalance_MoreScatter_NeverMakesItHold()
        => Gen.Select(Gen.Double[0.8, 1.2], Gen.Double[0.01, 0.5], Gen.Double[1.1, 4]).Sample(g =>
        {
            var (centre, half, factor) = g;
            var calm = Balance(centre, half);
            var wild = Balance(centre, half * factor);
            Assert.False(wild == Ruling.Holds && calm != Ruling.Holds);
        }, iter: 2000, seed: "0000Kt1mFKZ3");

    private static Ruling Balance(double centre, double half)
        => MassBalance.Decide(new(0, [0.99, 1, 1.01]), new(0, [centre - half, centre, centre + half]), 0.9, 1.1).Gated;

    // A wider margin never turns "holds" into something less.
    [Fact]
    public void MassBalance_WiderWindow_NeverTakesAHoldAway()
        => Gen.Select(Triplet, Gen.Double[0.02, 0.2], Gen.Double[0.21, 0.5]).Sample(g =>
        {
            var (solid, narrow, wide) = g;
            Setting difference = new(0, [0.99, 1, 1.01]), found = new(0, [.. solid]);
            var first = MassBalance.Decide(difference, found, 1 - narrow, 1 + narrow).Gated;
            var second = MassBalance.Decide(difference, found, 1 - wide, 1 + wide).Gated;
            Assert.False(first == Ruling.Holds && second != Ruling.Holds);
            Assert.False(first != Ruling.Contradicted && second == Ruling.Contradicted);
        }, iter: 2000, seed: "0000Kt1mFKZ3");

    // What lies below one limit lies below every higher one, and is never said to lie above it.
    [Fact]
    public void MeetsLimit_HigherLimit_IsNeverHarderToMeet()
        => Gen.Select(Triplet, Gen.Double[0.3, 3], Gen.Double[0, 2]).Sample(g =>
        {
            var (values, limit, more) = g;
            var low = MeetsLimit.Decide(new(0, [.. values]), limit, 0.01, 0.003).Gated;
            var high = MeetsLimit.Decide(new(0, [.. values]), limit + more, 0.01, 0.003).Gated;
            Assert.False(low == Ruling.Holds && high != Ruling.Holds);
            Assert.False(low != Ruling.Contradicted && high == Ruling.Contradicted);
        }, iter: 2000, seed: "0000Kt1mFKZ3");

    // The larger of scatter and propagated uncertainty counts: replicates that agree by luck do not hide a badly known line.
    [Fact]
    public void MeetsLimit_PropagatedUncertaintyLargerThanScatter_Counts()
    {
        double[] values = [0.90, 0.91, 0.905];
        Assert.Equal(Ruling.Holds, MeetsLimit.Decide(new(0, [.. values]), 1, 0.01, 0.003).Gated);
        var line = new Source("line", "calibration line", 0.2);
        var shared = new Setting(0, [.. values]) { Propagated = [.. values.Select(v => Measured.From(v, line))] };
        Assert.Equal(Ruling.NotShownYet, MeetsLimit.Decide(shared, 1, 0.01, 0.003).Gated);
    }

    // What both times share cancels in their difference, so a badly known start concentration does not blur a step.
    [Fact]
    public void Equilibrium_SharedUncertainty_CancelsInTheStep()
    {
        var flask = new Source("flask", "start solution", 0.5);
        Setting At(double time, params double[] q) => new(time, [.. q]) { Propagated = [.. q.Select(v => Measured.From(v, flask))] };
        Setting[] shared = [At(60, 5.90, 6.02, 5.95), At(120, 6.02, 6.10, 5.95)];
        Assert.Equal(Ruling.Holds, EquilibriumReached.Decide("KIN", 60, shared, -0.05, 0.05).Gated);
        Setting Own(double time, params double[] q) => new(time, [.. q]) { Propagated = [.. q.Select((v, i) => Measured.From(v, new Source(FormattableString.Invariant($"{time}/{i}"), "own", 0.5)))] };
        Setting[] own = [Own(60, 5.90, 6.02, 5.95), Own(120, 6.02, 6.10, 5.95)];
        Assert.Equal(Ruling.NotShownYet, EquilibriumReached.Decide("KIN", 60, own, -0.05, 0.05).Gated);
    }

    // Student's t with n − 1, never 1.96: half-widths over s of 2.48 for three values and 1.24 for five (Student's table).
    [Theory]
    [InlineData(3, 2.48)]
    [InlineData(4, 1.59)]
    [InlineData(5, 1.24)]
    public void Mean_OfFewVessels_HasStudentsWidth(int n, double expected)
    {
        double[] values = [.. Enumerable.Range(0, n).Select(i => (double)i)];
        var summary = Summary.Of(values);
        Assert.Equal(expected, summary.MeanEstimate().Value!.Interval().Half / summary.Sd!.Value, 2);
    }
}
