using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Competition;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>"Selective for the metal over its rivals": in one vessel, by amount, its distribution coefficient is larger by more than the factor claimed.</summary>
/// <remarks>
/// t on ln α over vessels (or their propagated uncertainty where that is larger), one-sided at 5 %, Holm over the rivals named both for showing and for contradicting. Single-metal capacities are no evidence.
/// </remarks>
public sealed class Selective : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels.</summary>
        public const int Vessels = 3;

        /// <summary>Level of the tests after Holm; no unit.</summary>
        public const double Level = Confidence.Chance;
    }

    /// <inheritdoc/>
    public string Id => "selective";

    /// <inheritdoc/>
    public string Wording => "The sorbent prefers {analyte} over {over}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["factor"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => MixtureStudy.Of(evidence).Rivals.IsEmpty ? [] : [Claim.Raised(Id)];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
    {
        var samples = MixtureStudy.Of(evidence).Rivals.SelectMany(r => r.Vessels).Select(v => v.Sample).ToArray();
        return samples.Length == 0 ? [] : Grounds.OfEquilibrium(evidence, samples, []);
    }

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var study = MixtureStudy.Of(evidence);
        var named = claim.Words("over")?.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        RivalMetal[] rivals = [.. study.Rivals.Where(r => named is null || named.Contains(r.Metal, StringComparer.OrdinalIgnoreCase))];
        var missing = named?.Except(rivals.Select(r => r.Metal), StringComparer.OrdinalIgnoreCase).ToArray() ?? [];
        var factor = claim.Number("factor") ?? 1;
        var sentence = Phrase.Sentence(claim, Wording, ("analyte", evidence.Study.Analyte ?? "the metal"), ("over", Phrase.Listed(named ?? [.. rivals.Select(r => r.Metal)])));
        var decision = rivals.Length == 0 || missing.Length > 0
                ? Decision.Missing(
                    $"No vessel holds {evidence.Study.Analyte ?? "the metal"} together with {(missing.Length > 0 ? Phrase.Listed(missing) : "a rival")}: capacities of single metals do not show preference.",
                    Mixtures(missing.Length > 0 ? missing : ["each rival"]), new Question("Q41", "Did your metal ever have to compete?"))
            : !(factor > 0) ? Decision.NotNamed(claim, "factor", "3")
            : Decide([.. rivals.Select(r => (r.Metal, (IReadOnlyList<Measured>)[.. r.Vessels.Select(v => v.Preference)]))], factor);
        if (decision.Numbers.Length > 0 && !study.Rivals.Any(r => r.Metal is "Ca" or "Mg"))
            decision = decision with { Questions = [.. decision.Questions, new("Q42", "Your water holds far more calcium and magnesium than metal: what is left of the capacity?")] };
        // The guard works on vessels whose concentrations were read here; these come with theirs.
        if (decision.Numbers.Length > 0)
            decision = decision with { Warnings = [.. decision.Warnings, "Whether a metal precipitated in these vessels is not judged: record their end pH and run controls without sorbent."] };
        var vessels = rivals.SelectMany(r => r.Vessels).ToArray();
        var scope = vessels.Length == 0 ? null
            : $"{Phrase.Span(vessels.Min(v => v.Start), vessels.Max(v => v.Start), "mmol/L")} of each metal at the start, in one vessel; pH and temperature as recorded for these vessels; {Phrase.Count(vessels.Length, "vessel")}";
        return decision.On(claim, sentence, scope, vessels.Select(v => v.Sample.Code));
    }

    /// <summary>Judges preferences over rivals.</summary>
    /// <param name="rivals">For each rival the selectivity coefficient of every vessel; no unit.</param>
    /// <param name="factor">Factor claimed, 1 for "prefers at all"; no unit.</param>
    public static Decision Decide(IReadOnlyList<(string Metal, IReadOnlyList<Measured> Preferences)> rivals, double factor)
    {
        ArgumentNullException.ThrowIfNull(rivals);
        var known = rivals.Select(r => (r.Metal, r.Preferences, Mean: r.Preferences.Count > 1 ? Selectivity.Mean(r.Preferences) : null)).ToArray();
        var judged = Array.FindAll(known, k => k.Mean is not null);
        if (judged.Length == 0)
            return Decision.Missing("One vessel for each rival gives no scatter to judge a preference by. Three are needed.", Mixtures([.. rivals.Select(r => r.Metal)]));
        var above = Holm.Adjust(Array.ConvertAll(judged, k => k.Mean!.PAbove(factor)));
        var below = Holm.Adjust(Array.ConvertAll(judged, k => k.Mean!.PBelow(factor)));
        string[] Of(Func<int, bool> which) => [.. judged.Where((_, i) => which(i)).Select(k => k.Metal)];
        string[] shown = Of(i => above[i] < Limits.Level), against = Of(i => below[i] < Limits.Level), open = Of(i => above[i] >= Limits.Level && below[i] >= Limits.Level);
        open = [.. open, .. known.Where(k => k.Mean is null).Select(k => k.Metal)];
        var least = judged.MinBy(k => k.Mean!.Value)!;
        return new Decision(
            against.Length > 0 ? Ruling.Contradicted : open.Length == 0 ? Ruling.Holds : Ruling.NotShownYet,
            $"{Stated("Preferred over", shown)}{Stated("Not told apart from", open)}{Stated("The rival is preferred:", against)}"
                + $"Least α {Phrase.Number(least.Mean!.Value)} over {least.Metal} (one-sided 95 % bounds {Phrase.Number(least.Mean.LowerBound())} and {Phrase.Number(least.Mean.UpperBound())}, n = {Phrase.Count(least.Mean.N, "vessel")}); factor {Phrase.Number(factor)} claimed.",
            "one-sided t on ln α, Holm over the rivals")
        {
            Numbers = [.. judged.Select(k => Deciding.Of($"α over {k.Metal}", k.Mean!, 0.90, ""))],
            Gates = [new("vessels", known.Min(k => k.Preferences.Count) >= Limits.Vessels, $"{Phrase.Count(known.Min(k => k.Preferences.Count), "vessel")} for the rival with the fewest; {Limits.Vessels} are needed")],
            Next = Mixtures(open.Length > 0 ? open : against),
        };
    }

    private static string Stated(string what, string[] metals) => metals.Length == 0 ? "" : $"{what} {Phrase.Listed(metals)}. ";

    private static NextExperiment Mixtures(string[] metals) => new(
        $"For {Phrase.Listed(metals)}: {Limits.Vessels} vessels at equal mmol/L, {Limits.Vessels} at the ratio of the real water, and {Limits.Vessels} with the metal alone.",
        (2 * metals.Length + 1) * Limits.Vessels, [.. metals], "one mixture at 1:1 and one at the real ratio, three vessels each (common practice)");
}
