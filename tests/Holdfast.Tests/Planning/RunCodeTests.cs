using Holdfast.Planning;
using Holdfast.Statistics;

namespace Holdfast.Tests.Planning;

public class RunCodeTests
{
    // The example printed with the Global Release Identifier, a public user of ISO 7064 MOD 37,36: A1-2425G-ABC1234002-M (from memory).
    [Theory, InlineData("A1-2425G-ABC1234002-M", true), InlineData("A1-2425G-ABC1234002-N", false), InlineData("a12425gabc1234002m", true), InlineData("", false), InlineData("-", false), InlineData("26-Ä-1", false)]
    public void IsValid_PublishedExample_IsRecognised(string code, bool valid) => Assert.Equal(valid, RunCode.IsValid(code));

    // What ISO 7064 promises of a hybrid system: every single wrong character is caught.
    [Fact]
    public void IsValid_EverySingleWrongCharacter_IsCaught()
    {
        var code = RunCode.Of(2026, "ISO-298", 147);
        Assert.StartsWith("26-ISO298-0147-", code, StringComparison.Ordinal);
        Assert.True(RunCode.IsValid(code));
        for (var i = 0; i < code.Length; i++)
        {
            foreach (var c in "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ".Where(c => code[i] != '-' && c != code[i]))
                Assert.False(RunCode.IsValid(code[..i] + c + code[(i + 1)..]));
        }
    }

    [Fact]
    public void Of_SeriesWithoutLetter_Throws() => Assert.Throws<ArgumentException>(() => RunCode.Of(2026, "–", 1));

    // Ranks by hand: x 1 2.5 2.5 4, y 4 3 2 1: Σ of products of distances −4.5, squares 4.5 and 5: −4.5/√22.5.
    [Fact]
    public void Spearman_WithTies_AgreesWithHand() => Assert.Equal(-4.5 / Math.Sqrt(22.5), Spearman.Of([1, 5, 5, 9], [8, 7, 3, 2])!.Value, 12);

    [Fact]
    public void Spearman_WithoutVariation_IsUnknown() => Assert.Null(Spearman.Of([1, 1, 1], [1, 2, 3]));

    // planning.md 1: within each block every level appears equally often; |rho| < 0.3; the seed repeats it; another series does not change it.
    [Fact]
    public void Draw_EightLevelsThreeBlocks_IsCompleteClearAndRepeatable()
    {
        double[] levels = [.. Enumerable.Range(0, 24).Select(i => (double)(i / 3))];
        var order = RunOrder.Draw(levels, 3, 1589, "ISO-298");
        for (var b = 1; b <= 3; b++)
            Assert.Equal(8, Enumerable.Range(0, 24).Where(i => order.Block[i] == b).Select(i => levels[i]).Distinct().Count());
        Assert.Equal(Enumerable.Range(1, 24), order.Start.Order());
        Assert.Equal(Enumerable.Range(1, 24), order.Read.Order());
        Assert.NotEqual(order.Start, order.Read);
        Assert.True(order.IsClear && order.StartCorrelation < RunOrder.LargestCorrelation);
        Assert.Equal(order.Start, RunOrder.Draw(levels, 3, 1589, "ISO-298").Start);
        Assert.NotEqual(order.Start, RunOrder.Draw(levels, 3, 1590, "ISO-298").Start);

        // Vessels of an earlier block are started before those of a later one.
        Assert.True(Enumerable.Range(0, 24).Where(i => order.Block[i] == 1).Max(i => order.Start[i]) < Enumerable.Range(0, 24).Where(i => order.Block[i] == 2).Min(i => order.Start[i]));
    }

    // Two levels once each have ρ = ±1 whatever is drawn: it is said, not hidden.
    [Fact]
    public void Draw_TwoVessels_SaysThatItIsNotClear() => Assert.False(RunOrder.Draw([1, 2], 1, 1, "x").IsClear);

    [Theory, InlineData(2, true), InlineData(3, false)]
    public void Draw_MoreBlocksThanReplicates_IsRefused(int blocks, bool taken)
    {
        double[] levels = [1, 1, 2, 2];
        if (taken)
            Assert.Equal(4, RunOrder.Draw(levels, blocks, 1, "x").Block.Count);
        else
            Assert.Throws<ArgumentException>(() => RunOrder.Draw(levels, blocks, 1, "x"));
    }
}
