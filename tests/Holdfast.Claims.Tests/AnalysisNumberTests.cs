using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Claims.Analyses;
using Holdfast.Regeneration;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;
using Vessel = Holdfast.Claims.Analyses.Vessel;

namespace Holdfast.Claims.Tests;

/// <summary>Numbers of the analyses against what is worked out by hand from data of a simple shape, and each of their conditions at its limit. Invented numbers.</summary>
public sealed class AnalysisNumberTests
{
    private static readonly Origin File = new("00", "made.csv", null, 1, null);

    // The outlet rises in proportion to time and reaches the inlet after 100 min: ∫(1 − t/100)dt is 50 in all and 5 − 0.125 up to the break at 5 min.
    [Fact]
    public void Bed_WhoseOutletRisesInAStraightLine_IsWorkedOutByHand()
    {
        var run = Assert.Single(ColumnStudy.Of(Of(Bed("A", 10, 0.2, 20))).Runs);
        Assert.Equal((50.0, 5.0, 4.875), (Math.Round(run.TotalTime.Value, 9), Math.Round(run.BreakTime!.Value.Value, 9), Math.Round(run.UsedTime!.Value.Value, 9)));

        // 20 mg/L, 10 mL/min, 50 min are 10 mg less the 2 mg in 100 mL held back, on 5 g; of 10 cm the part not used.
        Assert.Equal(1.6, run.Capacity!.Value.Value, 9);
        Assert.Equal(10 * (1 - 4.875 / 50), run.UnusedLength!.Value.Value, 9);
        Assert.Equal(1, run.LastRatio);
        Assert.Equal(37, run.TimeTo(7.4)!.Value.Value, 9);
        Assert.Null(run.TimeTo(20));
        Assert.Null(run.TimeTo(0));
        Assert.Null(run.TimeTo(21));
    }

    // Before the first portion, at 10 min, the outlet counts as high as in it: 0.9·10 more than the trapezia from 10 min on, which are 40.5.
    [Fact]
    public void Bed_BeforeItsFirstPortion_CountsAsHighAsInIt()
        => Assert.Equal(9 + 40.5, Assert.Single(ColumnStudy.Of(Of(Bed("A", 10, 0.2, 20)[1..])).Runs).TotalTime.Value, 9);

    [Fact]
    public void Beds_AtTheirLimits_AreTaken()
    {
        Assert.Single(ColumnStudy.Of(Of(Bed("A", 10, 0.2, 20)[..4])).Runs);
        Assert.Empty(ColumnStudy.Of(Of(Bed("A", 10, 0.2, 20)[..3])).Runs);
        Assert.Equal("HF-660", Assert.Single(ColumnStudy.Of(Of(Bed("A", 10, 0.2, 0))).Findings).Code);
        static Sample[] Until(double share) => [.. Bed("A", 10, 0.2, 20)[..^1].Append(Bed("A", 10, 0.2, 20)[^1] is var last ? last with { Facts = last.Facts.SetItems(Made.Facts([(ColumnProperties.OutletConcentration, 20 * share)])) } : null!)];
        Assert.Empty(ColumnStudy.Of(Of(Until(0.95))).Findings);
        Assert.Equal("HF-661", Assert.Single(ColumnStudy.Of(Of(Until(0.949))).Findings).Code);

        // Velocities 5 % apart are one velocity, more are not.
        ImmutableArray<Finding> Three(double velocity) => ColumnStudy.Of(Of([.. Bed("A", 5, 0.2, 20), .. Bed("B", 10, 0.2, 20), .. Bed("C", 15, velocity, 20)])).Findings;
        Assert.DoesNotContain(Three((1 + 0.05) * 0.2), f => f.Code == "HF-662");
        Assert.Contains(Three(1.051 * 0.2), f => f.Code == "HF-662");
    }

