using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "{dose} is the smallest dose that suffices": no higher dose removes more than the margin, and the next lower dose removes less by
/// more than the margin.
/// </summary>
/// <remarks>
/// Each higher dose is compared by the 90 % interval of the difference of mean removals with the scatter pooled over all doses (one-sided
/// tests at 5 %). All must pass, so their number needs no correction; a contradiction is corrected for it (Bonferroni).
/// </remarks>
public sealed class SmallestSufficientDose : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;
    }

    /// <inheritdoc/>
    public string Id => "smallest-sufficient-dose";

    /// <inheritdoc/>
    public string Wording => "{dose} is the smallest dose that suffices.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => from series in DoseSeries.All(evidence)
           let levels = Setting.Of(series, v => v.Removal)
           where levels.Length >= 3
           let best = levels.Max(l => l.Mean)
           let margin = FixedMargin.Of(evidence, MarginKind.Removal)
           select Claim.Raised(Id, ("series", series.Name), ("dose", Phrase.Plain(levels.First(l => l.Mean >= best - margin.High).X, "g/L")));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => DoseSeries.Of(claim, evidence) is { } series ? Grounds.OfSorption(evidence, series) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = DoseSeries.Of(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("dose", claim.Words("dose") ?? "the dose"));
        var margin = FixedMargin.Of(evidence, MarginKind.Removal);
        var decision = series is null ? Decision.Missing("No series with several doses was found. Run four doses or more, three vessels each.")
            : claim.In("dose", "g/L") is not { } dose ? Decision.NotNamed(claim, "dose", "2 g/L")
            : Decide(dose, Setting.Of(series, v => v.Removal), margin.High);
        var vessels = series?.Vessels.ToArray() ?? [];
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] })
            .On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges doses by removal.</summary>
    /// <param name="dose">The dose said to suffice, g/L.</param>
    /// <param name="levels">Removals in % at each dose in g/L, in rising order.</param>
    /// <param name="margin">Largest gain of removal that does not matter, percentage points.</param>
    public static Decision Decide(double dose, IReadOnlyList<Setting> levels, double margin)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var at = DoseSeries.IndexOf(levels, dose);
        if (at < 0)
            return Decision.Missing($"No vessel was run at {Phrase.With(dose, "g/L")}.");
        if (levels.Count < 2 || OneWay.Of([.. levels.Select(l => l.Group("g/L"))]).Value is not { } analysis)
            return Decision.Missing("The vessels give no scatter to compare doses by: three separate vessels per dose are needed.");

        var higher = Enumerable.Range(at + 1, levels.Count - at - 1).Select(i => (levels[i].X, Gain: Difference(levels[i], levels[at]))).ToArray();
        var lower = at > 0 ? Difference(levels[at], levels[at - 1]) : null;
        var enough = IntervalRuling.All(higher.Select(h => NoMore(h.Gain, margin, higher.Length)));
        var needed = lower is null ? Ruling.NotShownYet : Needed(lower, margin);
        var most = higher.Length == 0 ? default : higher.MaxBy(h => h.Gain.Value);
        return new Decision(IntervalRuling.All([enough, needed]), Reason(levels, at, most, lower, margin), "equivalence of means (one-sided tests at 5 %), sd pooled over all doses")
        {
            Numbers =
            [
                .. DoseSeries.Means(levels),
                .. higher.Select(h => Deciding.Of($"gain from {Phrase.With(levels[at].X, "g/L")} to {Phrase.With(h.X, "g/L")}", h.Gain, 0.90, "percentage points")),
                .. lower is null ? Array.Empty<Deciding>() : [Deciding.Of($"loss at {Phrase.With(levels[at - 1].X, "g/L")}", lower, 0.90, "percentage points")],
            ],
            Gates = [new("vessels per dose", levels.Min(l => l.Values.Length) >= Limits.Replicates, $"the fewest vessels at a dose are {Phrase.Number(levels.Min(l => l.Values.Length))}; {Limits.Replicates} are needed")],
            Questions =
            [
                .. higher.Length == 0 ? [new Question("Q16", $"What happens at twice {Phrase.With(levels[at].X, "g/L")}?")] : Array.Empty<Question>(),
                .. lower is { } l && l.PDiffersFrom(0) > Confidence.Chance
                    ? [new Question("Q15", $"What makes {Phrase.With(levels[at].X, "g/L")} better than {Phrase.With(levels[at - 1].X, "g/L")} if the difference is {Phrase.With(l.Value, "points")} with a standard deviation of {Phrase.Number(analysis.PooledSd)}?")]
                    : Array.Empty<Question>(),
            ],
            Next = Beside(levels, at, analysis, margin),
        };

        Estimate Difference(Setting first, Setting second) => LargerUncertainty.Difference(first, second, analysis.PooledSd, analysis.WithinFreedom);
    }

    // Only a gain speaks against the dose: a higher dose that removes less does not.
    private static Ruling NoMore(Estimate gain, double margin, int looks)
        => gain.UpperBound() < margin ? Ruling.Holds
            : gain.LowerBound(1 - Confidence.Chance / looks) > margin ? Ruling.Contradicted
            : Ruling.NotShownYet;

    private static Ruling Needed(Estimate loss, double margin)
        => loss.LowerBound() > margin ? Ruling.Holds
            : loss.UpperBound() < margin ? Ruling.Contradicted
            : Ruling.NotShownYet;

    private static string Reason(IReadOnlyList<Setting> levels, int at, (double X, Estimate Gain) most, Estimate? lower, double margin)
    {
        var up = most.Gain is null ? "No higher dose was run."
            : $"Going to {Phrase.With(most.X, "g/L")} changes it by {Phrase.With(most.Gain.Value, "points")} ({Phrase.Interval(most.Gain.Interval(0.90), "points")}).";
        var down = lower is null ? "No lower dose was run."
            : $"{Phrase.With(levels[at - 1].X, "g/L")} falls short by {Phrase.With(lower.Value, "points")} ({Phrase.Interval(lower.Interval(0.90), "points")}).";
        return $"Removal is {DoseSeries.Mean(levels[at])}. {up} {down} The margin is {Phrase.With(margin, "points")}; {Phrase.Count(levels[at].Values.Length, "vessel")} at the dose.";
    }

    private static NextExperiment Beside(IReadOnlyList<Setting> levels, int at, OneWay analysis, double margin)
    {
        var size = Replication.Equivalence(margin, analysis.PooledSd, analysis.WithinFreedom);
        double[] doses =
        [
            .. at > 0 ? [levels[at - 1].X] : new[] { 0.5 * levels[at].X },
            levels[at].X,
            .. at < levels.Count - 1 ? [levels[at + 1].X] : new[] { 2 * levels[at].X },
        ];
        string[] words = [.. doses.Select(d => Phrase.With(d, "g/L"))];
        return new($"Run {Phrase.Listed(words)} with {size.Each("vessel")} each in one randomised tray.", words.Length * size.N, [.. words], size.Basis);
    }
}
