using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Tests;

/// <summary>What a vessel prints where its reading carries little: below a limit, or without an uncertainty of its own.</summary>
public class WorkupTests
{
    private static readonly Origin File = new("00", "made.csv", null, 1, null);

    // Handbook of measurement, 1.7: below its limit a result is printed as one; the signed value stays inside.
    [Fact]
    public void Vessel_BelowTheDetectionLimit_GivesLeastRemovalAndAnUptakeBetweenTwoEnds()
    {
        var vessel = Made.Vessel("V", "S", start: 10, end: 0.01, dose: 2, u: 0.02, detection: 0.05, quantification: 0.15);
        Assert.Equal(99.5, vessel.LeastRemoval!.Value, 9);
        Assert.Equal((4.975, 5.0), vessel.UptakeRange!.Value);
        Assert.Equal(0.01, vessel.End!.Value!.Value.Value);
        var above = Made.Vessel("V", "S", start: 10, end: 0.06, dose: 2, u: 0.02, detection: 0.05, quantification: 0.15);
        Assert.Null(above.LeastRemoval);
        Assert.Null(above.UptakeRange);
    }

    // Between the two limits a vessel was detected but is no number to divide by: the quantification limit decides, not the detection limit.
    [Fact]
    public void Workup_BetweenDetectionAndQuantification_GivesNoDistributionCoefficient()
    {
        var vessel = Worked(Absorbance(0.0005 + 0.06 * 0.015));
        Assert.True(vessel.End!.Value!.Value.Value > vessel.End.DetectionLimit);
        Assert.True(vessel.End.Value.Value.Value < vessel.End.QuantificationLimit);
        Assert.Null(vessel.Distribution);
        Assert.Contains(vessel.Findings, f => f.Code == "HF-485");
    }