    // (0.34 − 0.1)/0.1 over (0.34 − 0.2)/0.2; the mean of two by their logarithms.
    [Fact]
    public void Mixtures_GiveTheRatioOfDistributionCoefficients()
    {
        static Sample Mixed(string code, double analyte, double rival) => new(code, SampleRole.Vessel, Made.Facts(
            [(CompetitionProperties.InitialOfEach, 0.34), (CompetitionProperties.AnalyteLeft, analyte), (CompetitionProperties.RivalLeft, rival)], (CompetitionProperties.Rival, "Zn")));
        var study = MixtureStudy.Of(Of(Mixed("M-1", 0.1, 0.2), Mixed("M-2", 0.17, 0.2)));
        var rival = Assert.Single(study.Rivals);
        Assert.Equal(2.4 / 0.7, rival.Vessels[0].Preference.Value, 12);
        Assert.Equal(Math.Sqrt(2.4 / 0.7 * (1 / 0.7)), rival.Preference!.Value, 12);
        Assert.All(new[] { (0.34, 0.2), (0.1, 0.34), (0.0, 0.2), (0.1, 0.0) }, m => Assert.Equal("HF-656", Assert.Single(MixtureStudy.Of(Of(Mixed("M", m.Item1, m.Item2))).Findings).Code));
        Assert.Empty(MixtureStudy.Of(Of(Mixed("M", 0.34, 0.2))).Rivals);
    }

    [Fact]
    public void Signals_OfASensor_AreDividedByItsBlanks_OrByVesselsWithoutQuencher()
    {
        static SensorSample Read(string code, double quencher, double signal, int order = 1, string run = "r") => new(new(code, SampleRole.Vessel, Made.Facts([(FluorescenceProperties.Quencher, quencher)])), signal, signal, null, order, run);
        ImmutableArray<SensorSample> samples = [Read("Z", 0, 900, 1), Read("A", 10, 500, 2), Read("B", 20, 400, 3), Read("C", 30, 0, 4)];
        SensorSeries Of(params SensorSample[] blanks) => new("S", samples, [], [.. blanks]);
        var two = Of(Read("B1", 0, 990), Read("B2", 0, 1010));
        Assert.Equal((1000.0, "mean of 2 blanks"), (two.F0!.Value, two.F0From));
        Assert.Equal((900.0, "mean of 1 vessel without quencher"), (Of(Read("B1", 0, 990)).F0!.Value, Of(Read("B1", 0, 990)).F0From));

        // A signal of 0 gives no ratio; the line through (0, 10/9), (10, 2), (20, 2.5) has the slope 0.0694…
        Assert.Equal([1000.0 / 900, 2, 2.5], two.Ratios().Select(r => r.Signal));
        Assert.Equal([1000.0 / 900, 2], two.Ratios(10).Select(r => r.Signal));
        Assert.Equal((2.5 - 1000.0 / 900) / 20, two.LineTo()!.Line.SlopeAt(0), 12);
        Assert.NotNull(two.LineTo(10));
        Assert.Null(two.LineTo(9));

        // s of 990 and 1010 over their mean is 0.01·√2; three point three times that over the slope (the definition's name).
        Assert.Equal(3.3 * 0.01 * Math.Sqrt(2) / ((2.5 - 1000.0 / 900) / 20), two.Limit()!.Value, 1);
        Assert.Null(Of(Read("B1", 0, 990)).Limit());
        Assert.Null(Of(Read("B1", 0, 990), Read("B2", 0, 0)).Limit());
        Assert.True(two.IsInRisingOrder);
        Assert.False((two with { Samples = samples[..2] }).IsInRisingOrder);
        Assert.True((two with { Samples = samples[..3] }).IsInRisingOrder);
        Assert.False((two with { Samples = [samples[0], samples[1] with { Order = 5 }, .. samples[2..]] }).IsInRisingOrder);
    }

