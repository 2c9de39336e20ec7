using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "{ph} is the best pH": among the pH levels at which removal is shown to be sorption, an interior maximum that beats both neighbours. Levels at which the metal may
/// have precipitated, and levels at which the powder is not stable, are struck out first.
/// </summary>
/// <remarks>All pairs of the remaining levels are compared at once (Tukey), with the scatter pooled over them.</remarks>
public sealed class OptimumPh : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Spread of end pH below which several pH levels are one.</summary>
        public const double OnePh = 0.5;

        /// <summary>Fewest levels.</summary>
        public const int Levels = 4;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 3;
    }

    /// <inheritdoc/>
    public string Id => "optimum-ph";

    /// <inheritdoc/>
    public string Wording => "pH {ph} is the best pH.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series", "ksp", "charge", "solid"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => SeriesOf(claim, evidence) is { } series
            ? Grounds.OfConcentrations(evidence, series.Vessels).Concat(Grounds.OfEquilibrium(evidence, series)).Append(Claim.Raised(PhRecorded.RuleId, ("series", series.Name)))
                .Concat(Grounds.OfStability(evidence, series.Vessels.Where(v => claim.Number("ph") is { } ph && v.Sample.Number(BatchProperties.StartPh) is { } own && Tolerances.SamePh(own, ph))))
            : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = SeriesOf(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("ph", claim.Words("ph") ?? "this"));
        var decision = series is null ? Decision.Missing("No series with several pH was found. Run four pH levels or more, three vessels and two controls each.")
            : claim.Number("ph") is not { } ph ? Decision.NotNamed(claim, "ph", "6")
            : Decide(ph, [.. series.Levels.Select(l => One(claim, evidence, series, l))], FixedMargin.Of(evidence, MarginKind.Removal).High);
        var vessels = series?.Vessels.ToArray() ?? [];
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges pH levels by removal.</summary>
    /// <param name="ph">The pH said to be best.</param>
    /// <param name="levels">The levels in rising order of pH.</param>
    /// <param name="margin">Smallest difference of removal that matters, percentage points; it sizes the next experiment.</param>
    public static Decision Decide(double ph, IReadOnlyList<PhLevel> levels, double margin)
    {
        ArgumentNullException.ThrowIfNull(levels);
        levels = [.. levels.Where(l => !l.Removals.Values.IsEmpty)];
        if (levels.Count == 0)
            return Decision.Missing("No vessel of these pH levels has a removal yet: read the concentrations left in them.");
        if (levels.MinBy(l => Math.Abs(l.Removals.X - ph)) is not { } claimed || !Tolerances.SamePh(claimed.Removals.X, ph))
            return Decision.Missing($"No vessel was run at pH {Phrase.Number(ph)}.");
        PhLevel[] passing = [.. levels.Where(l => l.Passes && l.Removals.Values.Length > 1)];
        var best = passing.MaxBy(l => l.Removals.Mean);
        if (!claimed.Passes)
            return Struck(claimed, best, levels);
        var at = Array.IndexOf(passing, claimed);
        if (at < 0 || passing.Length < 2 || OneWay.Of([.. passing.Select(l => l.Removals.Group(""))]).Value is not { } analysis)
            return Decision.Missing("Fewer than two pH levels with replicates are shown to be sorption by a powder that stays, so there is nothing to compare.", Beside(best ?? claimed, null, margin));

        var rivals = Tukey.PairsOf(analysis, at).Select(p => (Ph: p.Second, Ahead: p.Difference.Value, p.P)).ToArray();
        var better = rivals.Where(r => r.Ahead < 0 && r.P < Confidence.Chance).OrderBy(r => r.P).ToArray();
        string[] neighbours = [.. new[] { at - 1, at + 1 }.Where(i => i >= 0 && i < passing.Length).Select(i => passing[i].Removals.Group("").Name)];
        var beside = rivals.Where(r => neighbours.Contains(r.Ph, StringComparer.Ordinal)).ToArray();
        var interior = at > 0 && at < passing.Length - 1;
        var ruling = better.Length > 0 ? Ruling.Contradicted : interior && beside.All(r => r.Ahead > 0 && r.P < Confidence.Chance) ? Ruling.Holds : Ruling.NotShownYet;
        var shown = better.Length > 0 ? [better[0]] : beside;
        var against = Phrase.Listed(shown.Select(r => $"pH {r.Ph} by {Phrase.With(r.Ahead, "points")} ({Phrase.P(r.P)})"));
        var end = interior ? "" : " It lies at the end of the levels that are left.";
        return new Decision(ruling, $"Removal at pH {Phrase.Number(claimed.Removals.X)} is {Phrase.With(claimed.Removals.Mean, "%")}, ahead of {against}; p by Tukey over {Phrase.Count(passing.Length, "level")}. {Out(levels)}{end}", "Tukey over the pH levels at which removal is shown to be sorption and the powder stays")
        {
            Numbers = [.. Means(levels), .. rivals.Select(r => Deciding.Plain($"Tukey p against pH {r.Ph}", r.P))],
            Gates = Gates(passing),
            Questions = Questions(levels, best),
            Next = Beside(best ?? claimed, analysis, margin),
        };
    }

    // The level that was claimed is struck out. Where it is no sorption it cannot be the best pH of a sorbent; where the powder dissolves nothing is decided.
    private static Decision Struck(PhLevel claimed, PhLevel? best, IReadOnlyList<PhLevel> levels)
    {
        var contradicted = claimed.Sorption == Ruling.Contradicted;
        var rest = best is null ? "No level is left." : $"Of the levels that are left, pH {Phrase.Number(best.Removals.X)} removes most, {Phrase.With(best.Removals.Mean, "%")}.";
        return new Decision(
            contradicted ? Ruling.Contradicted : Ruling.NotShownYet,
            claimed.Sorption == Ruling.Holds
                ? $"At pH {Phrase.Number(claimed.Removals.X)} removal is {Phrase.With(claimed.Removals.Mean, "%")}, but there the powder itself dissolves. {rest}"
                : $"At pH {Phrase.Number(claimed.Removals.X)} removal, {Phrase.With(claimed.Removals.Mean, "%")}, is {(contradicted ? "not sorption" : "not shown to be sorption")}: precipitation. {rest}",
            "levels that are not shown to be sorption, and those at which the powder dissolves, are struck out first")
        {
            Numbers = [.. Means(levels)],
            Questions = Questions(levels, best),
            Next = Beside(best ?? claimed, null, 0),
        };
    }

    private static string Out(IReadOnlyList<PhLevel> levels)
    {
        string[] said = [.. new[] { ("as not shown to be sorption", levels.Where(l => l.Sorption != Ruling.Holds)), ("since the powder dissolves there", levels.Where(l => l.Dissolves)) }
            .Select(s => (Why: s.Item1, Ph: s.Item2.Select(l => Phrase.Number(l.Removals.X)).ToArray()))
            .Where(s => s.Ph.Length > 0)
            .Select(s => $"Struck out {s.Why}: pH {Phrase.Listed(s.Ph)}.")];
        return said.Length == 0 ? "No level was struck out." : string.Join(" ", said);
    }

    private static ImmutableArray<Deciding> Means(IReadOnlyList<PhLevel> levels)
        => [.. levels.Where(l => !l.Removals.Values.IsEmpty).Select(l => Deciding.Plain(
            $"removal at pH {Phrase.Number(l.Removals.X)}", l.Removals.Mean, "%", $"{Phrase.Count(l.Removals.Values.Length, "vessel")}; {Word(l.Sorption)}{(l.Dissolves ? "; the powder dissolves" : "")}"))];

    private static string Word(Ruling sorption) => sorption switch
    {
        Ruling.Holds => "shown to be sorption",
        Ruling.Contradicted => "not sorption",
        _ => "sorption not shown",
    };

    private static ImmutableArray<Gate> Gates(PhLevel[] passing)
        =>
        [
            new("pH levels", passing.Length >= Limits.Levels, $"{Phrase.Count(passing.Length, "pH level")} left to compare; {Limits.Levels} are needed"),
            new("vessels per pH", passing.Min(l => l.Removals.Values.Length) >= Limits.Replicates, $"the fewest vessels at a pH are {Phrase.Number(passing.Min(l => l.Removals.Values.Length))}; {Limits.Replicates} are needed"),
        ];

    private static ImmutableArray<Question> Questions(IReadOnlyList<PhLevel> levels, PhLevel? best)
    {
        double[] ends = [.. levels.Select(l => l.EndPh).OfType<double>()];
        var highest = levels.Where(l => !l.Removals.Values.IsEmpty).MaxBy(l => l.Removals.Mean);
        return
        [
            .. ends.Length > 1 && ends.Max() - ends.Min() < Limits.OnePh ? [new Question("Q71", $"Every end pH lies within {Phrase.Number(ends.Max() - ends.Min())}: did you compare {Phrase.Count(levels.Count, "pH level")} or one?")] : Array.Empty<Question>(),
            .. highest is { Sorption: not Ruling.Holds } ? [new Question("Q72", $"Removal is highest at pH {Phrase.Number(highest.Removals.X)}, where it is not shown to be sorption: what is the best pH at which it still is{(best is null ? "" : $", pH {Phrase.Number(best.Removals.X)}")}?")] : Array.Empty<Question>(),
        ];
    }

    private static NextExperiment Beside(PhLevel best, OneWay? analysis, double margin)
    {
        var n = analysis is null ? Limits.Replicates : Math.Max(Limits.Replicates, Replication.TwoMeans(margin, analysis.PooledSd, analysis.WithinFreedom).N);
        string[] at = [.. new[] { -0.5, 0, 0.5 }.Select(d => $"pH {Phrase.Number(best.Removals.X + d)}")];
        return new(
            $"Run {Phrase.Listed(at)} with {Phrase.Count(n, "vessel")} and two controls without sorbent each; record the end pH of vessels and controls.", at.Length * (n + 2), [.. at],
            analysis is null ? "three vessels and two controls per pH (common practice)" : "power of a two-sided t test of two means, 80 %");
    }

    // What the powder gives off at one pH says nothing of another: a level at which it dissolves is left out, the rest stand.
    private static bool Dissolves(Evidence evidence, Level level)
    {
        var rule = new StableInWater();
        return Grounds.OfStability(evidence, level.Vessels).Any(c => rule.Judge(c, evidence).Ruling == Ruling.Contradicted);
    }

    private static PhLevel One(Claim claim, Evidence evidence, Series series, Level level)
    {
        var sorption = NotPrecipitation.Decide(
            Claim.Raised(NotPrecipitation.RuleId, ("series", series.Name), ("ph", Phrase.Number(level.X)), ("ksp", claim.Words("ksp")), ("charge", claim.Words("charge"))), evidence, series, level.Vessels).Gated;
        double[] ends = [.. level.Vessels.Select(v => v.Sample.Number(BatchProperties.EndPh)).OfType<double>()];
        return new(Setting.Of(level.X, level.Vessels, v => v.Removal), sorption, ends.Length > 0 ? ends.Average() : null, Dissolves(evidence, level));
    }

    private static Series? SeriesOf(Claim claim, Evidence evidence)
        => (claim.Words("series") is { } name ? evidence.SeriesNamed(name) : evidence.Series.FirstOrDefault(s => s.Varied == BatchProperties.StartPh))
            is { } series && series.Varied == BatchProperties.StartPh ? series : null;
}

/// <summary>Removals at one pH, and whether they are shown to be sorption.</summary>
/// <param name="Removals">Removals in %, at the start pH.</param>
/// <param name="Sorption">The verdict on sorption at this pH.</param>
/// <param name="EndPh">Mean end pH, or null.</param>
/// <param name="Dissolves">True when the data speak against the powder being stable at this pH.</param>
public sealed record PhLevel(Setting Removals, Ruling Sorption, double? EndPh = null, bool Dissolves = false)
{
    /// <summary>Whether it may be compared: shown to be sorption, by a powder that stays.</summary>
    public bool Passes => Sorption == Ruling.Holds && !Dissolves;
}
