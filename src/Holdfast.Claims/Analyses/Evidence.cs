using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// Quantities and findings of a study: what the rules judge by and the reports show. A pure function of the study
/// (<c>Evidence.Of</c>), the same to the last bit on every machine.
/// </summary>
public sealed partial record Evidence
{
    /// <summary>The study it was worked out from.</summary>
    public required Study Study { get; init; }

    /// <summary>Calibrated runs, in the order they came.</summary>
    public ImmutableArray<CalibratedRun> Runs { get; init; } = [];

    /// <summary>Every vessel, control, digest and water sample with its quantities, in the order they came.</summary>
    public ImmutableArray<Vessel> Vessels { get; init; } = [];

    /// <summary>Series of vessels, in the order they came.</summary>
    public ImmutableArray<Series> Series { get; init; } = [];

    /// <summary>Kinetic curves fitted to each series in which the contact time was varied.</summary>
    public ImmutableArray<FittedSeries> Kinetics { get; init; } = [];

    /// <summary>Isotherms fitted to each series in which the initial concentration was varied.</summary>
    public ImmutableArray<FittedSeries> Isotherms { get; init; } = [];

    /// <summary>What the data say about themselves.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The series of this name, or null.</summary>
    /// <param name="name">Name of a series; null gives null.</param>
    public Series? SeriesNamed(string? name) => Series.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The margin of this name: the one that was fixed, or the default, with who fixed it and when.</summary>
    /// <param name="name">Name of the margin.</param>
    /// <param name="low">Default lower end, in the margin's unit.</param>
    /// <param name="high">Default upper end, in the margin's unit.</param>
    /// <param name="unit">Unit of the margin.</param>
    public Margin Margin(string name, double low, double high, string unit)
        => Study.Margins.FirstOrDefault(m => string.Equals(m.Name, name, StringComparison.Ordinal)) ?? new Margin(name, low, high, unit, 0);

    /// <summary>Works a study out.</summary>
    /// <param name="study">Any study, also an empty one.</param>
    public static Evidence Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var findings = new List<Finding>();
        var recorded = new RecordedAmounts(study);
        var calibrating = new Calibrating(study, recorded);
        var workup = new VesselWorkup(study, recorded, calibrating);
        var sensing = SensingSamples.Of(study);
        var vessels = ExchangedResults.Say([.. study.Samples.Where(s => HasContact(s) && !study.IsOnlyPlanned(s) && !sensing.Contains(s.Code)).Select(s => VesselInRoom(study, workup, s))]);
        var grouped = Room.Of("the grouping of vessels into series", () => new Grouped(SeriesGrouping.Of(vessels, findings)));
        findings.AddRange(grouped.Findings);
        var series = grouped.Value?.Series ?? [];
        findings.InsertRange(0, ImpossibleResults.Of(vessels, PhysicalLimits.Usual));
        findings.AddRange(recorded.Findings);
        findings.AddRange(calibrating.Runs.SelectMany(r => r.Findings));
        ImmutableArray<FittedSeries> kinetics = [.. series.Where(s => s.Varied == BatchProperties.ContactTime).Select(s => FitsInRoom(s, SeriesFitting.Kinetics))];
        ImmutableArray<FittedSeries> isotherms = [.. series.Where(s => s.Varied == BatchProperties.InitialConcentration).Select(s => FitsInRoom(s, SeriesFitting.Isotherms))];
        findings.AddRange(kinetics.Concat(isotherms).SelectMany(f => f.Findings).Where(f => f.Code == Room.Code));
        return new Evidence
        {
            Study = study,
            Runs = calibrating.Runs,
            Vessels = vessels,
            Series = series,
            Kinetics = kinetics,
            Isotherms = isotherms,
            Findings = [.. findings],
        };
    }

    private static Vessel VesselInRoom(Study study, VesselWorkup workup, Sample sample)
    {
        var outcome = Room.Of("vessel " + sample.Code, () => Bounded(workup.Of(sample)), sample.Code);
        return outcome.Value ?? new Vessel(sample, study.IsStruck(sample), null, null, null, null, null, null, null, null, [.. outcome.Findings]);
    }

    // Numbers of any size can be typed; what their products run over to is no quantity.
    private static Vessel Bounded(Vessel vessel)
    {
        static bool Runs(Measured? value) => value is { } known && !(double.IsFinite(known.Value) && double.IsFinite(known.U));
        if (!Runs(vessel.Start) && !Runs(vessel.Volume) && !Runs(vessel.Mass) && !Runs(vessel.Dose) && !Runs(vessel.Removal) && !Runs(vessel.Uptake) && !Runs(vessel.Distribution))
            return vessel;
        static Measured? Kept(Measured? value) => Runs(value) ? null : value;
        return vessel with
        {
            Start = Kept(vessel.Start),
            Volume = Kept(vessel.Volume),
            Mass = Kept(vessel.Mass),
            Dose = Kept(vessel.Dose),
            Removal = null,
            Uptake = null,
            Distribution = null,
            Findings = vessel.Findings.Add(Finding.Of("HF-468", Weight.Stop, $"{vessel.Code}: what was recorded is so large or small that no quantity can be worked out of it. Correct it or strike the vessel.", vessel.Code)),
        };
    }

    private static FittedSeries FitsInRoom(Series series, Func<Series, FittedSeries> fit)
    {
        var outcome = Room.Of("the curves of series " + series.Name, () => fit(series), series.Name);
        return outcome.Value ?? new FittedSeries(series) { Findings = [.. outcome.Findings] };
    }

    private sealed record Grouped(ImmutableArray<Series> Series);

    // Vessels with two metals and portions of a column's outlet have analyses of their own.
    private static bool HasContact(Sample sample)
        => sample.Role is not (SampleRole.Standard or SampleRole.CheckStandard or SampleRole.Blank or SampleRole.Solvent or SampleRole.StartSolution)
            && sample.Fact(CompetitionProperties.AnalyteLeft) is null
            && sample.Fact(ColumnProperties.OutletConcentration) is null;
}