    // 3 and 4 together are 5; three days and six vessels are the fewest.
    [Fact]
    public void Precision_OnAnyDay_IsThatWithinAndBetweenDays()
    {
        SensorPrecision Of(int days, int vessels) => new(20, [.. Enumerable.Range(1, days).Select(d => new Group(Invariant($"{d}"), [.. Enumerable.Range(0, vessels).Select(v => (double)v)]))], 700, 4, 6, 3, 9, 0.1);
        Assert.Equal(5, Of(3, 6).OnAnyDay);
        Assert.Equal([true, false, false], [Of(3, 6).IsEnough, Of(2, 6).IsEnough, Of(3, 5).IsEnough]);
    }

    // 10 mg/L, 25 mL, 50 mg, 2 mg/L left: 2 g/L, 80 %, 4 mg/g. Her own number may be off by 3 %.
    [Theory]
    [InlineData(4.12, 80, false)]
    [InlineData(4.13, 80, true)]
    [InlineData(3.89, 80, false)]
    [InlineData(3.88, 80, true)]
    [InlineData(4, 82.4, false)]
    [InlineData(4, 82.5, true)]
    [InlineData(4, 77.7, false)]
    [InlineData(4, 77.6, true)]
    public void Vessel_HerOwnNumbers_AreHeldAgainstTheReadings(double uptake, double removal, bool differs)
    {
        var vessel = Assert.Single(Evidence.Of(Reported([("V", 2.0)], ("V", SampleRole.Vessel, [(BatchProperties.InitialConcentration, 10), (BatchProperties.ReportedUptake, uptake), (BatchProperties.ReportedRemoval, removal)]))).Vessels);
        Assert.Equal((2.0, 80.0, 4.0, 2.0), (vessel.Dose!.Value.Value, Math.Round(vessel.Removal!.Value.Value, 9), Math.Round(vessel.Uptake!.Value.Value, 9), Math.Round(vessel.Distribution!.Value.Value, 9)));
        Assert.Equal(differs, vessel.Findings.Any(f => f.Code == "HF-672"));
    }

    // 20, 30 and 40 mg/L in 25 mL over 50 mg, 5, 9 and 16 mg/L left; by her sheet V1 and V2 are each what the other reads. Where one alone contradicts, or V2 fits nobody, nothing is exchanged.
    [Theory]
    [InlineData("reported-end", 9, 5, true)]
    [InlineData("reported-end", 9, 9, false)]
    [InlineData("reported-end", 9, 2, false)]
    [InlineData("reported-uptake", 5.5, 12.5, true)]
    [InlineData("reported-uptake", 5.5, 10.5, false)]
    [InlineData("reported-removal", 55, 83, true)]
    [InlineData("reported-removal", 75, 70, false)]
    public void Vessels_WhoseOwnResultsAreEachTheOthers_LookExchanged(string property, double first, double second, bool exchanged)
    {
        var own = Property.Named(property)!;
        (Property, double)[] Filled(double start, double? hers) => [(BatchProperties.InitialConcentration, start), .. hers is { } stated ? [(own, stated)] : Array.Empty<(Property, double)>()];
        var study = Reported([("V1", 5.0), ("V2", 9.0), ("V3", 16.0)], ("V1", SampleRole.Vessel, Filled(20, first)), ("V2", SampleRole.Vessel, Filled(30, second)), ("V3", SampleRole.Vessel, Filled(40, null)));
        var said = Evidence.Of(study).Vessels.Select(v => v.Findings.Count(f => f.Sentence.Contains("look exchanged", StringComparison.Ordinal) && f.Concerns.Contains("V1") && f.Concerns.Contains("V2"))).ToList();
        Assert.Equal(exchanged ? [1, 1, 0] : [0, 0, 0], said);
    }

    // Start solutions that read within 15 % of each other are one; one that lies within 15 % of what a vessel was made up to is its own.
    [Theory]
    [InlineData(8.5, 9.25)]
    [InlineData(8.49, null)]
    public void StartSolutions_AlikeWithin15Percent_AreOne(double lower, double? start)
    {
        var study = Reported([("V", 2.0), ("A", 10.0), ("B", lower)], ("V", SampleRole.Vessel, []), ("A", SampleRole.StartSolution, []), ("B", SampleRole.StartSolution, []));
        Assert.Equal(start, Evidence.Of(study).Vessels.Single(v => v.Code == "V").Start?.Value);
    }

