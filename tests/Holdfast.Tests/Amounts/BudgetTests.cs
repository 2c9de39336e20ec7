using CsCheck;
using Holdfast.Amounts;
using Holdfast.Testing;

namespace Holdfast.Tests.Amounts;

public class BudgetTests
{
    // One vessel worked by hand: q = (C0 − Ce)·V/m with C0 40.0(4), Ce 6.2(2) mg/L, m 20.0(1) mg, V 25.00(3) mL; invented readings.
    private static readonly Measured Uptake =
        (Measured.From(40, new Source("c0", "stock S-2, dilution D-5", 0.4, Unit: "mg/L", Trail: "D-5"))
            - Measured.From(6.2, new Source("ce", "reading R-17", 0.2, Unit: "mg/L", Trail: "R-0142 row 17")))
        * Measured.From(0.025, new Source("V", "flask class A", 0.00003)) / Measured.From(0.02, new Source("m", "balance B-1", 0.0001));

    [Fact]
    public void BySource_OfAVessel_SortsTheSharesThatHandPropagationGives()
    {
        var budget = Budget.BySource(Uptake);
        Assert.Equal(["stock S-2, dilution D-5", "reading R-17", "balance B-1", "flask class A"], budget.Rows.Select(r => r.Name));
        Assert.Equal([69.5, 17.4, 12.4, 0.7], budget.Rows.Select(r => Math.Round(r.Share, 1)));
        Agree.Digits(12, 1.25, budget.Rows[0].Sensitivity!.Value);
        Agree.Digits(12, 0.5, budget.Rows[0].Contribution);
        Assert.Equal("70 % of the variance is stock S-2, dilution D-5", budget.Headline);
    }

    [Fact]
    public void Trail_OfAVessel_NamesSourceShareAndRecord()
    {
        var lines = Budget.BySource(Uptake).Trail(2).Split('\n');
        Assert.Equal("  69.5 %  stock S-2, dilution D-5  u 0.4 mg/L  <- D-5", lines[0]);
        Assert.Equal("  17.4 %  reading R-17             u 0.2 mg/L  <- R-0142 row 17", lines[1]);
        Assert.Equal("  13.1 %  other 2                ", lines[2]);
    }

    [Fact]
    public void ByGroup_OfAFit_PutsItOnOneRow()
    {
        var line = CorrelatedInputs.Of([0.0015, 0.0595], [6.4e-7, -2.4e-7, -2.4e-7, 1.6e-7], "C-4", "calibration line of run 2", 13);
        var x = (Measured.From(0.24, new Source("y", "reading", 0.0012)) - line[0]) / line[1];
        var budget = Budget.ByGroup(x);
        Assert.Equal(2, budget.Rows.Count);
        Assert.Contains(budget.Rows, r => r.Name == "calibration line of run 2");
        Assert.Equal(3, Budget.BySource(x).Rows.Count);
    }

    [Fact]
    public void BySource_OfAnExactNumber_HasNoRows()
    {
        Assert.Empty(Budget.BySource(5).Rows);
        Assert.Null(Budget.BySource(5).Headline);
        Assert.Empty(Budget.BySource(Uptake - Uptake).Rows);
    }

    [Fact]
    public void ExpandedUncertainty_WithManyDegreesOfFreedom_TakesTwo()
    {
        Assert.Equal(2, ExpandedUncertainty.Of(Uptake).K);
        var few = Measured.From(1, new Source("s", "s", 1, 2));
        Agree.Digits(6, 4.302653, ExpandedUncertainty.Of(few).K); // t(0.975, 2), any table of Student's t
    }

    // Law: the shares add up to 100, whatever the sources, and summing the tail keeps that.
    [Fact]
    public void Shares_OfAnyResult_AddUpToAHundred()
        => Gen.Double[0.001, 10].Array[1, 12].Sample(us =>
        {
            Measured sum = 0;
            for (var i = 0; i < us.Length; i++)
                sum += Measured.From(1, new Source("s" + (char)('a' + i), "source", us[i]));
            var budget = Budget.BySource(sum);
            return Math.Abs(budget.Rows.Sum(r => r.Share) - 100) < 1e-9 && Math.Abs(budget.Top(3).Rows.Sum(r => r.Share) - 100) < 1e-9
                && budget.Rows.Zip(budget.Rows.Skip(1)).All(p => p.First.Share >= p.Second.Share);
        });

    // Law: a sum does not depend on the order of its terms, neither in value nor in uncertainty.
    [Fact]
    public void Sum_InAnyOrder_HasTheSameUncertainty()
        => Gen.Select(Gen.Double[0.01, 10].Array[2, 8], Gen.Int[0, 1000]).Sample((us, seed) =>
        {
            var terms = us.Select((u, i) => Measured.From(u, new Source("s" + (char)('a' + i % 4), "s", us[i % 4]))).ToArray();
            var shuffled = terms.ToArray();
            new Holdfast.Statistics.SeededStream((ulong)seed, "order").Shuffle(shuffled.AsSpan());
            Measured a = 0, b = 0;
            foreach (var t in terms)
                a += t;
            foreach (var t in shuffled)
                b += t;
            return Math.Abs(a.U - b.U) < 1e-12 * a.U && Math.Abs(a.Value - b.Value) < 1e-12 * a.Value;
        });
}
