using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>What changes between two workings of a study: claims first, then findings, then quantities.</summary>
/// <param name="Claims">Claims whose verdict changes.</param>
/// <param name="Findings">Fits whose best curve or first parameter changes.</param>
/// <param name="Quantities">Levels whose mean uptake changes.</param>
public sealed record WorkingComparison(ImmutableArray<BeforeAfter> Claims, ImmutableArray<BeforeAfter> Findings, ImmutableArray<BeforeAfter> Quantities)
{
    /// <summary>Compares two workings.</summary>
    /// <param name="before">As it is.</param>
    /// <param name="after">As it would be.</param>
    public static WorkingComparison Of(Dossier before, Dossier after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return new(
            Differing(before.Verdicts, after.Verdicts, v => v.Claim.Id, v => v.Sentence, v => InWords.Of(v.Ruling)),
            Differing(Fits(before), Fits(after), f => f.Series.Name, f => f.Series.Name, Best),
            Differing(Levels(before), Levels(after), l => l.Name, l => l.Name, l => l.Mean));
    }

    /// <summary>What would follow from a strike, set beside what follows now. Nothing is kept.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="target">Sample code or reading id.</param>
    public static WorkingComparison OfStrike(Dossier dossier, string target)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var study = dossier.Evidence.Study;
        return Of(dossier, Dossier.Of(study with { Strikes = study.Strikes.Add(new Strike(target, "as if", study.Version + 1, DateTimeOffset.UnixEpoch, "")) }));
    }

    /// <summary>True when no claim, finding or mean differs.</summary>
    public bool IsEmpty => Claims.IsEmpty && Findings.IsEmpty && Quantities.IsEmpty;

    /// <summary>One row a thing that differs, claims first.</summary>
    /// <param name="was">Heading of what was: "then".</param>
    /// <param name="now">Heading of what is: "now".</param>
    public Table AsTable(string was, string now)
        => new(
            "changes", "What changes",
            [new Column("kind", "Kind"), new Column("thing", "What") { NamesRows = true }, new Column("was", was), new Column("now", now)],
            [.. Rows("claim", Claims), .. Rows("finding", Findings), .. Rows("mean of a level", Quantities)]);

    private static IEnumerable<Row> Rows(string kind, IEnumerable<BeforeAfter> changes) => changes.Select(c => Row.Of(kind, c.Name, c.Before, c.After));

    private static IEnumerable<FittedSeries> Fits(Dossier dossier) => dossier.Evidence.Kinetics.Concat(dossier.Evidence.Isotherms);

    private static string Best(FittedSeries fitted) => fitted.Best is not { } best
        ? "no curve settles"
        : best.Card.Name + ": " + string.Join(", ", best.Parameters.Select(p => $"{p.Symbol} = {InWords.Plain(p.Value, p.Unit)}"));

    private static IEnumerable<(string Name, string Mean)> Levels(Dossier dossier)
        => dossier.Evidence.Series.Where(s => s.Varied is not null).SelectMany(s => s.Levels.Where(l => !l.Uptakes.IsEmpty).Select(l =>
            ($"q, {s.Name} at {InWords.Plain(l.X, s.Varied!.Unit)}", $"{InWords.Plain(l.Uptakes.Average(), "mg/g")}, n = {InWords.Plain(l.Uptakes.Length)}")));

    private static ImmutableArray<BeforeAfter> Differing<T>(
        IEnumerable<T> before, IEnumerable<T> after, Func<T, string> key, Func<T, string> name, Func<T, string> says)
    {
        before = before.ToArray();
        var earlier = before.Select(key).ToHashSet(StringComparer.Ordinal);
        after = after.ToArray();
        var later = after.GroupBy(key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => says(g.First()), StringComparer.Ordinal);
        return [.. before.Select(b => new BeforeAfter(name(b), says(b), later.GetValueOrDefault(key(b), "gone"))).Where(c => c.Before != c.After)
            .Concat(after.Where(a => !earlier.Contains(key(a))).Select(a => new BeforeAfter(name(a), "not there", says(a))))];
    }
}

/// <summary>One thing as it is and as it would be.</summary>
/// <param name="Name">What.</param>
/// <param name="Before">As it is.</param>
/// <param name="After">As it would be.</param>
public sealed record BeforeAfter(string Name, string Before, string After);
