using Holdfast.Amounts;
using Holdfast.Scaleup;
using Holdfast.Statistics;

namespace Holdfast.Tests.Scaleup;

public class TreatmentCostTests
{
    // By hand: 2·(10/5 + 1) + 3·0.5/2 + 0.2 + 0.3 = 7.25 per m³; 14.5 g removed per m³ gives 0.5 per gram.
    [Fact]
    public void Cost_ByHand_Agrees()
    {
        var cost = new TreatmentCost<Number>(2, 10, 5, 1, 3, 0.5, 2, 0.2, 0.3);
        Assert.Equal(7.25, cost.PerCubicMetre.Value, 12);
        Assert.Equal(0.5, cost.PerGram(14.5).Value, 12);
    }

    // One uniform input through a straight line: mean and limits of the rectangle are known exactly.
    [Fact]
    public void Draws_OfOneUniformInput_GiveTheRectangle()
    {
        var cost = Exact() with { Price = CostDraws.Between("price", "price of the sorbent", 5, 15, "per kg") };
        var drawn = CostDraws.PerGram(cost, 10, new SeededStream(1, "cost")).Value!;
        Assert.Equal(2 * 10 / 10.0, drawn.Mean!.Value, 0.01);
        Assert.Equal(2 * 10 / Math.Sqrt(12) / 10, drawn.U!.Value, 0.01);
        Assert.Equal(2 * (5 + 0.25) / 10, drawn.EqualTails.Low, 0.01);
    }

    // A rival at 1.9 against a cost uniform on 1..3: cheaper in 45 of 100 draws; at 3.1 in all; at 0.9 in none.
    [Theory, InlineData(1.9, Ruling.NotShownYet), InlineData(3.1, Ruling.Holds), InlineData(0.9, Ruling.Contradicted)]
    public void Cheaper_ByDraws_IsDecidedAtNinetyFive(double rival, Ruling expected)
    {
        var cost = Exact() with { Price = CostDraws.Between("price", "price of the sorbent", 5, 15, "per kg") };
        Assert.Equal(expected, CostDraws.Cheaper(CostDraws.AgainstRival(cost, 10, rival, new SeededStream(1, "cost")).Value!));
    }

    [Fact]
    public void Shares_OfTwoInputs_NameTheLargerFirst()
    {
        var cost = Exact() with
        {
            Price = CostDraws.Between("price", "price of the sorbent", 9, 11, "per kg"),
            Labour = CostDraws.Between("labour", "labour", 0, 40, "per m³"),
        };
        Assert.Equal("labour", CostDraws.Shares(cost, 10).Rows[0].Name);
    }

    [Theory, InlineData(20, 5, true), InlineData(5, 5, false)]
    public void UsesNotShown_BeyondTheTest_IsFound(double uses, int shown, bool found)
        => Assert.Equal(found ? "HF-646" : null, CostDraws.UsesNotShown(uses, shown)?.Code);

    private static TreatmentCost<Measured> Exact() => new(2, 10, 1, 0, 0, 0, 1, 0, 0);
}
