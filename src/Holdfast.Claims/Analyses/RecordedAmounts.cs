using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// What was recorded about a sample, with its uncertainty: its own, else that of the instrument that served, else an assumption that is
/// named as one. One flask's error is one source in every vessel it filled; a weighing is a source of its own each time.
/// </summary>
internal sealed class RecordedAmounts
{
    private static readonly Instrument[] Assumed =
    [
        new("balance (assumed)", BatchProperties.Mass.Name, 0.13, null, Shared: false,
            "assumed: a 0.1 mg balance, repeatability and linearity, tare and gross; common practice", null),
        new("volumetric glass (assumed)", BatchProperties.Volume.Name, null, 0.002, Shared: true,
            "assumed: class A glass within 4 K of 20 °C; common practice", null),
        new("start solution (assumed)", BatchProperties.InitialConcentration.Name, null, 0.01, Shared: true,
            "assumed: 1 % for a solution that was made up and not read", null),
        new("dilution (assumed)", SpectrometryProperties.Dilution.Name, null, 0.006, Shared: false,
            "assumed: 0.6 % for one dilution with a piston pipette into a flask", null),
        new("concentration as reported (assumed)", SpectrometryProperties.ReportedConcentration.Name, 0.01, 0.02, Shared: false,
            "assumed: 2 % and 0.01 mg/L for a concentration that came without its readings; common practice", null),
    ];

    private readonly Study study;
    private readonly SortedDictionary<string, Instrument> assumptions = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Source> shared = new(StringComparer.Ordinal);

    /// <summary>Amounts of one study.</summary>
    /// <param name="study">The study.</param>
    public RecordedAmounts(Study study) => this.study = study;

    /// <summary>One caution that names every assumption made so far, or none.</summary>
    public IEnumerable<Finding> Findings
        => assumptions.Count == 0
            ? []
            : [Finding.Of("HF-461", Weight.Caution, $"No uncertainty was recorded for {string.Join(", ", assumptions.Values.Select(a => Property.Named(a.Serves)?.Title ?? a.Serves))}: "
                + "usual values are assumed and named in every trail. Take in an apparatus sheet.", [.. assumptions.Keys])];

    /// <summary>The recorded number with its uncertainty, in the property's unit; null when it was not recorded.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="property">Which property.</param>
    public Measured? Of(Sample sample, Property property)
    {
        if (sample.Fact(property) is not { Value: { } value } fact)
            return null;
        if (fact.U is { } own)
        {
            return Measured.From(value, new Source(
                Id(sample, property), $"{property.Title} of {sample.Code}, as recorded", own, Unit: property.Unit, Trail: fact.Origin.ToString()));
        }

        return With(value, sample.Code, property, LotOf(sample, property), fact.Origin.ToString());
    }

    /// <summary>A dilution factor with its uncertainty; exact when nothing was diluted.</summary>
    /// <param name="factor">How many times, without unit.</param>
    /// <param name="portion">Id of the portion that was diluted.</param>
    /// <param name="trail">Where it was recorded.</param>
    public Measured Dilution(double factor, string portion, string trail)
        => factor == 1 ? 1 : With(factor, portion, SpectrometryProperties.Dilution, portion, trail);

    /// <summary>A concentration that came ready-made, with what the apparatus sheet says of such values, else an assumption that is named.</summary>
    /// <param name="value">As reported, mg/L.</param>
    /// <param name="owner">Code of the sample.</param>
    /// <param name="trail">Where it was recorded.</param>
    public Measured Reported(double value, string owner, string trail)
        => With(value, owner, SpectrometryProperties.ReportedConcentration, "all vessels", trail);

    /// <summary>True when the apparatus sheet says how well reported concentrations are known.</summary>
    public bool StatesReported => study.Apparatus.Any(i => string.Equals(i.Serves, SpectrometryProperties.ReportedConcentration.Name, StringComparison.Ordinal));

    private Measured With(double value, string owner, Property property, string lot, string trail)
    {
        var instrument = study.Apparatus.FirstOrDefault(i => string.Equals(i.Serves, property.Name, StringComparison.Ordinal));
        if (instrument is null)
        {
            instrument = Array.Find(Assumed, i => string.Equals(i.Serves, property.Name, StringComparison.Ordinal));
            if (instrument is null)
                return value;
            assumptions[instrument.Serves] = instrument;
        }

        // A floor and a share together, where both are given.
        var u = Math.Sqrt(Math.Pow(instrument.U ?? 0, 2) + Math.Pow((instrument.RelativeU ?? 0) * value, 2));
        if (u == 0)
            return value;
        var id = instrument.Shared ? $"{property.Name}:{instrument.Id}:{lot}" : $"{property.Name}:{owner}";
        if (!shared.TryGetValue(id, out var source))
        {
            source = new Source(
                id,
                instrument.Shared ? $"{instrument.Id}, {lot}" : $"{instrument.Id}, {property.Title} of {owner}",
                u,
                Unit: property.Unit,
                Trail: $"{trail}; {instrument.Basis}");
            shared[id] = source;
        }

        return Measured.From(value, [new Contribution(source, u)]);
    }

    // A start solution is made once for all vessels of its concentration: their error is one error. Glassware is shared as a whole.
    private static string LotOf(Sample sample, Property property)
        => property == BatchProperties.InitialConcentration
            ? string.Create(CultureInfo.InvariantCulture, $"{sample.Series} {sample.Number(property):R} {property.Unit}")
            : "all vessels";

    private static string Id(Sample sample, Property property) => property.Name + ":" + sample.Code;
}
