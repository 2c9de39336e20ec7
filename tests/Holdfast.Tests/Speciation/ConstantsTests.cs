using Holdfast.Speciation;
using Holdfast.Testing;

namespace Holdfast.Tests.Speciation;

// reference/measurement: the tables as typed, with source and status in every row.
public sealed class ConstantsTests
{
    [Fact]
    public void Hydrolysis_EveryRow_AsInTheTypedTable()
    {
        var rows = ReferenceTable.Read("measurement", "hydrolysis-constants.csv");
        Assert.Equal(rows.Count, MetalIon.All.Sum(i => i.Hydrolysis.Count + i.SecondOpinion.Count));
        Assert.All(rows, row =>
        {
            var ion = MetalIon.Named(row["metal"])!;
            Assert.Equal(row.Number("charge"), ion.Charge);
            var found = (row["preferred"] == "yes" ? ion.Hydrolysis : ion.SecondOpinion).Single(h => h.Metals == row.Number("p") && h.Hydroxides == row.Number("q"));
            Assert.Equal((row.Number("lg_star_beta"), row.Number("u"), row["source"], row["status"]), (found.LgBeta, found.U, found.Source, found.Status));
        });
    }

    [Fact]
    public void Solids_EveryRow_AsInTheTypedTable()
        => Assert.Equal(
            ReferenceTable.Read("measurement", "solids.csv").Select(r => (r["metal"], r["solid"], r.Number("lg_star_Ks"), r.Number("u"), r["source"], r["status"])),
            Solid.All.Select(s => (s.Metal, s.Name, s.LgKs, s.U, s.Source, s.Status)));

    [Fact]
    public void Carbonate_EveryRow_AsInTheTypedTable()
    {
        var rows = ReferenceTable.Read("measurement", "carbonate-system.csv").ToDictionary(r => r["quantity"], r => r.Number("value"), StringComparer.Ordinal);
        Assert.Equal(
            (rows["lgKH"], rows["pK1"], rows["pK2"], rows["pKw"], rows["lgpCO2"], rows["A"]),
            (CarbonateConstants.LgHenry, CarbonateConstants.PK1, CarbonateConstants.PK2, CarbonateConstants.PKw, CarbonateConstants.LgAir, Davies.A));
        Assert.Equal(7, MetalIon.All.Sum(i => i.CarbonateComplexes.Count));
        Assert.All(MetalIon.All.SelectMany(i => i.CarbonateComplexes.Select(c => (i, c))), p => Assert.Equal(rows[$"{p.i.Symbol} + {p.c.Carbonates} CO3"], p.c.LgBeta));
    }

    // Two of three constants of the tables were never seen in print; they must say so.
    [Fact]
    public void Status_EveryConstant_SaysSeenOrFromMemory()
        => Assert.All(
            MetalIon.All.SelectMany(i => i.Hydrolysis.Select(h => h.Status).Concat(i.Solids.Select(s => s.Status)).Concat(i.CarbonateComplexes.Select(c => c.Status))),
            s => Assert.True(s.Contains("from memory", StringComparison.Ordinal) || s.Contains("checked", StringComparison.Ordinal), s));

    [Theory]
    [InlineData("Fe", 2)]
    [InlineData("Fe(III)", 1)]
    [InlineData("Ni", 1)]
    [InlineData("Eu", 0)]
    public void Of_Element_EveryOxidationStateKnown(string symbol, int ions) => Assert.Equal(ions, MetalIon.Of(symbol).Count);

    // Davies at I = 0.1 and charge 2: −0.509 × 4 × (0.24025 − 0.03) = −0.4281, by hand.
    [Fact]
    public void LgGamma_DoublyChargedAtTenthMolar_AsByHand() => Assert.Equal(-0.4281, Davies.LgGamma(2, 0.1), 4);
}
