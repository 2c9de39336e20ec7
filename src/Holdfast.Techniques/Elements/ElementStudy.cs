using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Techniques.Elements;

/// <summary>The compositions of a study by powder. Struck measurements are left out.</summary>
/// <param name="Powders">One for each powder, in the order they came.</param>
public sealed record ElementStudy(ImmutableArray<AnalysedPowder> Powders)
{
    private static readonly Analysis<ElementStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ElementStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>A powder, or null.</summary>
    /// <param name="name">Its name; case does not count.</param>
    public AnalysedPowder? For(string? name) => Powders.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase));

    private static ElementStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        return new([.. study.Measurements.Where(m => m.Technique == ElementFiles.TechniqueName && !study.IsStruck(m)).GroupBy(m => m.Sample, StringComparer.OrdinalIgnoreCase).Select(g => One(g.Key, [.. g]))]);
    }

    private static AnalysedPowder One(string powder, ImmutableArray<Measurement> measurements)
    {
        var places = measurements.SelectMany(Places).ToImmutableArray();
        var findings = new List<Finding>();
        if (places.Any(p => !p.IsDigest))
            findings.AddRange(XrayCautions.Of([.. places[0].AsWritten.Select(a => new KeyValuePair<Element, double>(a.Key, a.Value))]));
        if (places.Length is > 1 and < AnalysedPowder.FewestPlaces && places.Any(p => !p.IsDigest))
        {
            findings.Add(Finding.Of(ElementCodes.Places, Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{powder}: {places.Length} places; {AnalysedPowder.FewestPlaces} on several grains are usual before a composition is stated."), powder));
        }

        return new(powder, measurements, places, [.. findings]);
    }

    private static IEnumerable<AnalysedPlace> Places(Measurement measurement)
    {
        if (measurement.Column(ElementFiles.Symbol)?.Words is not { } symbols)
            yield break;
        var swapped = measurement.Setting(ElementFiles.Labels) is not null;
        var uses = measurement.Setting(ElementFiles.Uses)?.Written;
        var mass = measurement.Column(swapped ? ElementFiles.Atomic : ElementFiles.Mass);
        var atomic = measurement.Column(swapped ? ElementFiles.Mass : ElementFiles.Atomic);
        var spots = measurement.Column(ElementFiles.Spot)?.Words;
        foreach (var place in Enumerable.Range(0, symbols.Length).GroupBy(i => spots?[i] ?? "", StringComparer.Ordinal))
        {
            var masses = Amounts(place, symbols, uses == ElementFiles.Atomic ? null : mass);
            var atoms = masses.Count > 0 ? Percentages.ToAtomic(masses) : Amounts(place, symbols, uses == ElementFiles.Mass ? null : atomic);
            if (atoms.Count == 0)
                continue;
            var column = masses.Count > 0 ? mass! : atomic!;
            yield return new(measurement, place.Key.Length > 0 ? place.Key : measurement.Sample, [.. atoms],
                [.. (masses.Count > 0 ? masses : atoms).Select(a => new KeyValuePair<Element, double>(a.Key, a.Value.Value))], column.Unit, column.Heading, masses.Count > 0);
        }
    }

    private static List<KeyValuePair<Element, Measured>> Amounts(IEnumerable<int> rows, ImmutableArray<string> symbols, MeasuredColumn? column)
        => column?.Numbers is not { } numbers ? []
            : [.. rows.Where(i => numbers[i] is >= 0 && Element.Find(symbols[i])?.AtomicWeight is not null).Select(i => new KeyValuePair<Element, Measured>(Element.Find(symbols[i])!, numbers[i]!.Value))];
}

/// <summary>A powder with all places at which its elements were measured.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Measurements">What was taken in.</param>
/// <param name="Places">Fields, spots or digests.</param>
/// <param name="Findings">Caveats.</param>
public sealed record AnalysedPowder(string Name, ImmutableArray<Measurement> Measurements, ImmutableArray<AnalysedPlace> Places, ImmutableArray<Finding> Findings)
{
    /// <summary>Fewest places by X-rays before a composition is stated (common practice).</summary>
    public const int FewestPlaces = 5;

    /// <summary>True when every total is 100 %, so that it says nothing.</summary>
    public bool IsNormalised => Places.All(p => !p.IsDigest && XrayCautions.IsNormalised(p.AsWritten.Sum(a => a.Value)));

    /// <summary>True when all places are dissolved portions.</summary>
    public bool IsDissolved => Places.All(p => p.IsDigest);

    /// <summary>Elements, by atomic number.</summary>
    public ImmutableArray<Element> Elements => [.. Places.SelectMany(p => p.Atoms).Select(a => a.Key).DistinctBy(e => e.Number).OrderBy(e => e.Number)];

    /// <summary>A ratio in each place that has its elements.</summary>
    /// <param name="ratio">The ratio.</param>
    public ImmutableArray<(AnalysedPlace Place, Measured Value)> Ratios(ElementRatio ratio)
    {
        ArgumentNullException.ThrowIfNull(ratio);
        return [.. Places.Select(p => (p, Value: ratio.Of(p.Atoms))).Where(p => p.Value is not null).Select(p => (p.p, p.Value!.Value))];
    }

    /// <summary>The mean of a ratio over the places; null where fewer than two have it or they do not scatter.</summary>
    /// <param name="ratio">The ratio.</param>
    public Estimate? Mean(ElementRatio ratio)
    {
        double[] values = [.. Ratios(ratio).Select(r => r.Value.Value)];
        return values.Length == 0 ? null : Summary.Of(values).MeanEstimate().Value;
    }

    /// <summary>Shares that the elements invite: each minor element heavier than neon in itself and the most abundant one.</summary>
    public ImmutableArray<ElementRatio> Shares
    {
        get
        {
            var heavy = Places.SelectMany(p => p.Atoms).Where(a => a.Key.Number > 10).GroupBy(a => a.Key.Number)
                .Select(g => (g.First().Key, Mean: g.Average(a => a.Value.Value))).OrderByDescending(a => a.Mean).ToList();
            return heavy.Count < 2 ? [] : [.. heavy.Skip(1).Select(h => ElementRatio.Share(h.Key, heavy[0].Key))];
        }
    }
}

/// <summary>One field, spot or digest.</summary>
/// <param name="Measurement">What it was taken in with.</param>
/// <param name="Name">As the file calls it.</param>
/// <param name="Atoms">Elements with their atoms: percent, or percent of what was looked for in a digest.</param>
/// <param name="AsWritten">Elements with the amounts as they were written.</param>
/// <param name="Unit">Unit of those: "%", "mg/g".</param>
/// <param name="Heading">Heading of those.</param>
/// <param name="ByMass">True when those are masses.</param>
public sealed record AnalysedPlace(
    Measurement Measurement, string Name, ImmutableArray<KeyValuePair<Element, Measured>> Atoms, ImmutableArray<KeyValuePair<Element, double>> AsWritten, string Unit, string Heading, bool ByMass)
{
    /// <summary>True for a dissolved portion of the powder.</summary>
    public bool IsDigest => Unit != "%";
}
