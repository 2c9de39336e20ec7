using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims.Rules;

/// <summary>Diffusion inside the particles as the slow step, on series drawn from the closed solutions of each mechanism.</summary>
public class RateStepTests
{
    private const double Plateau = 6;

    /// <summary>Plain numbers for each ruling; the last is a line on √t and nothing else.</summary>
    public static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> Samples
    {
        get
        {
            var inside = new Estimate("slope of ln k on ln d", 1.95, 0.12, 20, 4);
            var still = new Estimate("slope of ln k on ln speed", 1.01, 0.03, 20, 4, Scale.Logarithmic);
            var zero = new Estimate("uptake at √t = 0, A", 0.02, 0.05, 7, 9);
            yield return ("rate-step", Ruling.Holds, RateStep.Decide(new(inside, still, [zero], 0.02)));
            yield return ("rate-step", Ruling.NotShownYet, RateStep.Decide(new(inside with { StandardError = 0.6 }, still, [zero], 0.02)));
            yield return ("rate-step", Ruling.NotShownYet, RateStep.Decide(new(inside with { Value = 1.05 }, still, [zero], 0.02)));
            yield return ("rate-step", Ruling.NotShownYet, RateStep.Decide(new(inside, still, [], 0.02)));
            yield return ("rate-step", Ruling.NotShownYet, RateStep.Decide(new(null, null, [zero], 0.02)));
            yield return ("rate-step", Ruling.Contradicted, RateStep.Decide(new(inside, still with { Value = 1.4 }, [zero], 0.02)));
            yield return ("rate-step", Ruling.Contradicted, RateStep.Decide(new(null, null, [zero with { Value = 0.6 }], 0.02)));
        }
    }

    // 24 vessels and the times of the handbook's design: 0.3/k and 1/k at k = 0.02 1/min are 15 and 50 min.
    [Fact]
    public void Next_IsAFactorialOf24Vessels_AtTimesOnTheRise()
    {
        var decision = RateStep.Decide(new(null, null, [], 0.02), "20 min, 60 min");
        Assert.Equal(24, decision.Next!.Vessels);
        Assert.Equal(["15 min", "50 min"], decision.Next.Settings.Where(s => s.EndsWith("min", StringComparison.Ordinal)));
        Assert.Equal(["Q27", "Q28"], decision.Questions.Select(q => q.Code));
    }

    // Spheres of constant surface concentration (J. Crank 1975, eq. 6.20): B goes with 1/d² and stirring does nothing.
    [Fact]
    public void Spheres_OfTwoSizesAndTwoSpeeds_HoldTheClaim()
    {
        var verdict = Judge([Series("A", 100, 150, Sphere(0.02)), Series("B", 200, 150, Sphere(0.005)), Series("C", 100, 300, Sphere(0.02)), Series("D", 200, 300, Sphere(0.005))]);
        Assert.Equal((Ruling.Holds, "95 % interval"), (verdict.Ruling, verdict.Method[..13]));
        Assert.InRange(verdict.Numbers.Single(n => n.Name == "exponent of the size").Value, 1.9, 2.1);
        Assert.Contains("particles 100 to 200 µm, stirring 150 to 300 1/min", verdict.Scope, StringComparison.Ordinal);
    }

    // A film: first order with k = 3·k_f/r, and k_f rises with stirring (its square root; F. Helfferich 1962, from memory).
    [Fact]
    public void Film_ThatStirringThins_ContradictsTheClaim()
        => Assert.Equal(Ruling.Contradicted, Judge(
            [Series("A", 100, 150, First(0.04)), Series("B", 200, 150, First(0.02)), Series("C", 100, 600, First(0.08)), Series("D", 200, 600, First(0.04))]).Ruling);

    // One series and its line on √t: the usual plot, which shows nothing.
    [Fact]
    public void LineOnTheRootOfTime_Alone_IsNotShown()
    {
        var verdict = Judge([Series("A", null, null, Sphere(0.005))]);
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains(verdict.Questions, q => q.Code == "Q27");
        Assert.Equal(24, verdict.Next!.Vessels);
        Assert.Equal(Ruling.NotShownYet, Judge([]).Ruling);
    }

    // Half a milligram per gram at once, then spheres: uptake on √t does not begin at 0.
    [Fact]
    public void Uptake_ThatDoesNotBeginAtZero_ContradictsSoleControl()
        => Assert.Equal(Ruling.Contradicted, Judge([Series("A", null, null, t => 0.8 + 5.2 * SphereDiffusion.Fraction<Holdfast.Amounts.Number>(0.002 * t / (Math.PI * Math.PI)).Value)]).Ruling);

    [Fact]
    public void Claim_IsInvited_OnlyByTwoSizesAndTwoSpeeds()
    {
        var rule = new RateStep();
        Assert.Empty(rule.Invited(Made.Evidence([Series("A", 100, 150, Sphere(0.02)), Series("B", 200, 150, Sphere(0.005))])));
        Assert.Single(rule.Invited(Made.Evidence([Series("A", 100, 150, Sphere(0.02)), Series("B", 200, 150, Sphere(0.005)), Series("C", 100, 300, Sphere(0.02))])));
    }

    private static Func<double, double> Sphere(double b) => t => Plateau * SphereDiffusion.Fraction<Holdfast.Amounts.Number>(b * t / (Math.PI * Math.PI)).Value;

    private static Func<double, double> First(double k) => t => Plateau * (1 - Math.Exp(-k * t));

    private static Verdict Judge(Series[] series) => new RateStep().Judge(Made.Claim("rate-step"), Made.Evidence([.. series]));

    private static Series Series(string name, double? diameter, double? speed, Func<double, double> uptake)
    {
        double[] times = [0.3, 1, 2, 4, 8, 15, 30, 60, 120, 240, 480];
        double[] noise = [0.010, -0.012, 0.004];
        return Made.Series(name, BatchProperties.ContactTime, times.Select(t => (t, noise.Select((e, i) => Vessel(name, t, i, diameter, speed, uptake(t) * (1 + e))).ToArray())));
    }

    private static Vessel Vessel(string series, double time, int i, double? diameter, double? speed, double uptake)
    {
        var made = Made.Vessel(Invariant($"{series}-{time}-{i}"), series, 20, 20 - 2 * uptake, 2, time);
        var facts = made.Sample.Facts;
        foreach (var (property, value) in new[] { (BatchProperties.ParticleDiameter, diameter), (BatchProperties.StirringSpeed, speed) })
        {
            if (value is { } v)
                facts = facts.SetItem(property.Name, facts[BatchProperties.Temperature.Name] with { Property = property.Name, Value = v });
        }

        return made with { Sample = made.Sample with { Facts = facts } };
    }
}
