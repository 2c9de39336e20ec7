using Holdfast.Calibration;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

public class DetectionLimitTests
{
    // reference/design/decision-check.csv K20: sd of ten blanks 0.012, slope 0.0162 L/µmol (scipy 1.10.1).
    [Fact]
    public void OfBlanks_KnownSd_AgreesWithComputation()
    {
        var half = 0.012 * Math.Sqrt(9.0 / 10);
        var limits = DetectionLimits.OfBlanks([.. Enumerable.Range(0, 10).Select(i => 1 + (i % 2 == 0 ? half : -half))], 0.0162);
        var limit = limits.Single(l => l.Definition == LimitDefinition.ThreePointThreeSd);
        Agree.Digits(5, 2.44444, limit.Value);
        Agree.Digits(5, 1.68137, limit.Interval!.Value.Low);
        Agree.Digits(5, 4.4626, limit.Interval.Value.High);
    }

    // K21: seven low spikes with s 0.011 mg/L, t(0.99, 6) = 3.14267; t = 3.143 for seven is the method's own printed value.
    [Fact]
    public void OfSpikes_Seven_AgreesWithComputation()
    {
        double[] unit = [-3, -2, -1, 0, 1, 2, 3];
        var scale = 0.011 / Math.Sqrt(28.0 / 6);
        Agree.Digits(5, 0.0345694, DetectionLimits.OfSpikes([.. unit.Select(u => 0.1 + scale * u)]).Value);
    }

    // At the detection limit a sample passes the critical value 95 times of 100: drawn, not computed.
    [Fact]
    public void DetectionOfBlanks_Drawn_IsMissedOnceInTwenty()
    {
        var stream = new SeededStream(1589, "detection limit");
        const int Blanks = 10, Trials = 40_000;
        int falseAlarms = 0, misses = 0;

        // Both limits are multiples of the blanks' own sd; the true limit is the multiple of the true sd, which is 1.
        var limits = DetectionLimits.OfBlanks([.. Enumerable.Range(0, Blanks).Select(i => i % 2 == 0 ? 1.0 : -1.0)], 1);
        double Multiple(LimitDefinition d) => limits.Single(l => l.Definition == d).Value / Math.Sqrt(Blanks / (Blanks - 1.0));
        double alarm = Multiple(LimitDefinition.CriticalOfBlanks), truth = Multiple(LimitDefinition.DetectionOfBlanks);
        for (var i = 0; i < Trials; i++)
        {
            var blanks = Summary.Of([.. Enumerable.Range(0, Blanks).Select(_ => stream.Normal())]);
            falseAlarms += stream.Normal() - blanks.Mean > alarm * blanks.Sd ? 1 : 0;
            misses += truth + stream.Normal() - blanks.Mean > alarm * blanks.Sd ? 0 : 1;
        }

        Assert.InRange(falseAlarms / (double)Trials, 0.045, 0.055);
        Assert.InRange(misses / (double)Trials, 0.045, 0.055);
    }

    [Fact]
    public void OfBlanks_OneBlank_GivesNone() => Assert.Empty(DetectionLimits.OfBlanks([0.001], 0.06));

    [Fact]
    public void OfSpikes_Six_Throws() => Assert.Throws<ArgumentException>(() => DetectionLimits.OfSpikes([1, 2, 3, 4, 5, 6]));
}
