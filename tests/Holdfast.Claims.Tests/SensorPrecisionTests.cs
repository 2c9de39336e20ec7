using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;
using static System.FormattableString;

namespace Holdfast.Claims.Tests;

/// <summary>Precision of a sensor within and between days, and its response time, from vessels of a study.</summary>
public class SensorPrecisionTests
{
    private static readonly Origin File = new("01", "days.csv", null, 1, null);

    // NIST StRD, one-way sets with certified mean squares (reference/nist-strd/SOURCE.md), taken as days of vessels: s² within is the one within, s² between
    // (between − within)/n. SmLs01 holds 9 days of 21, SiRstv 5 days of 5, which are too few vessels a day.
    [Theory]
    [InlineData("SmLs01t", true)]
    [InlineData("SiRstvt", false)]
    public void Days_OfACertifiedSet_GiveItsVarianceComponents(string name, bool enough)
    {
        using var certificate = JsonDocument.Parse(System.IO.File.ReadAllText(Repository.Path("reference", "nist-strd", "anova", name + ".json")));
        double Certified(string key) => certificate.RootElement.GetProperty(key).GetDouble();
        var found = SensorPrecisionStudy.Of(Evidence.Of(Study([.. ReferenceTable.Read("nist-strd", "anova", name + ".csv")
            .Select(r => (Day: Invariant($"2026-05-{int.Parse(r["treatment"], CultureInfo.InvariantCulture):00}"), double.Parse(r["y"], CultureInfo.InvariantCulture)))])));
        var level = Assert.Single(found.Levels);
        Agree.Digits(11, Math.Sqrt(Certified("withinMS")), level.WithinSd);
        Agree.Digits(9, Math.Sqrt((Certified("betweenMS") - Certified("withinMS")) / Certified("nReplicates")), level.BetweenSd!.Value);
        Assert.Equal(enough, level.IsEnough);
        Assert.Equal(enough ? 0 : 1, found.Findings.Count(f => f.Code == "HF-600"));
        Assert.Equal(20, level.Quencher);
    }

    // One day shows its own scatter only: sd of 990, 1000, 1010 is 10.
    [Fact]
    public void OneDay_ShowsNothingOfOthers()
    {
        var found = SensorPrecisionStudy.Of(Evidence.Of(Study([("2026-05-01", 990), ("2026-05-01", 1000), ("2026-05-01", 1010)])));
        var level = Assert.Single(found.Levels);
        Assert.Equal(10, level.WithinSd, 9);
        Assert.True(level is { BetweenSd: null, OnAnyDay: null, IsEnough: false });

        // √(2/χ²(0.05; 2)) with χ² = −2·ln 0.95, in closed form for two degrees of freedom.
        Assert.Equal(10 * Math.Sqrt(2 / (-2 * Math.Log(0.95))), level.WithinUpper, 6);
    }

    [Fact]
    public void Vessels_WithoutADay_GiveNoPrecision()
        => Assert.Empty(SensorPrecisionStudy.Of(Evidence.Of(Study([(null, 990), (null, 1000), (null, 1010)]))).Levels);

    // F falls from 1000 to 700 by 300·(1 − e^−t): within 5 % of the change after ln 20 = 2.996 min (closed form), read at 3.5 min for the first time.
    [Fact]
    public void Response_OfAnExponential_IsItsClosedForm()
    {
        double[] times = [0, 0.5, 1, 1.5, 2.5, 3.5, 5, 7, 9, 11, 13, 15];
        var found = SensorPrecisionStudy.Of(Evidence.Of(Timed(times, t => 1000 - 300 * (1 - Math.Exp(-t)))));
        var run = Assert.Single(found.Responses);
        Assert.True(run is { IsResolved: true, Name: "ANSWER" });
        Assert.Equal(3.5, run.Time.Reached);
        Agree.Digits(4, Math.Log(20), run.Time.ByExponential!.Value);

        // What was read over time is no vessel of a titration.
        Assert.Empty(Sensing.Of(Evidence.Of(Timed(times, t => 1000 - 300 * (1 - Math.Exp(-t))))).Series);
    }

    [Theory]
    [InlineData(7, "HF-581")]
    [InlineData(12, "HF-581")]
    public void Response_WithTooFewReadingsOrNoPlateau_IsNone(int readings, string code)
    {
        var found = SensorPrecisionStudy.Of(Evidence.Of(Timed([.. Enumerable.Range(0, readings).Select(i => (double)i)], t => 1000 - 20 * t)));
        Assert.Empty(found.Responses);
        Assert.Equal(code, Assert.Single(found.Findings).Code);
    }

    [Fact]
    public void Response_FasterThanItsReadings_IsAtMostThat()
    {
        var run = Assert.Single(SensorPrecisionStudy.Of(Evidence.Of(Timed([0, 2, 4, 6, 8, 10, 12, 14, 16], t => t == 0 ? 1000 : 700 + (t / 2 % 2 == 0 ? 0.5 : -0.5)))).Responses);
        Assert.False(run.IsResolved);
        Assert.Equal(2, run.Time.Reached);
    }

    private static Study Study((string? Day, double Value)[] vessels) => Made([.. vessels.Select((v, i) => (Invariant($"V-{i}"), v.Value,
        (v.Day is null ? Tests.Made.Facts([(FluorescenceProperties.Quencher, 20)]) : Tests.Made.Facts([(FluorescenceProperties.Quencher, 20)], (SampleProperties.Day, v.Day)))))]);

    private static Study Timed(double[] times, Func<double, double> signal) => Made([.. times.Select(t => (Invariant($"T-{t}"), signal(t),
        Tests.Made.Facts([(FluorescenceProperties.Quencher, 20), (FluorescenceProperties.TimeAfterAddition, t)], (SampleProperties.Series, "ANSWER"))))]);

    private static Study Made((string Code, double Value, ImmutableSortedDictionary<string, Fact> Facts)[] all) => new()
    {
        Title = "made by hand",
        Samples = [.. all.Select(a => new Sample(a.Code, SampleRole.Vessel, a.Facts))],
        Runs = [new Run("signals", FluorescenceProperties.Intensity.Name, ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal), File)],
        Readings = [.. all.Select((a, i) => new Reading(Invariant($"R-{i + 1}"), a.Code, "signals", i + 1, FluorescenceProperties.Intensity.Name, a.Value, null, 1, 1, "", File))],
    };
}
