using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

public sealed class RateStudyTests
{
    private const double Gas = 8.314462618;

    // Made first-order series with Ea = 30 kJ/mol: the same curve is taken at every temperature and the energy comes back.
    [Fact]
    public void Energy_OfFourTemperatures_IsTheOnePutIn()
    {
        var family = Assert.Single(RateStudy.Of(Made.Evidence([.. new[] { 288.15, 298.15, 308.15, 318.15 }.Select(t => Kinetics(t, 20))])).Families);
        Assert.Equal("Pseudo-first-order", family.Curve);
        var energy = Assert.Single(family.Energies);
        Assert.Equal(("k1", "1/min"), (energy.Constant, energy.Unit));
        Assert.InRange(energy.Line.ActivationEnergy.Value, 29, 31);
        Assert.Empty(family.Findings);
    }

    // Two temperatures, or another start concentration at the third, make no family.
    [Fact]
    public void Families_OfTooFewTemperatures_AreNone()
    {
        Assert.Empty(RateStudy.Of(Made.Evidence([Kinetics(288.15, 20), Kinetics(298.15, 20)])).Families);
        Assert.Empty(RateStudy.Of(Made.Evidence([Kinetics(288.15, 20), Kinetics(298.15, 20), Kinetics(308.15, 40)])).Families);
        Assert.Equal("HF-627", Assert.Single(Assert.Single(RateStudy.Of(Made.Evidence([Kinetics(288.15, 20), Kinetics(298.15, 20), Kinetics(308.15, 20)])).Families).Findings).Code);
    }

    private static Series Kinetics(double kelvin, double start)
    {
        var k = 0.05 * Math.Exp(-30000 / Gas * (1 / kelvin - 1 / 298.15));
        double[] times = [2, 5, 10, 20, 40, 80, 160];
        double[] noise = [0.004, -0.003, 0.002, -0.004, 0.003, -0.002, 0.001];
        var name = Invariant($"KIN-{kelvin:0}-{start}");
        return Made.Series(name, BatchProperties.ContactTime, times.Select((t, i) => (t, (Vessel[])[Vessel(Invariant($"{name}-{t}"), name, start, t, kelvin, start - 2 * 6 * (1 - Math.Exp(-k * t)) * (1 + noise[i]))])));
    }

    private static Vessel Vessel(string code, string series, double start, double time, double kelvin, double end)
    {
        var made = Made.Vessel(code, series, start, end, 2, time);
        var facts = made.Sample.Facts;
        return made with { Sample = made.Sample with { Facts = facts.SetItem(BatchProperties.Temperature.Name, facts[BatchProperties.Temperature.Name] with { Value = kelvin }) } };
    }
}