    [Theory]
    [InlineData(10, 8.5)]
    [InlineData(10.1, 10.1)]
    [InlineData(8.5, 8.5)]
    public void StartSolution_ReadNearWhatTheVesselWasMadeUpTo_IsTheVessels(double madeUp, double start)
    {
        var study = Reported([("V", 2.0), ("A", 8.5)], ("V", SampleRole.Vessel, [(BatchProperties.InitialConcentration, madeUp)]), ("A", SampleRole.StartSolution, []));
        Assert.Equal(start, Evidence.Of(study).Vessels.Single(v => v.Code == "V").Start!.Value.Value);
    }

    [Fact]
    public void Impossible_AtTheLimits_IsPossible()
    {
        var limits = PhysicalLimits.Usual;
        var plain = Made.Vessel("V", "S", 10, 2, 2);
        bool Found(Vessel vessel) => !ImpossibleResults.Of([vessel], limits).IsEmpty;
        foreach (var (at, change) in new (double, Func<double, Vessel>)[] { (limits.MostUptake, q => plain with { Uptake = q }), (limits.MostDose, d => plain with { Dose = d }), (limits.MostRemoval, r => plain with { Removal = r }) })
        {
            Assert.False(Found(change(at)));
            Assert.True(Found(change(Math.BitIncrement(at))));
        }

        Assert.False(Found(plain with { Removal = limits.LeastRemoval }));
        Assert.True(Found(plain with { Removal = Math.BitDecrement(limits.LeastRemoval) }));

        // Two standard uncertainties above the end are scatter.
        Vessel Above(double by) => plain with { Removal = Measured.From(limits.MostRemoval + by, new Source("r", "r", 1)) };
        Assert.False(Found(Above(2)));
        Assert.True(Found(Above(2.001)));
        Vessel[] Risen(int n, double end) => [.. Enumerable.Range(0, n).Select(i => Made.Vessel(Invariant($"V{i}"), "S", 10, end, 2))];
        Assert.Empty(ImpossibleResults.Of(Risen(2, 10.5), limits));
        Assert.NotEmpty(ImpossibleResults.Of(Risen(3, 10.5), limits));
        Assert.Empty(ImpossibleResults.Of(Risen(3, 10), limits));
    }

    [Theory]
    [InlineData(90, false)]
    [InlineData(89.9, true)]
    [InlineData(110, false)]
    [InlineData(110.1, true)]
    public void Check_AtAnEndOfTheWindow_Passes(double recovery, bool fails)
    {
        var run = Made.Run("run", [], []) with { Checks = [new("Q", 1, 100, recovery)] };
        Assert.Equal(fails, FailedCheck.Of(Made.Evidence([], [run])).Length == 1);
    }

    // A fixed margin in shares is the same in per cent.
    [Fact]
    public void Margin_FixedAsAShare_IsReadInPerCent()
    {
        FixedMargin Of(double low, double high, string unit) => FixedMargin.Of(Made.Evidence([]) with { Study = new() { Title = "m", Margins = [new("plateau", low, high, unit, 3)], Originals = [new("0", "f", 1, 3, default)] } }, MarginKind.Plateau);
        Assert.Equal((-3.0, 4.0), (Of(-0.03, 0.04, "").Low, Of(-0.03, 0.04, "").High));
        Assert.Equal((-3.0, 4.0), (Of(-3, 4, "%").Low, Of(-3, 4, "%").High));
        Assert.Empty(Of(-3, 4, "%").Notes);
        Assert.Contains("cannot serve", Assert.Single(Of(4, 4, "%").Notes), StringComparison.Ordinal);
        Assert.Equal((-5.0, 5.0), (Of(4, 4, "%").Low, Of(-3, 4, "mg/g").High));
    }

