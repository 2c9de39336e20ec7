using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>
/// What was done, at one moment: the fold of the study's history. Struck things are still here; <see cref="IsStruck(Reading)"/> tells.
/// </summary>
public sealed record Study
{
    /// <summary>Short name: "pb-study".</summary>
    public required string Title { get; init; }

    /// <summary>True for the invented demo: every screen, export and file says so.</summary>
    public bool Invented { get; init; }

    /// <summary>Symbol of the element that is taken up ("Ni"), or null when not said.</summary>
    public string? Analyte { get; init; }

    /// <summary>What was said of the study as a whole, by key: "author", "material", "shaking", "separation", "water".</summary>
    public ImmutableSortedDictionary<string, string> Details { get; init; }
        = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Samples in the order they came.</summary>
    public ImmutableArray<Sample> Samples { get; init; } = [];

    /// <summary>Runs in the order they came.</summary>
    public ImmutableArray<Run> Runs { get; init; } = [];

    /// <summary>The run whose calibration each of these runs uses, where that was chosen; both by id.</summary>
    public ImmutableSortedDictionary<string, string> Calibrations { get; init; }
        = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Readings in the order they came.</summary>
    public ImmutableArray<Reading> Readings { get; init; } = [];

    /// <summary>Measurements of powders in the order they came.</summary>
    public ImmutableArray<Measurement> Measurements { get; init; } = [];

    /// <summary>What was drawn or said on pictures of measurements, in the order it came.</summary>
    public ImmutableArray<PictureMark> Marks { get; init; } = [];

    /// <summary>Present strikes.</summary>
    public ImmutableArray<Strike> Strikes { get; init; } = [];

    /// <summary>Stated claims.</summary>
    public ImmutableArray<StatedClaim> Claims { get; init; } = [];

    /// <summary>Margins that were fixed; what is not here falls back on the rule's default, and says so.</summary>
    public ImmutableArray<Margin> Margins { get; init; } = [];

    /// <summary>Work that was planned, in the order it was planned; what was withdrawn is not here.</summary>
    public ImmutableArray<PlannedWork> Plan { get; init; } = [];

    /// <summary>Designed plans with their vessels, in the order they were kept.</summary>
    public ImmutableArray<DesignedPlan> Designs { get; init; } = [];

    /// <summary>When plan and margins were frozen, or null while they may still change freely.</summary>
    public PlanFreeze? PlanFrozen { get; init; }

    /// <summary>Changes of plan and margins after they were frozen, each with its reason.</summary>
    public ImmutableArray<PlanAmendment> PlanAmendments { get; init; } = [];

    /// <summary>Balances, glassware and meters.</summary>
    public ImmutableArray<Instrument> Apparatus { get; init; } = [];

    /// <summary>Files taken in.</summary>
    public ImmutableArray<Original> Originals { get; init; } = [];

    /// <summary>Answers once given about files of one layout, by signature of the layout and then by question.</summary>
    public ImmutableSortedDictionary<string, ImmutableSortedDictionary<string, string>> Layouts { get; init; }
        = ImmutableSortedDictionary.Create<string, ImmutableSortedDictionary<string, string>>(StringComparer.Ordinal);

    /// <summary>How many readings were ever numbered, those of undone takes included: ids are never given twice.</summary>
    public int ReadingsEver { get; init; }

    /// <summary>How many vessels were ever planned, those of undone plans included: codes are never given twice.</summary>
    public int PlannedEver { get; init; }

    /// <summary>How many measurements were ever numbered, those of undone takes included.</summary>
    public int MeasurementsEver { get; init; }

    /// <summary>Words of the author's own by section of the chapter.</summary>
    public ImmutableSortedDictionary<string, OwnText> Texts { get; init; } = ImmutableSortedDictionary.Create<string, OwnText>(StringComparer.Ordinal);

