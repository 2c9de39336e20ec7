using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "{dose} is the optimum dose": an interior maximum of removal that beats both neighbours. Removal rises and uptake falls with dose by
/// arithmetic, so a highest mean alone is no optimum.
/// </summary>
/// <remarks>All pairs of doses are compared at once (Tukey), with the scatter pooled over all doses.</remarks>
public sealed class OptimumDose : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest doses.</summary>
        public const int Doses = 4;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;
    }

    /// <inheritdoc/>
    public string Id => "optimum-dose";

    /// <inheritdoc/>
    public string Wording => "{dose} is the optimum dose.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => DoseSeries.Of(claim, evidence) is { } series ? Grounds.OfSorption(evidence, series) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var series = DoseSeries.Of(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("dose", claim.Words("dose") ?? "the dose"));
        var decision = series is null ? Decision.Missing("No series with several doses was found. Run four doses or more, three vessels each.")
            : claim.In("dose", "g/L") is not { } dose ? Decision.NotNamed(claim, "dose", "2 g/L")
            : Decide(dose, Setting.Of(series, v => v.Removal), FixedMargin.Of(evidence, MarginKind.Removal).High);
        var vessels = series?.Vessels.ToArray() ?? [];
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges doses by removal.</summary>
    /// <param name="dose">The dose said to be best, g/L.</param>
    /// <param name="levels">Removals in % at each dose in g/L, in rising order.</param>
    /// <param name="margin">Smallest difference of removal that matters, percentage points; it sizes the next experiment.</param>
    public static Decision Decide(double dose, IReadOnlyList<Setting> levels, double margin)
    {
        ArgumentNullException.ThrowIfNull(levels);
        var at = DoseSeries.IndexOf(levels, dose);
        if (at < 0)
            return Decision.Missing($"No vessel was run at {Phrase.With(dose, "g/L")}.");
        if (levels.Count < 2 || OneWay.Of([.. levels.Select(l => l.Group("g/L"))]).Value is not { } analysis)
            return Decision.Missing("The vessels give no scatter to compare doses by: three separate vessels per dose are needed.");

        var name = levels[at].Group("g/L").Name;
        var rivals = Tukey.PairsOf(analysis, at).Select(p => (Dose: p.Second, Ahead: p.Difference.Value, p.P, p.Comparisons)).ToArray();
        var pairs = rivals[0].Comparisons;
        var better = rivals.Where(r => r.Ahead < 0 && r.P < Confidence.Chance).OrderBy(r => r.P).ToArray();
        var neighbours = new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < levels.Count).Select(i => levels[i].Group("g/L").Name).ToArray();
        var beside = rivals.Where(r => neighbours.Contains(r.Dose, StringComparer.Ordinal)).ToArray();
        var interior = at > 0 && at < levels.Count - 1;
        var beaten = beside.All(r => r.Ahead > 0 && r.P < Confidence.Chance);
        var ruling = better.Length > 0 ? Ruling.Contradicted : interior && beaten ? Ruling.Holds : Ruling.NotShownYet;
        return new Decision(ruling, Reason(levels, at, better.Length > 0 ? [better[0]] : beside, interior, pairs), $"Tukey, {Phrase.Count(pairs, "pair")} of doses, pooled sd {Phrase.With(analysis.PooledSd, "points")}")
        {
            Numbers = [.. DoseSeries.Means(levels), .. rivals.Select(r => Deciding.Plain($"Tukey p against {r.Dose}", r.P)), Deciding.Plain("pooled sd", analysis.PooledSd, "percentage points", $"{Phrase.Number(analysis.WithinFreedom)} degrees of freedom")],
            Gates =
            [
                new("doses", levels.Count >= Limits.Doses, $"{Phrase.Count(levels.Count, "dose")} were run; {Limits.Doses} are needed"),
                new("vessels per dose", levels.Min(l => l.Values.Length) >= Limits.Replicates, $"the fewest vessels at a dose are {Phrase.Number(levels.Min(l => l.Values.Length))}; {Limits.Replicates} are needed"),
            ],
            Questions =
            [
                .. beside.Where(r => r.P >= Confidence.Chance).Select(r => new Question("Q15",
                    $"What makes {name} better than {r.Dose} if the difference is {Phrase.With(r.Ahead, "points")} with a standard deviation of {Phrase.Number(analysis.PooledSd)}?")),
                .. interior ? Array.Empty<Question>() : [new Question("Q16", at == 0
                    ? $"What happens at half of {name}?"
                    : $"What happens at twice {name}?")],
            ],
            Next = Beside(levels, at, analysis, margin),
        };
    }

    private static string Reason(IReadOnlyList<Setting> levels, int at, IReadOnlyList<(string Dose, double Ahead, double P, int Comparisons)> shown, bool interior, int comparisons)
    {
        var against = Phrase.Listed(shown.Select(r => $"{r.Dose} by {Phrase.With(r.Ahead, "points")} ({Phrase.P(r.P)})"));
        var end = interior ? "" : " It lies at the end of the range, so nothing is known beyond.";
        return $"Removal is {DoseSeries.Mean(levels[at])}, ahead of {against}; p by Tukey over {Phrase.Number(comparisons)} comparisons, fewest vessels at a dose {Phrase.Number(levels.Min(l => l.Values.Length))}.{end}";
    }

    private static NextExperiment Beside(IReadOnlyList<Setting> levels, int at, OneWay analysis, double margin)
    {
        var size = Replication.TwoMeans(margin, analysis.PooledSd, analysis.WithinFreedom);
        var dose = levels[at].X;
        double[] doses = [at > 0 ? 0.5 * (levels[at - 1].X + dose) : 0.5 * dose, dose, at < levels.Count - 1 ? 0.5 * (dose + levels[at + 1].X) : 2 * dose];
        string[] words = [.. doses.Select(d => Phrase.With(d, "g/L"))];
        return new($"Run {Phrase.Listed(words)} with {size.Each("vessel")} each in one randomised tray, to see {Phrase.With(margin, "percentage points")}.", words.Length * size.N, [.. words], size.Basis);
    }
}
