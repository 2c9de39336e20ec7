using Holdfast.Speciation;
using Holdfast.Testing;

namespace Holdfast.Tests.Speciation;

public sealed class AqueousSystemTests
{
    // Every fifth water is solved a second time, from a start that is far from anything.
    [Fact]
    public void Solve_HundredThousandRandomWaters_AllCloseWhateverTheStart()
    {
        var waters = new RandomWaters(7);
        var precipitated = 0;
        for (var i = 0; i < 100_000; i++)
        {
            var (water, ph, start) = waters.Next();
            var found = water.Solve(ph);
            precipitated += found.Precipitates.Count > 0 ? 1 : 0;
            Assert.True(found.Open < 1e-10, $"water {i}: {found.Open:R} open at pH {ph:R} after {found.Steps} steps");
            Assert.True(Supersaturation(water, found) < 1e-8, $"water {i} stays supersaturated by {Supersaturation(water, found):R}");
            if (i % 5 != 0)
                continue;
            var again = water.Solve(ph, start);
            Assert.True(again.Open < 1e-10, $"water {i}: {again.Open:R} open at pH {ph:R} from far away, after {again.Steps} steps");
            for (var j = 0; j < found.LgActivities.Count; j++)
                Assert.True(Math.Abs(found.LgActivities[j] - again.LgActivities[j]) < 1e-10, $"water {i}: {found.LgActivities[j]:R} and {again.LgActivities[j]:R} at pH {ph:R}");
        }

        Assert.InRange(precipitated, 15_000, 35_000);
    }

    // [H] = K1 KH p/[H] + Kw/[H] + 2 K2 ...: 5.60 to two places, worked out by hand from the constants.
    [Fact]
    public void PhOfBalance_PureWaterInAir_IsFivePointSix()
    {
        var ph = new AqueousSystem { CarbonDioxide = CarbonDioxide.Air, CountsOwnIons = true }.PhOfBalance();
        Assert.Equal(5.60, ph, 0.005);
        Assert.Equal(CarbonateConstants.PKw / 2, new AqueousSystem().PhOfBalance(), 9);
    }

    [Fact]
    public void Solve_OneMetalInAir_IsThatOfTheMetalAlone()
    {
        foreach (var ion in MetalIon.All)
        {
            for (var ph = 2.0; ph < 13; ph += 1.3)
            {
                var one = new MetalInWater(ion, 2e-4, 0.02, CarbonateConstants.LgAir);
                var general = new AqueousSystem { Metals = [new(ion, 2e-4)], CarbonDioxide = CarbonDioxide.Air, IonicStrength = 0.02 }.Solve(ph);
                Assert.Equal(one.LgFree(ph), general.LgActivities[0], 9);
            }
        }
    }

    [Fact]
    public void Solve_OneSolidAllowed_LeavesWhatTheSolidDissolves()
    {
        var copper = MetalIon.Named("Cu")!;
        var fresh = copper.Solids.Single(s => s.Name == "Cu(OH)2 fresh");
        var left = new AqueousSystem { Metals = [new(copper, 6e-4)], Solids = [fresh], IonicStrength = 0.01 }.Solve(6.5);
        Agree.Relative(1e-9, new MetalInWater(copper, 6e-4, 0.01).Dissolved(fresh, 6.5), left.Dissolved[0]);
        Agree.Relative(1e-9, 6e-4, left.Dissolved[0] + left.Precipitates.Single().Amount);
    }

    // Two solids of one composition: the less soluble one is left, in whatever order they are named.
    [Fact]
    public void Solve_OxideAndHydroxideAllowed_OnlyTheLessSolubleIsLeft()
    {
        var copper = MetalIon.Named("Cu")!;
        var solids = copper.Solids.Where(s => s.Carbonates == 0).ToArray();
        foreach (var order in new[] { solids, [.. solids.Reverse()] })
        {
            var found = new AqueousSystem { Metals = [new(copper, 6e-4)], Solids = order }.Solve(7);
            Assert.Equal("CuO tenorite", Assert.Single(found.Precipitates).Solid.Name);
        }
    }

    // Amphoteric: what precipitates at pH 9 is dissolved again at 13.5 (onset table: zinc, amorphous, 12.4 at 100 mg/L).
    [Fact]
    public void Solve_ZincAtHighPh_DissolvesAgain()
    {
        var zinc = MetalIon.Named("Zn")!;
        var water = new AqueousSystem { Metals = [new(zinc, 1.5e-3)], Solids = [zinc.Solids.Single(s => s.Kind == SolidKind.Fresh)], IonicStrength = 0.01 };
        Assert.NotEmpty(water.Solve(9).Precipitates);
        Assert.Empty(water.Solve(13.5).Precipitates);
    }

    // A closed vessel holds less carbonate than open water: lead carbonate takes it away, and both balances close.
    [Fact]
    public void Solve_LeadInClosedVessel_CarbonateRunsOut()
    {
        var lead = MetalIon.Named("Pb")!;
        var water = new AqueousSystem { Metals = [new(lead, 1e-3)], Solids = [.. lead.Solids.Where(s => s.Name == "PbCO3 cerussite")], CarbonDioxide = CarbonDioxide.Closed(1e-4) };
        var found = water.Solve(7.5);
        Assert.Equal(1e-3 - found.Dissolved[0], found.Precipitates.Single().Amount, 12);
        Assert.InRange(found.Precipitates.Single().Amount, 0.9e-4, 1e-4);
        Assert.True(found.Open < 1e-12);
    }

    // Sodium chloride without complexes: I stays that of the background; with its own ions counted, 0.01 mol/L of a 2+ salt's cation adds 0.02.
    [Fact]
    public void Solve_OwnIonsCounted_StrengthIsThatOfTheResult()
    {
        var found = new AqueousSystem { Metals = [new(MetalIon.Named("Mn")!, 0.01)], IonicStrength = 0.01, CountsOwnIons = true }.Solve(5);
        Assert.Equal(0.03, found.IonicStrength, 4);
        Assert.Equal(0.01 + 0.5 * found.Species.Sum(s => s.Charge * s.Charge * s.Concentration), found.IonicStrength, 10);
    }

    [Fact]
    public void Solve_ComplexOfAStranger_Throws()
        => Assert.Throws<InvalidOperationException>(() => new AqueousSystem { Complexes = [new("NiX", new Dictionary<string, int> { ["X"] = 1 }, 0, 3)] }.Solve(7));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(0.51)]
    [InlineData(double.NaN)]
    public void IonicStrength_OutsideDavies_Throws(double strength)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new AqueousSystem { IonicStrength = strength });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Total_NotAboveZero_Throws(double total)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new MetalTotal(MetalIon.Named("Ni")!, total));

    private static double Supersaturation(AqueousSystem water, Equilibrium found)
    {
        double? carbonate = water.CarbonDioxide.LgPressure is { } p ? CarbonateConstants.LgCarbonate(p, found.Ph)
            : found.Components.ToList().IndexOf("CO3") is var at and >= 0 ? found.LgActivities[at] : null;
        return water.Solids.Select(s => s.Index(found.LgActivities[found.Components.ToList().IndexOf(s.Metal)], found.Ph, carbonate)).DefaultIfEmpty(double.NegativeInfinity).Max();
    }
}
