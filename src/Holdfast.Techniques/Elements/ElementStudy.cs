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
        var mass = DigestLoadings.Of(measurement) ?? measurement.Column(swapped ? ElementFiles.Atomic : ElementFiles.Mass);
        var atomic = measurement.Column(swapped ? ElementFiles.Mass : ElementFiles.Atomic);
        var spots = measurement.Column(ElementFiles.Spot)?.Words;
        foreach (var place in Enumerable.Range(0, symbols.Length).GroupBy(i => spots?[i] ?? "", StringComparer.Ordinal))
        {
            var masses = Amounts(place, symbols, uses == ElementFiles.Atomic ? null : mass, byMass: true);
            var atoms = masses.Count > 0 ? Percentages.ToAtomic(masses) : Amounts(place, symbols, uses == ElementFiles.Mass ? null : atomic, byMass: false);
            if (atoms.Count == 0)
                continue;
            var column = masses.Count > 0 ? mass! : atomic!;
            yield return new(measurement, place.Key.Length > 0 ? place.Key : measurement.Sample, [.. atoms],
                [.. (masses.Count > 0 ? masses : atoms).Select(a => new KeyValuePair<Element, double>(a.Key, a.Value.Value))], column.Unit, column.Heading, masses.Count > 0);
        }
    }

    // Of an oxide, what its element weighs, or its atoms; an element in two oxides is the sum of both.
    private static List<KeyValuePair<Element, Measured>> Amounts(IEnumerable<int> rows, ImmutableArray<string> symbols, MeasuredColumn? column, bool byMass)
    {
        if (column?.Numbers is not { } numbers)
            return [];
        var amounts = rows.Where(i => numbers[i] is >= 0).Select(i => (Species: Species.Find(symbols[i]), Number: numbers[i]!.Value)).Where(a => a.Species is not null)
            .Select(a => new KeyValuePair<Element, Measured>(a.Species!.Element, byMass ? a.Species.MassOf(a.Number) : a.Species.AtomsOf(a.Number))).ToList();
        if (symbols.All(s => Species.Find(s)?.Oxide is null))
            return amounts;
        var whole = byMass ? 100 : amounts.Sum(a => a.Value.Value);
        return whole > 0 ? [.. amounts.GroupBy(a => a.Key.Number).Select(g => new KeyValuePair<Element, Measured>(g.First().Key, 100 / whole * g.Select(a => a.Value).Aggregate((x, y) => x + y)))] : [];
    }
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

    /// <summary>What the method may be off by in all places together, relative, at two standard uncertainties; no unit.</summary>
    public double Bias => IsDissolved ? CompositionMatches.Limits.DigestBias : CompositionMatches.Limits.XrayBias;

    /// <summary>The mean of a ratio with the scatter of places and the bias of the method, which more places do not make smaller; null where there is no mean.</summary>
    /// <param name="ratio">The ratio.</param>
    public Measured? Whole(ElementRatio ratio)
    {
        if (Mean(ratio) is not { } mean)
            return null;
        var id = $"{ratio} of {Name}";
        return Measured.From(mean.Value,
        [
            new(new Source(id + ", places", $"scatter of {ratio} over {mean.N.ToString(CultureInfo.InvariantCulture)} places", mean.StandardError, mean.DegreesOfFreedom, Evaluation.Repetition), mean.StandardError),
            new(new Source(id + ", method", IsDissolved ? "reading of a digest against standards, 4 % at two standard uncertainties" : "X-ray analysis without standards, 25 % at two standard uncertainties", Bias / 2), Bias / 2 * Math.Abs(mean.Value)),
        ]);
    }

    /// <summary>Shares that the elements invite: each minor element heavier than neon in itself and the most abundant one, where a place has both.</summary>
    public ImmutableArray<ElementRatio> Shares
    {
        get
        {
            var heavy = Places.SelectMany(p => p.Atoms).Where(a => a.Key.Number > 10).GroupBy(a => a.Key.Number)
                .Select(g => (g.First().Key, Mean: g.Average(a => a.Value.Value))).OrderByDescending(a => a.Mean).ToList();
            return heavy.Count < 2 ? [] : [.. heavy.Skip(1).Select(h => ElementRatio.Share(h.Key, heavy[0].Key)).Where(s => !Ratios(s).IsEmpty)];
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
