using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims.Tests;

/// <summary>Check standards outside 90 to 110 % put what was read since the last pass in doubt (common practice).</summary>
public class FailedCheckTests
{
    [Fact]
    public void Of_ARunWhoseChecksPass_IsNone() => Assert.Empty(FailedCheck.Of(StrongStudy.Dossier.Evidence));

    [Fact]
    public void Of_ALastCheckThatFails_DoubtsWhatWasReadSinceTheFirst()
    {
        var evidence = Dossier.Of(Failing()).Evidence;
        var failed = Assert.Single(FailedCheck.Of(evidence));
        Assert.Equal("Q-2", failed.Check.Code);
        Assert.Equal(evidence.Vessels.Where(v => v.End is not null).Select(v => v.Code).Order(), failed.Samples.Order());
        Assert.Contains("Q-2 of run reads back at 8", failed.Sentence, StringComparison.Ordinal);
        Assert.Contains("window 90 to 110 %", failed.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AFirstCheckThatFails_DoubtsNothingReadAfterThePassThatFollows()
    {
        var study = Failing();
        var failed = Assert.Single(FailedCheck.Of(Dossier.Of(study with { Readings = [.. study.Readings.Select(r => r.Sample == "Q-2" ? r with { Order = 0 } : r)] }).Evidence));
        Assert.Equal("Q-2", failed.Check.Code);
        Assert.Empty(failed.Samples);
    }

    [Fact]
    public void Of_AFailedCheckThatIsStruckWithItsReason_IsNone()
    {
        var study = Failing();
        var answered = study with { Strikes = study.Strikes.Add(new Strike("Q-2", "made up from the wrong flask", study.Version + 1, DateTimeOffset.UnixEpoch, "test")) };
        Assert.Empty(FailedCheck.Of(Dossier.Of(answered).Evidence));
    }

    private static Study Failing()
    {
        var study = StrongStudy.Build();
        return study with { Readings = [.. study.Readings.Select(r => r.Sample == "Q-2" ? r with { Value = 0.85 * r.Value } : r)] };
    }
}
