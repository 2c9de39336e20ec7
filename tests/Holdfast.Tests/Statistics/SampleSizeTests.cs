using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class SampleSizeTests
{
    public static TheoryData<string, double, double, int, double> Plans
    {
        get
        {
            var rows = new TheoryData<string, double, double, int, double>();
            foreach (var r in ReferenceTable.Read("design", "replicates-by-power.csv").Where(r => r["effect_scale"] != "noncentrality needed"))
                rows.Add(r["question"], r.Number("effect"), r.Number("power_target"), (int)r.Number("n_needed"), r.Number("power_reached"));
            return rows;
        }
    }

    // reference/design/replicates-by-power.csv (scipy 1.10.1, exact noncentral t and F): n exact, power to 4 decimals.
    [Theory, MemberData(nameof(Plans))]
    public void SampleSize_EveryRow_AgreesWithComputation(string question, double effect, double target, int n, double power)
    {
        var found = question switch
        {
            "two means, two-sided 5 %" => SampleSize.ForTwoMeans(effect, target),
            "two means, one-sided 5 %" => SampleSize.ForTwoMeans(effect, target, sides: Sides.One),
            "one mean or paired difference against a fixed value, two-sided 5 %" => SampleSize.ForOneMean(effect, target),
            "one mean against a limit, one-sided 5 %" => SampleSize.ForOneMean(effect, target, sides: Sides.One),
            _ when question.StartsWith("equivalence of two", StringComparison.Ordinal) => SampleSize.ForEquivalenceOfTwoMeans(effect, target),
            _ when question.StartsWith("equivalence of one", StringComparison.Ordinal) => SampleSize.ForEquivalenceOfOneMean(effect, target),
            _ => SampleSize.ForOneWay(effect, int.Parse(question.AsSpan("one-way analysis of variance, ".Length, 1), CultureInfo.InvariantCulture), target),
        };
        Assert.Equal(n, found.N);
        Assert.Equal(power, found.Power, 0.0000051);
    }

    // Same file: one extra parameter of a model, σ known.
    [Theory, InlineData(0.8, 7.8489), InlineData(0.9, 10.5074)]
    public void NoncentralityFor_OneExtraParameter_AgreesWithComputation(double power, double lambda)
        => Assert.Equal(lambda, NoncentralChiSquare.NoncentralityFor(1, 0.05, power), 0.00005);

    // reference/measurement/sample-size.csv (scipy 1.10.1).
    [Fact]
    public void Power_EveryRowOfSampleSizes_AgreesWithComputation()
    {
        var rows = ReferenceTable.Read("measurement", "sample-size.csv");
        Assert.Equal(14, rows.Count);
        foreach (var r in rows)
        {
            var n = (int)r.Number("n_per_group");
            var found = r["case"] switch
            {
                "two samples, true difference 0" => Power.EquivalenceOfTwoMeans(r.Number("margin_or_delta_over_sd"), n),
                var c when c.StartsWith("crossover", StringComparison.Ordinal) => Crossover(n),
                var c when c.Contains("one tail", StringComparison.Ordinal) => OneTail(n),
                _ => Power.TwoMeans(r.Number("margin_or_delta_over_sd"), n),
            };
            Agree.Digits(8, r.Number("power"), found, r["case"]);
        }
    }

    // R's help page of power.t.test counts only the tail in the direction of the effect.
    private static double OneTail(int n)
        => NoncentralStudent.Above(StudentDistribution.Quantile(0.975, 2 * n - 2), 2 * n - 2, Math.Sqrt(n / 2.0));

    // Two-period crossover on the logarithm: CV 0.30, true ratio 0.95, limits 0.80..1.25, n − 2 degrees of freedom.
    private static double Crossover(int n)
        => Power.Equivalence(Math.Log(0.8), Math.Log(1.25), Math.Log(0.95), Math.Sqrt(2 * Math.Log(1 + 0.09) / n), n - 2);

    // The plan that needs n replicates for an effect must be able to see just about that effect with n.
    [Theory, InlineData(4), InlineData(17), InlineData(64)]
    public void SmallestDifference_PutBack_GivesTheWantedPower(int n)
        => Agree.Digits(9, 0.8, Power.TwoMeans(Power.SmallestDifferenceOfTwoMeans(n), n));

    // The plan turned round: what n replicates can show is put back into the power; and reference/design/replicates-by-power.csv brackets it (n = 3 shows a
    // distance of 4 sd but not of 2 two-sided, a margin of 3 sd but not of 2.5).
    [Theory, InlineData(2), InlineData(3), InlineData(8)]
    public void Smallest_PutBack_GivesTheWantedPower(int n)
    {
        Agree.Digits(9, 0.8, Power.OneMean(Power.SmallestDistanceOfOneMean(n), n));
        Agree.Digits(9, 0.8, Power.OneMean(Power.SmallestDistanceOfOneMean(n, sides: Sides.One), n, sides: Sides.One));
        Agree.Digits(8, 0.8, Power.EquivalenceOfTwoMeans(Power.SmallestMarginOfTwoMeans(n), n));
        Agree.Digits(8, 0.8, Power.EquivalenceOfOneMean(Power.SmallestMarginOfOneMean(n), n));
        if (n == 3)
        {
            Assert.InRange(Power.SmallestDistanceOfOneMean(n), 3, 4);
            Assert.InRange(Power.SmallestMarginOfTwoMeans(n), 2.5, 3);
        }
    }

    [Fact]
    public void SampleSize_NoEffect_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => SampleSize.ForTwoMeans(0));
}
