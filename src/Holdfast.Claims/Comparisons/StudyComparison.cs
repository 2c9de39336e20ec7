using System.Collections.Immutable;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Claims.Comparisons;

/// <summary>Studies, and published values, set beside each other like for like: a pure function of their lines.</summary>
/// <param name="Point">Where the studies are compared; null when no series reaches any common concentration.</param>
/// <param name="Uptakes">The uptake of every series that answers, study by study; further ones where a published value stands at a concentration of its own.</param>
/// <param name="Pairs">Every two studies of one metal, and each study with each published value.</param>
/// <param name="Findings">What is not here, and why.</param>
public sealed record StudyComparison(ComparisonPoint? Point, ImmutableArray<ComparedUptake> Uptakes, ImmutableArray<ComparedPair> Pairs, ImmutableArray<Finding> Findings)
{
    /// <summary>Code of a study without an uptake at the point of comparison.</summary>
    public const string NoUptake = "HF-791";

    /// <summary>By how much more an uptake must be to count as better where nobody says, as a share; no unit. Common practice for the equality of capacities.</summary>
    public const double UsualMargin = 0.10;

    // Preferred numbers of the R10 series (ISO 3): ten a decade, so that series which overlap at all meet on one.
    private static readonly double[] Preferred = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];

    /// <summary>Compares.</summary>
    /// <param name="studies">Lines of studies, in the order they were named.</param>
    /// <param name="published">Published values.</param>
    /// <param name="asked">Where to compare; null for the preferred number (ISO 3, R10) that most studies reach.</param>
    /// <param name="margin">By how much more an uptake must be to count as better, as a share of the other, 0 or more; no unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin is below 0.</exception>
    public static StudyComparison Of(IReadOnlyList<StudyLine> studies, IReadOnlyList<PublishedUptake> published, ComparisonPoint? asked, double margin)
    {
        ArgumentNullException.ThrowIfNull(studies);
        ArgumentNullException.ThrowIfNull(published);
        ArgumentOutOfRangeException.ThrowIfNegative(margin);
        var named = Distinct([.. studies.SelectMany(OfOneMaterial)]);
        var findings = named.SelectMany(l => l.Findings).ToList();
        var point = asked ?? Usual(named);
        var rows = point is null ? [] : named.Select(l => At(l, point)).ToArray();
        if (point is not null)
            findings.AddRange(named.Where((l, i) => !l.Series.IsEmpty && rows[i].IsEmpty).Select(l => Absent(l, point)));
        else if (named.Any(l => !l.Series.IsEmpty))
            findings.Add(Finding.Of(NoUptake, Weight.Caution, "No concentration lies inside what any series measured. Say one, or a start concentration and a dose."));
        findings.AddRange(named.Where(l => !l.Series.IsEmpty && l.Analyte is null).Select(l => Finding.Of(
            NoUptake, Weight.Caution, $"{l.Study} does not say which metal it is about, so it is set beside nothing. holdfast describe metal=… says it.", l.Study)));

        var pairs = new List<ComparedPair>();
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = i + 1; j < rows.Length; j++)
            {
                if (Closest(rows[i], rows[j], margin) is { } pair)
                    pairs.Add(pair);
            }
        }

        var uptakes = rows.SelectMany(r => r).ToList();
        foreach (var at in published.GroupBy(p => p.Left))
        {
            ComparisonPoint theirs = new(at.Key, null, null);
            var own = theirs == point ? rows : [.. named.Select(l => At(l, theirs))];
            ImmutableArray<ComparedUptake>[] others = [.. at.Select(p => At(StudyLine.Of(p), theirs))];
            if (theirs != point)
                uptakes.AddRange(own.SelectMany(r => r));
            uptakes.AddRange(others.SelectMany(r => r));
            pairs.AddRange(own.SelectMany(o => others.Select(p => Closest(o, p, margin)).OfType<ComparedPair>()));
            findings.AddRange(at.Where(p => !named.Any(l => l.Analyte == p.Metal)).Select(p => Finding.Of(
                NoUptake, Weight.Note, $"{p.Sorbent}: no study here is about {p.Metal}, so it is set beside nothing.", p.Sorbent)));
            if (own.All(o => o.IsEmpty))
                findings.Add(Finding.Of(NoUptake, Weight.Caution, $"{Phrase.Listed(at.Select(p => p.Sorbent))}: no study here measured up to and down to {theirs.Words}.", [.. at.Select(p => p.Sorbent)]));
        }

        return new(point, [.. uptakes], Judged(pairs), [.. findings]);
    }

    // A study of several materials compares them with one another too.
    private static IEnumerable<StudyLine> OfOneMaterial(StudyLine line)
        => line.Series.Select(s => s.Material).Distinct(StringComparer.OrdinalIgnoreCase).Count() < 2 ? [line]
            : line.Series.GroupBy(s => s.Material ?? "material not recorded", StringComparer.OrdinalIgnoreCase)
                .Select((g, i) => line with { Study = $"{line.Study}: {g.Key}", Series = [.. g], Findings = i == 0 ? line.Findings : [] });

    // Two studies of one name would be one in every table.
    private static StudyLine[] Distinct(IReadOnlyList<StudyLine> studies)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. studies.Select(line =>
        {
            var count = seen[line.Study] = seen.GetValueOrDefault(line.Study) + 1;
            return count == 1 ? line : line with { Study = $"{line.Study} ({Phrase.Number(count)})" };
        })];
    }

    // The preferred number that most studies reach; of several, the middle one: nobody looks for the concentration that suits.
    private static ComparisonPoint? Usual(IReadOnlyList<StudyLine> studies)
    {
        double[] ends = [.. studies.SelectMany(s => s.Series).SelectMany(s => s.Levels).Select(l => l.Left)];
        if (ends.Length == 0)
            return null;
        var reached = Enumerable.Range((int)Math.Floor(Math.Log10(ends.Min())), (int)Math.Ceiling(Math.Log10(ends.Max() / ends.Min())) + 2)
            .SelectMany(power => Preferred.Select(p => Scaled(p, power)))
            .Where(c => c >= ends.Min() && c <= ends.Max())
            .Select(c => (Left: c, Count: studies.Count(s => s.Series.Any(x => x.Levels[0].Left <= c && c <= x.Levels[^1].Left))))
            .ToArray();
        var most = reached.Select(r => r.Count).DefaultIfEmpty(0).Max();
        double[] best = [.. reached.Where(r => r.Count == most).Select(r => r.Left)];
        return most == 0 ? null : new(best[best.Length / 2], null, null);
    }

    // 1.6 × 10⁻¹ as the double nearest to 0.16, whatever the power.
    private static double Scaled(double preferred, int power) => power < 0 ? preferred / Math.Pow(10, -power) : preferred * Math.Pow(10, power);

    private static ImmutableArray<ComparedUptake> At(StudyLine line, ComparisonPoint point)
        => [.. line.Series.Select(s => ComparedUptake.Of(line, s, point)).OfType<ComparedUptake>()];

    // The first two series that stood at like conditions; where none did, the two that differ in least.
    private static ComparedPair? Closest(ImmutableArray<ComparedUptake> first, ImmutableArray<ComparedUptake> second, double margin)
    {
        ComparedPair? closest = null;
        foreach (var a in first)
        {
            foreach (var b in second.Where(b => a.Analyte is not null && a.Analyte == b.Analyte))
            {
                ComparedPair pair = new(a, b, margin);
                if (closest is null || pair.Unlike.Length < closest.Unlike.Length)
                    closest = pair;
                if (pair.Unlike.IsEmpty)
                    return pair;
            }
        }

        return closest;
    }

    // Every statement of the comparison is one look more: Holm keeps the chance of any false one at the level.
    private static ImmutableArray<ComparedPair> Judged(List<ComparedPair> pairs)
    {
        ComparedPair[] comparable = [.. pairs.Where(p => p.IsComparable)];
        (Estimate First, Estimate Second)[] beyond = [.. comparable.Select(p => (ComparedPair.Estimated(p.First, p.Second, p.Margin)!, ComparedPair.Estimated(p.Second, p.First, p.Margin)!))];
        var adjusted = Holm.Adjust([.. beyond.SelectMany(b => new[] { b.First.PDiffersFrom(0), b.Second.PDiffersFrom(0) })]);
        var at = 0;
        return [.. pairs.Select(p =>
        {
            if (!p.IsComparable)
                return p;
            var i = at++;
            return p with
            {
                P = (adjusted[2 * i], adjusted[2 * i + 1]),
                FirstBetter = Ruled(beyond[i].First, adjusted[2 * i]),
                SecondBetter = Ruled(beyond[i].Second, adjusted[2 * i + 1]),
            };
        })];
    }

    private static Ruling Ruled(Estimate beyond, double p)
        => !(p < ComparedPair.Level) ? Ruling.NotShownYet : beyond.Value > 0 ? Ruling.Holds : Ruling.Contradicted;

    private static Finding Absent(StudyLine line, ComparisonPoint point)
    {
        double low = line.Series.Min(s => s.Levels[0].Left), high = line.Series.Max(s => s.Levels[^1].Left);
        var why = point.Left is { } left && left >= low && left <= high
            ? "no series has a curve, or two levels of one dose, around it"
            : $"its vessels ended between {Phrase.Span(low, high, "mg/L")}";
        return Finding.Of(NoUptake, Weight.Note, $"{line.Study} has no uptake at {point.Words}: {why}. Nothing is extrapolated.", line.Study);
    }
}