    // One reported value: before, R = 99.17 ± 0.0083 % from the start alone.
    [Fact]
    public void Workup_OneReportedConcentration_HasAnAssumedUncertaintyThatIsNamed()
    {
        var study = Study(Reported(0.083));
        var recorded = new RecordedAmounts(study);
        var vessel = new VesselWorkup(study, recorded, new Calibrating(study, recorded)).Of(study.Samples[0]);
        var expected = Math.Sqrt(0.01 * 0.01 + Math.Pow(0.02 * 0.083, 2));
        Assert.Equal(expected, vessel.End!.Value!.Value.U, 12);
        Assert.True(vessel.Removal!.Value.U > 0.09);
        Assert.Contains("reported concentration", Assert.Single(recorded.Findings).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Workup_ReportedConcentrationWithItsUncertainty_UsesIt()
    {
        var study = Study(Reported(0.083), stated: 0.004);
        var recorded = new RecordedAmounts(study);
        var vessel = new VesselWorkup(study, recorded, new Calibrating(study, recorded)).Of(study.Samples[0]);
        Assert.Equal(0.004, vessel.End!.Value!.Value.U, 12);
        Assert.DoesNotContain("reported", string.Concat(recorded.Findings.Select(f => f.Sentence)), StringComparison.Ordinal);
    }

    // Pairs that differ by ±0.02 about their mean, five of them: pooled sd √(Σd²/2k) = 0.02·√2 (handbook of measurement, 1.9), and the mean of two has 1/√2 of it.
    [Fact]
    public void Workup_ReportedDuplicates_ArePooledOverTheStudy()
    {
        var study = Study([.. Enumerable.Range(0, 5).SelectMany(i => new[] { (FormattableString.Invariant($"V{i}"), 1.0 + 0.02), (FormattableString.Invariant($"V{i}"), 1.0 - 0.02) })]);
        var recorded = new RecordedAmounts(study);
        var left = new Calibrating(study, recorded).Of(study.Samples[0])!.Value!.Value;
        Assert.Equal(0.02, left.U, 6);
        Assert.Equal(5, left.DegreesOfFreedom, 6);
    }

    private static Vessel Worked(Study study)
    {
        var recorded = new RecordedAmounts(study);
        return new VesselWorkup(study, recorded, new Calibrating(study, recorded)).Of(study.Samples[0]);
    }

    // Handbook of measurement, 1.7: fits use the signed value with its u, never the limit or half of it; and it is said.
    [Fact]
    public void Fit_AVesselBelowTheDetectionLimit_EntersAsReadAndIsNamed()
    {
        double[] start = [5, 10, 20, 40, 60, 90], left = [-0.004, 0.09, 0.5, 5, 20, 48];
        var series = Made.Series("ISO", BatchProperties.InitialConcentration, start.Select((c, i) => (c, new[]
        {
            Made.Vessel(FormattableString.Invariant($"V{i}"), "ISO", start: c, end: left[i], dose: 2, u: 0.01 + 0.02 * Math.Abs(left[i]), detection: 0.05, quantification: 0.15),
        })));
        var points = SeriesFitting.IsothermPoints(series);
        Assert.Equal(left, points.X.Select(x => x.Value));
        Assert.Equal(0.01 + 0.02 * 0.004, points.X[0].U, 9);
        var fitted = SeriesFitting.Isotherms(series);
        Assert.Equal(6, fitted.Fits.Single(f => f.Card.Name == "Langmuir").N);
        var finding = Assert.Single(fitted.Findings, f => f.Code == "HF-470");
        Assert.Equal(["V0"], finding.Concerns);
    }

    // A report that says "< 0.05" and no more: no number is made of it, and the reason is that, not that nothing was read.
    [Fact]
    public void Workup_ReportedOnlyAsBelowALimit_HasNoUptakeAndSaysWhy()
    {
        var study = Study([("V0", 0), ("V1", 0.083)]);
        study = study with { Readings = [study.Readings[0] with { Value = null, Below = 0.05 }, study.Readings[1]] };
        var missing = Assert.Single(MissingResult.Of(Evidence.Of(study)));
        Assert.Equal(["V0"], missing.Samples);
        Assert.Contains("only as below 0.05", missing.Sentence, StringComparison.Ordinal);

        // By hand, with what is assumed where nothing is recorded: u(C0) 1 %, u(m) 0.13 mg, u(V) 0.2 %; twice of them, as nowhere the freedom is short.
        var vessel = Evidence.Of(study).Vessels.Single(v => v.Code == "V0");
        Assert.True(vessel.End!.IsOnlyBelow);
        Assert.Equal(100 * (1 - (0.05 / (10 - (2 * 0.1)))), vessel.LeastRemoval!.Value, 4);
        double Half(double left) => 2 * (left / 2) * Math.Sqrt(Math.Pow(0.1 / left, 2) + Math.Pow(0.13 / 50, 2) + Math.Pow(0.002, 2));
        Assert.Equal((9.95 / 2) - Half(9.95), vessel.UptakeRange!.Value.Low, 3);
        Assert.Equal(5 + Half(10), vessel.UptakeRange.Value.High, 3);
    }

    private static (string, double)[] Reported(params double[] values) => [.. values.Select(v => ("V0", v))];

    private static Study Study((string Sample, double Value)[] reported, double? stated = null)
        => new()
        {
            Title = "made",
            Samples = [.. reported.Select(r => r.Sample).Distinct().Select(Sampled)],
            Readings = [.. reported.Select((r, i) => Reading(i, r.Sample, SpectrometryProperties.ReportedConcentration.Name, r.Value) with { U = stated })],
        };

    private static Study Absorbance(double signal)
    {
        double[] noise = [0.0001, -0.0001, 0.0002, -0.0002, 0, 0.0001, -0.0001, 0.0002, -0.0002, 0];
        var standards = new[] { 0.0, 0.5, 1, 2, 3, 4 };
        return new Study
        {
            Title = "made",
            Samples =
            [
                Sampled("V0"), .. standards.Select(s => new Sample(FormattableString.Invariant($"S{s}"), SampleRole.Standard, Made.Facts([(SpectrometryProperties.StandardConcentration, s)]))),
                .. noise.Select((_, i) => new Sample(FormattableString.Invariant($"B{i}"), SampleRole.Blank, Made.Facts([]))),
            ],
            Runs = [new Run("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
            Readings =
            [
                .. standards.SelectMany((s, i) => Enumerable.Range(0, 3).Select(k => Reading(100 + 3 * i + k, FormattableString.Invariant($"S{s}"), SpectrometryProperties.Absorbance.Name, 0.0005 + 0.06 * s + 0.0002 * (k - 1)))),
                .. noise.Select((n, i) => Reading(200 + i, FormattableString.Invariant($"B{i}"), SpectrometryProperties.Absorbance.Name, 0.0005 + n)),
                Reading(300, "V0", SpectrometryProperties.Absorbance.Name, signal),
            ],
        };
    }

    private static Sample Sampled(string code)
        => new(code, SampleRole.Vessel, Made.Facts(
            [(BatchProperties.InitialConcentration, 10), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (BatchProperties.ContactTime, 60)]));

    private static Reading Reading(int order, string sample, string signal, double value)
        => new($"R-{order:0000}", sample, "run", order, signal, value, null, 1, 1, "", File);
}
