using System.Globalization;
using Holdfast.Speciation;
using Holdfast.Testing;

namespace Holdfast.Tests.Speciation;

// reference/measurement/speciation-check.csv: computed by a Newton solver in Python 3.11 and repeated with a 40-digit bisection (5e-9 in lg).
public sealed class MetalInWaterTests
{
    [Fact]
    public void LgFree_EveryCheckedWater_AgreesToThePrintedDigits()
    {
        var rows = ReferenceTable.Read("measurement", "speciation-check.csv");
        Assert.Equal(108, rows.Count);
        Assert.All(rows, row =>
        {
            var found = Water(row).At(row.Number("pH"));
            Agree.Relative(2e-9, row.Number("lg_free_activity"), found.LgFree, row["metal"]);
        });
    }

    [Fact]
    public void Shares_EveryCheckedWater_AgreeToThePrintedDigits()
        => Assert.All(ReferenceTable.Read("measurement", "speciation-check.csv"), row =>
        {
            var water = Water(row);
            var found = water.At(row.Number("pH"));
            var printed = row["fraction_of_metal_by_species (no solid allowed, no carbonate)"].Split(';');
            Assert.Equal(printed.Length, found.Shares.Count);
            for (var i = 0; i < printed.Length; i++)
            {
                // Six figures are printed: half a unit of the last one is at most 5e-6 of the value, and 1e-6 is left for the computation.
                var share = double.Parse(printed[i].Split('=')[1], CultureInfo.InvariantCulture);
                var unit = Math.Pow(10, Math.Floor(Math.Log10(share)) - 5);
                Assert.True(Math.Abs(found.Shares[i] - share) <= 0.5 * unit + 1e-6 * share, $"{row["metal"]} {printed[i]} got {found.Shares[i]:R}");
            }
        });

    [Fact]
    public void Shares_AnyWater_AddUpToOne()
    {
        foreach (var ion in MetalIon.All)
        {
            for (var ph = 0.0; ph <= 14; ph += 0.5)
                Assert.Equal(1, new MetalInWater(ion, 3e-4, 0.1, CarbonateConstants.LgAir).At(ph).Shares.Sum(), 12);
        }
    }

    [Theory]
    [InlineData(-2000)]
    [InlineData(-30)]
    [InlineData(40)]
    [InlineData(900)]
    public void Solve_AnyStart_SameResult(double start)
    {
        int[] metals = [1, 1, 2, 6];
        double[] factors = [0, 12, -4, 30];
        var near = OneComponent.Solve(metals, factors, Math.Log(1e-4), -10, out _);
        Assert.Equal(near, OneComponent.Solve(metals, factors, Math.Log(1e-4), start, out _), 12);
    }

    // The slope of an index over pH against a difference quotient, and its uncertainty against shifting every constant in turn.
    [Theory]
    [InlineData("Cu", "Cu(OH)2 fresh", 6.4)]
    [InlineData("Pb", "PbO red", 9.8)]
    [InlineData("Al", "Al(OH)3 amorphous", 5.1)]
    [InlineData("Cu", "Cu2(OH)2CO3 malachite", 6.3)]
    public void Index_SlopeAndUncertainty_AsByDifferences(string metal, string name, double ph)
    {
        var ion = MetalIon.Named(metal)!;
        var solid = ion.Solids.Single(s => s.Name == name);
        var index = Water(ion).Index(solid, ph);
        const double step = 1e-5;
        Agree.Relative(1e-6, (Water(ion).Index(solid, ph + step).Value - Water(ion).Index(solid, ph - step).Value) / (2 * step), index.Slope);
        var variance = solid.U * solid.U
            + ion.Hydrolysis.Sum(h => Math.Pow(Moved(ion with { Hydrolysis = [.. ion.Hydrolysis.Select(k => k == h ? k with { LgBeta = k.LgBeta + step } : k)] }) * h.U, 2))
            + ion.CarbonateComplexes.Sum(c => Math.Pow(Moved(ion with { CarbonateComplexes = [.. ion.CarbonateComplexes.Select(k => k == c ? k with { LgBeta = k.LgBeta + step } : k)] }) * c.U, 2));
        Agree.Relative(1e-4, Math.Sqrt(variance), index.U);

        double Moved(MetalIon changed) => (Water(changed).Index(solid, ph).Value - index.Value) / step;

        MetalInWater Water(MetalIon of) => new(of, 5e-4, 0.01, CarbonateConstants.LgAir);
    }

    [Theory]
    [InlineData(0, 0.01)]
    [InlineData(-1e-4, 0.01)]
    [InlineData(1e-4, -0.01)]
    [InlineData(1e-4, 0.6)]
    public void Water_ImpossibleArguments_Throws(double total, double ionicStrength)
        => Assert.Throws<ArgumentOutOfRangeException>(() => new MetalInWater(MetalIon.Named("Ni")!, total, ionicStrength));

    private static MetalInWater Water(ReferenceRow row) => new(MetalIon.Named(row["metal"])!, row.Number("C_mol_L"), row.Number("ionic_strength"));
}