    /// <summary>Sentences of the program that are said in the author's words, by the sentence with "#" for its numbers.</summary>
    public ImmutableSortedDictionary<string, string> Rewordings { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Remarks of readers, in the order they came, answered and closed ones included.</summary>
    public ImmutableArray<Remark> Remarks { get; init; } = [];

    /// <summary>Number of the entry that sealed the study, or null while it is open.</summary>
    public long? SealedBy { get; init; }

    /// <summary>What was amended since the study was sealed, each with its reason.</summary>
    public ImmutableArray<Amendment> Amendments { get; init; } = [];

    /// <summary>Number of the last entry of the history this state comes from.</summary>
    public long Version { get; init; }

    /// <summary>Hash of that entry: the study's fingerprint, lower-case hexadecimal.</summary>
    public string Fingerprint { get; init; } = "";

    /// <summary>The sample with this code, or null. Codes match exactly.</summary>
    /// <param name="code">Code on the label.</param>
    public Sample? Sample(string code) => Samples.FirstOrDefault(s => string.Equals(s.Code, code, StringComparison.Ordinal));

    /// <summary>The planned row of this code, or null.</summary>
    /// <param name="code">Code on the label.</param>
    public PlannedVessel? Planned(string code)
        => Designs.SelectMany(d => d.Vessels).FirstOrDefault(v => string.Equals(v.Code, code, StringComparison.Ordinal));

    /// <summary>True while nothing is recorded of a planned sample beyond what its plan says: it is no evidence of anything yet.</summary>
    /// <param name="sample">Any sample.</param>
    public bool IsOnlyPlanned(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return !Designs.IsEmpty && !sample.Facts.IsEmpty
            && sample.Facts.Values.All(f => f.Origin.Original is null && string.Equals(f.Origin.FileName, PlannedVessel.Source, StringComparison.Ordinal))
            && !Readings.Any(r => string.Equals(r.Sample, sample.Code, StringComparison.Ordinal));
    }

    /// <summary>The reading with this id, or null.</summary>
    /// <param name="id">Its address, "R-0142".</param>
    public Reading? Reading(string id) => Readings.FirstOrDefault(r => string.Equals(r.Id, id, StringComparison.Ordinal));

    /// <summary>The measurement with this id, or null.</summary>
    /// <param name="id">Its address, "M-0001".</param>
    public Measurement? Measurement(string id) => Measurements.FirstOrDefault(m => string.Equals(m.Id, id, StringComparison.Ordinal));

    /// <summary>The mark with this id, or null.</summary>
    /// <param name="id">Its address, "M-0001.57".</param>
    public PictureMark? Mark(string id) => Marks.FirstOrDefault(m => string.Equals(m.Id, id, StringComparison.Ordinal));

    /// <summary>True when the study has a sample, reading, measurement or mark that a line can be drawn through by this name.</summary>
    /// <param name="target">Sample code, or id of a reading, measurement or mark.</param>
    public bool Has(string target) => Sample(target) is not null || Reading(target) is not null || Measurement(target) is not null || Mark(target) is not null;

    /// <summary>The strike through a reading, or through its sample, or null.</summary>
    /// <param name="reading">Any reading.</param>
    public Strike? StrikeOf(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Strikes.FirstOrDefault(s => string.Equals(s.Target, reading.Id, StringComparison.Ordinal)
            || string.Equals(s.Target, reading.Sample, StringComparison.Ordinal));
    }

    /// <summary>The strike through a sample, or null.</summary>
    /// <param name="sample">Any sample.</param>
    public Strike? StrikeOf(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return Strikes.FirstOrDefault(s => string.Equals(s.Target, sample.Code, StringComparison.Ordinal));
    }

    /// <summary>The strike through a measurement, or null.</summary>
    /// <param name="measurement">Any measurement.</param>
    public Strike? StrikeOf(Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        return Strikes.FirstOrDefault(s => string.Equals(s.Target, measurement.Id, StringComparison.Ordinal));
    }

    /// <summary>The strike through a mark on a picture, or null.</summary>
    /// <param name="mark">Any mark.</param>
    public Strike? StrikeOf(PictureMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return Strikes.FirstOrDefault(s => string.Equals(s.Target, mark.Id, StringComparison.Ordinal));
    }

    /// <summary>True when the measurement is struck.</summary>
    /// <param name="measurement">Any measurement.</param>
    public bool IsStruck(Measurement measurement) => StrikeOf(measurement) is not null;

    /// <summary>True when the reading or its sample is struck.</summary>
    /// <param name="reading">Any reading.</param>
    public bool IsStruck(Reading reading) => StrikeOf(reading) is not null;

    /// <summary>True when the sample is struck.</summary>
    /// <param name="sample">Any sample.</param>
    public bool IsStruck(Sample sample) => StrikeOf(sample) is not null;
}