    // A standard cannot hold less than nothing: its readings are left out, said so, and the rest give the line.
    [Fact]
    public void Standard_BelowZero_IsLeftOutAndSaid()
    {
        double[] levels = [-1, 0, 1, 2, 3, 4];
        var study = new Study
        {
            Title = "made",
            Samples = [.. levels.Select(l => new Sample(Invariant($"S{l}"), SampleRole.Standard, Made.Facts([(SpectrometryProperties.StandardConcentration, l)])))],
            Runs = [new("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
            Readings = [.. levels.SelectMany(l => Enumerable.Range(0, 3).Select(k => new Reading(Invariant($"R{l}{k}"), Invariant($"S{l}"), "run", k, SpectrometryProperties.Absorbance.Name, 0.1 * l + 0.001 * (k - 1), null, 1, 1, "", File)))],
        };
        var run = Assert.Single(Evidence.Of(study).Runs);
        Assert.Equal(15, run.Standards.Length);
        Assert.Equal(0.1, run.Curve!.Fit.SlopeAt(1), 9);
        Assert.Contains("3 standard readings at a concentration below 0 (−1 mg/L)", Assert.Single(run.Findings, f => f.Code == "HF-454").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Thresholds_OfTheScience_AtTheirLimit()
    {
        Assert.False(Attribution.StartIsOff(10 + Attribution.LargestStartError * 10, 10));
        Assert.True(Attribution.StartIsOff(10.51, 10));
        Assert.True(Attribution.StartIsOff(9.49, 10));
        Assert.False(CycleEvidence.MustBeExplained(2));
        Assert.True(CycleEvidence.MustBeExplained(Math.BitIncrement(2)));

        // Later cycles 9 and 11 after 8, sd 1: (10 − 8)/√1.5.
        Assert.Equal(2 / Math.Sqrt(1.5), CycleEvidence.RiseZ([8, 9, 11], 1), 12);
    }

    [Fact]
    public void Prediction_IsAskedAtTheMiddleOfWhatWasSet()
    {
        var asked = PredictionQuestion.For(Made.Series("ISO", BatchProperties.InitialConcentration, new[] { 0.0, 5, 10, 20 }.Select(c => (c, new[] { Made.Vessel(Invariant($"V{c}"), "ISO", c, c / 2, c < 15 ? 2 : 4) }))));
        Assert.Equal((10.0, 4.0), (asked.Start!.Value, asked.Dose!.Value));
        Assert.Equal([0.5, 0.9], asked.Shares);
        Assert.Null(PredictionQuestion.For(null).Start);
    }

    private static Evidence Of(params Sample[] samples) => Evidence.Of(new Study { Title = "made", Analyte = "Ni", Samples = [.. samples] });

    private static Sample[] Bed(string name, double depth, double velocity, double inlet) =>
    [
        .. Enumerable.Range(0, 11).Select(i => new Sample(Invariant($"{name}-{i:00}"), SampleRole.Outlet, Made.Facts(
            [
                (ColumnProperties.TimeOnStream, 10 * i), (ColumnProperties.OutletConcentration, 2 * i), (BatchProperties.InitialConcentration, inlet), (ColumnProperties.BedDepth, depth), (ColumnProperties.Velocity, velocity),
                (ColumnProperties.Flow, 10), (ColumnProperties.BedMass, 5), (ColumnProperties.HeldLiquid, 100),
            ], (SampleProperties.Series, name)))),
    ];

    private static Study Reported((string Sample, double Value)[] readings, params (string Code, SampleRole Role, (Property, double)[] Facts)[] samples) => new()
    {
        Title = "made",
        Analyte = "Ni",
        Samples = [.. samples.Select(s => new Sample(s.Code, s.Role, Made.Facts(s.Role == SampleRole.Vessel ? [.. s.Facts, (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (BatchProperties.ContactTime, 60)] : s.Facts)))],
        Runs = [new("reported", SpectrometryProperties.ReportedConcentration.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
        Readings = [.. readings.Select((r, i) => new Reading(Invariant($"R{i}"), r.Sample, "reported", i, SpectrometryProperties.ReportedConcentration.Name, r.Value, null, 1, 1, "", File))],
    };
}
