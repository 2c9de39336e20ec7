using Holdfast.Amounts;
using Holdfast.Claims.Rules;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Tests.Claims.Rules;

/// <summary>Controls on both sides of what is tolerated, alone and among others.</summary>
public sealed class ControlsCleanTests
{
    private const double Tolerated = ControlsClean.Limits.Tolerated;

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Loss_AtWhatIsTolerated_IsClean_AndBeyondItIsNot(int sign)
    {
        Assert.Equal(Ruling.Holds, ControlsClean.Decide([new("K", sign * Tolerated)]).Gated);
        Assert.Equal(Ruling.Contradicted, ControlsClean.Decide([new("K", sign * Math.BitIncrement(Tolerated))]).Gated);
    }

    // One-sided 95 % bound over n controls: normal quantile of 1 − 0.05/n (Bonferroni); 1.6449 for one, 1.9600 for two, 2.1280 for three (normal table).
    [Theory]
    [InlineData(1, 1.6449)]
    [InlineData(2, 1.9600)]
    [InlineData(3, 2.1280)]
    public void Loss_ThatIsSure_IsSureAmongAllThatWereLookedAt(int n, double quantile)
    {
        Ruling Of(double z) => ControlsClean.Decide([.. Enumerable.Range(1, n - 1).Select(i => new ControlLoss($"clean {i}", 0.001)), new("K", U(Tolerated + 0.01 * z, 0.01))]).Gated;
        Assert.Equal(Ruling.Contradicted, Of(quantile + 0.001));
        Assert.Equal(Ruling.NotShownYet, Of(quantile - 0.001));
    }

    [Fact]
    public void Words_SayTheWorst_WhatItDidAndWhatIsNext()
    {
        var lost = ControlsClean.Decide([new("K-1", U(0.02, 0.007)), new("K-2", U(0.40, 0.006))]);
        Assert.Equal("Control K-2 lost 40 % (standard uncertainty 0.6 %), the most of 2 controls; 5 % are tolerated.", lost.Reason);
        Assert.Equal("Without your sorbent 40 % is gone too: what is your material's share?", Assert.Single(lost.Questions, q => q.Code == "Q37").Text);
        Assert.Null(lost.Next!.Vessels);
        Assert.Equal([("loss in control K-1", 2.0), ("loss in control K-2", 40.0)], lost.Numbers.Select(n => (n.Name, n.Value)));
        var gained = ControlsClean.Decide([new("K-1", U(-0.40, 0.006))]);
        Assert.StartsWith("Control K-1 gained 40 %", gained.Reason, StringComparison.Ordinal);
        Assert.Empty(gained.Questions);
        Assert.StartsWith("Control K lost 0 %", ControlsClean.Decide([new("K", 0)]).Reason, StringComparison.Ordinal);
        var open = ControlsClean.Decide([new("K-1", U(0.08, 0.06))]);
        Assert.Equal((3, "K-1"), (open.Next!.Vessels, Assert.Single(open.Next.Settings)));
        Assert.True(ControlsClean.Decide([]).IsUntested);
    }

    // Controls at 5 mg/L say nothing of vessels at 20: each level without one is named, three at most.
    [Fact]
    public void Levels_WithoutAControl_AreNamed()
    {
        double[] starts = [5, 10, 20, 40, 60];
        var series = Made.Series("ISO", BatchProperties.InitialConcentration, starts.Select(c => (c, new[] { Made.Vessel(FormattableString.Invariant($"V{c}"), "ISO", c, c / 2, 2) })),
            Made.Vessel("K", "ISO", 5, 5, 2, role: Studies.SampleRole.Control, endPh: 6));
        var verdict = new ControlsClean().Judge(Made.Claim("controls-clean", ("series", "ISO")), Made.Evidence([series]));
        Assert.Equal(Ruling.Holds, verdict.Ruling);
        Assert.Equal(["ISO has no control at initial concentration 10 mg/L.", "ISO has no control at initial concentration 20 mg/L.", "ISO has no control at initial concentration 40 mg/L."], verdict.Warnings);
    }

    private static Measured U(double value, double u) => Measured.From(value, new Source("control", "control", u));
}
