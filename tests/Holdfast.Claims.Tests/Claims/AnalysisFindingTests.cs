using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>What analyses say of gaps and oddities in the records: each finding is raised by its cause and by nothing else. Invented numbers.</summary>
public sealed class AnalysisFindingTests
{
    // 2 mL held back in 25 mL are 7.4 % of the next liquid, far above the uncertainty of a removal.
    [Fact]
    public void Cycles_WithGaps_SayWhichOnes()
    {
        var whole = Reuse(Cycle(1, 50, 7.6, null), Cycle(2, 49, 7.5, null), Cycle(3, 48, 7.4, null));
        Assert.Equal(["HF-620"], whole.Findings.Select(f => f.Code));
        Assert.Contains("HF-650", Reuse(Cycle(1, 50, 7.6, null), Cycle(2, null, 7.5, null), Cycle(3, 48, 7.4, null)).Findings.Select(f => f.Code));
        var without = Reuse(Cycle(1, 50, 7.6, null), Cycle(2, 49, null, null), Cycle(3, 48, 7.4, null));
        Assert.Contains("HF-651", without.Findings.Select(f => f.Code));
        Assert.Null(without.DesorptionEfficiency(3));
        Assert.Null(without.LeftAtTheEnd);
        Assert.Contains("HF-652", Reuse(Cycle(1, 50, 7.6, null), Cycle(2, 49, 7.5, 2), Cycle(3, 48, 7.4, null)).Findings.Select(f => f.Code));
    }

    [Fact]
    public void Mixtures_WithoutARatio_SayWhy()
    {
        var study = MixtureStudy.Of(Of(Mixture("M-1", 0.1, 0.2), Mixture("M-2", 0.1, null), Mixture("M-3", 0, 0.2), Mixture("M-4", 0.1, 0.34)));
        Assert.Equal(["HF-655", "HF-656", "HF-656"], study.Findings.Select(f => f.Code).Order(StringComparer.Ordinal));
        var rival = Assert.Single(study.Rivals);
        Assert.Equal("M-1", Assert.Single(rival.Vessels).Sample.Code);
        Assert.Null(rival.Preference);
    }

    [Fact]
    public void Beds_ThatCannotBeJudged_SayWhy()
    {
        Assert.Equal("HF-660", Assert.Single(ColumnStudy.Of(Of([.. Bed("A", 10, 0.2, 3)])).Findings).Code);
        var early = ColumnStudy.Of(Of([.. Bed("A", 10, 0.2, 9)]));
        Assert.Equal("HF-661", Assert.Single(early.Findings).Code);
        Assert.NotNull(Assert.Single(early.Runs).BreakTime);
        var mixed = ColumnStudy.Of(Of([.. Bed("A", 5, 0.2, 20), .. Bed("B", 10, 0.2, 20), .. Bed("C", 15, 0.4, 20)]));
        Assert.Null(mixed.ServiceTime);
        Assert.Contains("HF-662", mixed.Findings.Select(f => f.Code));
    }

    // Two portions at one time are averaged, none is dropped.
    [Fact]
    public void Beds_WithTwoPortionsAtOneTime_TakeTheirMean()
    {
        Sample[] samples = [.. Bed("A", 10, 0.2, 20)];
        var twin = samples[10] with { Code = "twin", Facts = samples[10].Facts.SetItem(ColumnProperties.OutletConcentration.Name, samples[10].Fact(ColumnProperties.OutletConcentration)! with { Value = 20 }) };
        var point = ColumnStudy.Of(Of([.. samples, twin])).Runs[0].Points[10];
        Assert.Equal((samples[10].Number(ColumnProperties.OutletConcentration)!.Value + 20) / 2, point.Outlet.Value, 12);
    }

    private static ReuseSeries Reuse(params Sample[][] cycles)
    {
        Sample[] samples = [.. cycles.SelectMany(c => c)];
        var study = new Study
        {
            Title = "cycles",
            Analyte = "Ni",
            Samples = [.. samples],
            Runs = [new Run("lab", SpectrometryProperties.ReportedConcentration.Name, ImmutableSortedDictionary<string, string>.Empty, Nowhere)],
            Readings = [.. samples.Select((s, i) => new Reading(Invariant($"R-{i:0000}"), s.Code, "lab", i + 1, SpectrometryProperties.ReportedConcentration.Name, 4 + 0.1 * i, null, 1, 1, "", Nowhere))],
        };
        return Assert.Single(ReuseStudy.Of(Evidence.Of(study)).Series);
    }

    private static Sample[] Cycle(int number, double? present, double? eluted, double? held)
        => [.. new[] { 1, 2 }.Select(r => new Sample(Invariant($"RE{number}-{r}"), SampleRole.Vessel, Made.Facts(
            [
                (BatchProperties.InitialConcentration, 20), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (RegenerationProperties.Cycle, number),
                .. present is { } m ? [(CycleProperties.MassPresent, m)] : Array.Empty<(Property, double)>(),
                .. eluted is { } e ? [(RegenerationProperties.Eluted, e)] : Array.Empty<(Property, double)>(),
                .. held is { } h ? [(CycleProperties.HeldBack, h)] : Array.Empty<(Property, double)>(),
            ],
            (SampleProperties.Series, "REUSE"))))];

    private static Sample Mixture(string code, double analyte, double? rival) => new(code, SampleRole.Vessel, Made.Facts(
        [
            (CompetitionProperties.InitialOfEach, 0.34), (CompetitionProperties.AnalyteLeft, analyte),
            .. rival is { } r ? [(CompetitionProperties.RivalLeft, r)] : Array.Empty<(Property, double)>(),
        ],
        (CompetitionProperties.Rival, "Zn")));

    private static IEnumerable<Sample> Bed(string name, double depth, double velocity, int points)
        => Enumerable.Range(0, points).Select(i => new Sample(Invariant($"{name}-{i}"), SampleRole.Outlet, Made.Facts(
            [
                (ColumnProperties.TimeOnStream, 50 * i), (ColumnProperties.OutletConcentration, 20 / (1 + Math.Exp(0.02 * (40 * depth - 50 * i)))),
                (BatchProperties.InitialConcentration, 20), (ColumnProperties.BedDepth, depth), (ColumnProperties.Velocity, velocity), (ColumnProperties.Flow, 10),
            ],
            (SampleProperties.Series, name))));

    private static Evidence Of(params Sample[] samples) => Evidence.Of(new Study { Title = "by hand", Analyte = "Ni", Samples = [.. samples] });

    private static readonly Origin Nowhere = new(null, "by hand", null, 0, null);
}
