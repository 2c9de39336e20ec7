using System.Collections.Immutable;
using Holdfast.Speciation;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The pH at the end was recorded in every vessel": without it precipitation cannot be excluded, since the sorbent itself moves the pH.
/// Where the author states the pH at which a solid would form (saturation-ph), the recorded pH is held against it.
/// </summary>
/// <remarks>
/// A saturation pH within 0.5 of the end pH leaves precipitation open, one at or below it contradicts (solubility constants differ by such
/// amounts between sources). A missing record is a hole in the scope; what it would have shown is asked of the claim that nothing precipitated. Where pH was not what was varied, end pH may spread by 0.3 (common practice).
/// </remarks>
public sealed class PhRecorded : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Largest spread of end pH where pH was meant to be the same.</summary>
        public const double Spread = 0.3;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "ph-recorded";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The end pH was recorded in every vessel of {series}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["saturation-ph"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Series.Where(s => s.Varied is not null && s.Levels.Length > 0).Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = claim.Words("series") is { } name ? evidence.SeriesNamed(name) : null;
        var vessels = series?.Vessels.ToArray() ?? [.. evidence.Series.SelectMany(s => s.Vessels)];
        var sentence = Phrase.Sentence(claim, Wording, ("series", claim.Words("series") ?? "every series"));
        var decision = Decide(
            [.. vessels.Select(v => v.Sample.Number(BatchProperties.EndPh))],
            claim.Number("saturation-ph"),
            constantPh: series is not null && series.Varied != BatchProperties.StartPh);
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the record.</summary>
    /// <param name="endPh">pH at the end of each vessel, null where it was not recorded.</param>
    /// <param name="saturationPh">pH above which a solid would form, as the author states it, or null.</param>
    /// <param name="constantPh">True when pH was meant to be the same in all vessels.</param>
    public static Decision Decide(IReadOnlyList<double?> endPh, double? saturationPh, bool constantPh)
    {
        ArgumentNullException.ThrowIfNull(endPh);
        double[] known = [.. endPh.OfType<double>()];
        if (known.Length == 0)
        {
            var missed = Decision.Missing(
                endPh.Count == 0 ? "No vessel was found." : $"The end pH was recorded in none of {Phrase.Count(endPh.Count, "vessel")}: without it precipitation cannot be excluded.",
                new("Measure the pH of every vessel when the liquid is separated; repeat one vessel per level where that is too late.", null, [], "one reading per vessel (common practice)"),
                new Question("Q38", "What was the pH when you took the sample?"));
            return missed with { IsUntested = false };
        }

        var missing = endPh.Count - known.Length;
        double low = known.Min(), high = known.Max();
        var ruling = saturationPh is not { } s ? Ruling.Holds : high >= s ? Ruling.Contradicted : high >= s - HydroxideSaturation.DefaultUncertainty ? Ruling.NotShownYet : Ruling.Holds;
        var against = saturationPh is { } stated ? $"; a solid forms from pH {Phrase.Number(stated)} as stated" : "; no saturation pH is stated";
        return new Decision(
            ruling,
            $"End pH was {Phrase.Span(low, high, "")} in {known.Length} of {Phrase.Count(endPh.Count, "vessel")}{against}.",
            "record of end pH; distance to the pH at which a solid forms")
        {
            Numbers = [Deciding.Plain("lowest end pH", low), Deciding.Plain("highest end pH", high)],
            Gates =
            [
                new("every vessel", missing == 0, $"end pH is missing in {Phrase.Count(missing, "vessel")} of {endPh.Count}"),
                new("end pH spread", !constantPh || high - low <= Limits.Spread + 1e-9, $"end pH spreads by {Phrase.Number(high - low)} where it was meant to be constant; {Phrase.Number(Limits.Spread)} is tolerated"),
            ],
            Warnings = saturationPh is null ? ["No saturation pH was stated: this claim says that pH was recorded, not that no solid formed."] : [],
            Questions = missing > 0 ? [new("Q38", $"What was the pH of the {Phrase.Number(missing)} vessels without a record when you took the sample?")] : [],
            Next = new("Run controls without sorbent at the highest end pH, two vessels, filtered alike.", 2, [$"pH {Phrase.Number(high)}"], "two controls per pH (common practice)"),
        };
    }
}
