using Holdfast.Linearised;
using Holdfast.Testing;

namespace Holdfast.Tests.Linearised;

public class LinearFormSpreadTests
{
    private static readonly double[] Levels = [0.8, 2.5, 6, 12, 22, 38, 60, 95];

    // reference/sorption/simulations.csv: 2000 sets drawn independently of ours (numpy). Random on both sides: a robust spread of 2000 sets is known to
    // about 2.6 %, so 12 % is four and a half of its standard errors for the two together; shares to five standard errors of a share.
    [Theory, InlineData("constant 1.2"), InlineData("proportional 5 %")]
    public void OfLangmuir_AtEightLevels_AgreesWithTheSimulation(string noise)
    {
        var rows = LinearFormSpread.OfLangmuir(Levels, 85, 0.065, noise[0] == 'c' ? _ => 1.2 : q => 0.05 * q, 2000, seed: 1);
        Assert.Equal([LinearFormSpread.Direct, "C/q on C", "1/q on 1/C", "q on q/C", "q/C on q"], rows.Select(r => r.Form));
        var table = ReferenceTable.Read("sorption", "simulations.csv").Where(r => r["setting"] == "Langmuir qm 85, n = 8, noise " + noise)
            .ToDictionary(r => r["quantity"], r => r.Number("value"), StringComparer.Ordinal);
        foreach (var row in rows)
        {
            Assert.InRange(row.Sets, 1900, 2000);
            var spread = table[row.Form + ": robust spread (1.4826 MAD)"];
            Agree.Relative(0.12, spread, row.Spread, row.Form + ", spread");
            Assert.InRange(row.Median - table[row.Form + ": median qm"], -0.2 * spread, 0.2 * spread);
            var share = table[row.Form + ": share off by more than 20 % or negative"];
            Assert.InRange(row.ShareOff - share, -0.005 - 5 * Math.Sqrt(share * (1 - share) / 1000), 0.005 + 5 * Math.Sqrt(share * (1 - share) / 1000));
        }
    }

    // With constant scatter the double reciprocal is the worst by far and the direct fit the best: what the table is there to show.
    [Fact]
    public void OfLangmuir_WithConstantScatter_RanksTheFormsAsTheyDeserve()
    {
        var rows = LinearFormSpread.OfLangmuir(Levels, 85, 0.065, _ => 1.2, 500, seed: 7);
        Assert.Equal(LinearFormSpread.Direct, rows.MinBy(r => r.Spread)!.Form);
        Assert.Equal("1/q on 1/C", rows.MaxBy(r => r.Spread)!.Form);
    }

    [Fact]
    public void OfLangmuir_OfTheSameSeed_IsTheSame()
        => Assert.Equal(
            LinearFormSpread.OfLangmuir(Levels, 85, 0.065, _ => 1.2, 50, seed: 3),
            LinearFormSpread.OfLangmuir(Levels, 85, 0.065, _ => 1.2, 50, seed: 3));
}
