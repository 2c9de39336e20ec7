using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Stability in water judged on every constituent that was read. Shares by hand: c·V/(m·w) with 25 mL, 50 mg and the mass fraction w of the formula.</summary>
public sealed class ConstituentTests
{
    private const string Powder = "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2";

    // w by IUPAC atomic weights: M = 9.8·40.078 + 0.2·151.964 + 6·94.971 + 1.8·17.007 + 0.2·15.999 = 1026.8; Ca 38.25 %, Eu 2.96 %.
    [Fact]
    public void StableInWater_HostAndDopantBothRead_AreBothJudged()
    {
        var verdict = Judge(calcium: 4, europium: 0.1, ("formula", Powder));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Equal(["calcium dissolved at pH 6", "europium dissolved at pH 6"], verdict.Numbers.Select(n => n.Name));
        Agree.Relative(2e-3, 100 * 4 * 0.025 / (50 * 0.3825), verdict.Numbers[0].Value);
        Agree.Relative(2e-3, 100 * 0.1 * 0.025 / (50 * 0.0296), verdict.Numbers[1].Value);
    }

    [Fact]
    public void StableInWater_ADopantThatComesOff_ContradictsThoughTheHostStays()
    {
        var verdict = Judge(calcium: 4, europium: 1, ("formula", Powder));
        Assert.Equal(Ruling.Contradicted, verdict.Ruling);
        Assert.Contains("of the powder's europium dissolves", verdict.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.05 mg/L", Ruling.Contradicted)]
    [InlineData("0.2 mg/L", Ruling.Holds)]
    public void StableInWater_ADopantWithALimit_IsJudgedByIt(string limit, Ruling ruling)
    {
        var verdict = Judge(calcium: 4, europium: 0.1, ("formula", Powder), ("dopant", "Eu"), ("limit", limit));
        Assert.Equal(ruling, verdict.Ruling);
        Assert.Equal("mg/L", verdict.Numbers[1].Unit);
        Agree.Relative(2e-3, 0.1, verdict.Numbers[1].Value);
    }

    [Fact]
    public void StableInWater_AConstituentOfUnknownShare_LeavesItOpen()
    {
        var verdict = Judge(calcium: 4, europium: 0.1, ("formula", "Ca5(PO4)3OH"));
        Assert.Equal(Ruling.NotShownYet, verdict.Ruling);
        Assert.Contains("mass fraction of europium in the powder is not known", verdict.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Dissolved_EveryConstituent_IsRecognisedByItsHeading()
        => Assert.All(StabilityProperties.Dissolved, d => Assert.Equal(d.Property, Property.All.Single(p => p.Headings.Contains("dissolved" + d.Symbol.ToLowerInvariant()))));

    private static Verdict Judge(double calcium, double europium, params (string Name, string Words)[] parameters)
    {
        Sample One(int i, double off) => new($"W-{i}", SampleRole.SorbentBlank, Made.Facts(
        [
            (BatchProperties.StartPh, 6), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50),
            (StabilityProperties.DissolvedCalcium, calcium * off), (Property.Named("dissolved-europium")!, europium * off),
        ]));
        var study = new Study { Title = "constituents", Samples = [One(1, 0.99), One(2, 1), One(3, 1.01)] };
        var claim = Claim.Raised("stable-in-water", [("ph", "6"), .. parameters]);
        return Defence.RuleNamed("stable-in-water")!.Judge(claim, Dossier.Of(study).Evidence);
    }
}
