using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>"No other ion interferes": with each ion the response stays within the margin of the response without it.</summary>
/// <remarks>Two one-sided tests at 5 % on the ratio of means, Holm over the ions (D. J. Schuirmann 1987; S. Holm 1979; from memory).</remarks>
public sealed class NoInterference : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest separate vessels.</summary>
        public const int Vessels = 3;
    }

    private static readonly string[] AlkalineEarths = ["Ca", "Mg"];

    /// <inheritdoc/>
    public string Id => "no-interference";

    /// <inheritdoc/>
    public string Wording => "No other ion of {series} interferes.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => Sensing.Of(evidence).Interferences.Select(i => Claim.Raised(Id, ("series", i.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => SensorGround.Of(claim, evidence);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var series = Sensing.Of(evidence).InterferencesNamed(claim.Words("series"));
        var decision = series is null || series.Ions.IsEmpty
            ? Missing(evidence)
            : Decide(series.Name, series.Ions);
        if (series is not null)
        {
            var margin = FixedMargin.Of(evidence, MarginKind.Interference);
            decision = decision with { Warnings = [.. decision.Warnings, .. margin.Notes] };
        }

        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "the series")),
            series is null ? null : $"{Phrase.Listed(series.Ions.Select(Stated))}; margin {Phrase.With(100 * series.Margin, "%")}", series?.Ions.SelectMany(i => i.Codes) ?? []);
    }

    // What was read is counted, so that nobody is told to read again what is there.
    private static Decision Missing(Evidence evidence)
    {
        string[] ions = [.. evidence.Study.Samples.Where(s => !evidence.Study.IsStruck(s)).Select(s => s.Words(FluorescenceProperties.Interferent)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];
        var series = Sensing.Of(evidence).Interferences.Length;
        return Decision.Missing(
            series > 1 ? $"{Phrase.Count(series, "series", "series")} hold readings with other ions: name the one that is meant."
            : ions.Length > 0 ? $"{Phrase.Count(ions.Length, "ion")} were read ({Phrase.Listed(ions.Take(8))}), and nothing to compare them with: two vessels or more without another ion, at the same level of analyte and on the same day, are missing. Read six."
            : "No readings with other ions were found. Read each ion beside the analyte, three vessels each, and six without.");
    }

    /// <summary>Judges the effects of the ions.</summary>
    /// <param name="series">Name of the series.</param>
    /// <param name="ions">What was found for each.</param>
    public static Decision Decide(string series, ImmutableArray<IonEffect> ions)
    {
        ImmutableArray<IonEffect> shown = [.. ions.Where(i => i.Found.IsShown)], open = [.. ions.Where(i => i.Found is { IsShown: false, IsExcluded: false })];
        var worst = ions.MaxBy(i => Math.Abs(i.Found.Effect.Value - 1))!;
        var outside = ions.Any(i => IntervalRuling.Within(i.Found.Effect, i.Found.Equivalence.Low, i.Found.Equivalence.High, ions.Length) == Ruling.Contradicted);
        var ruling = outside ? Ruling.Contradicted : open.Length + shown.Length > 0 ? Ruling.NotShownYet : Ruling.Holds;
        var alone = ions.All(i => i.Quencher == 0);
        var earths = Array.TrueForAll(AlkalineEarths, a => ions.All(i => i.Ion != a));
        var margin = Phrase.Span(worst.Found.Equivalence.Low, worst.Found.Equivalence.High, "");
        return new Decision(
            ruling,
            $"{(shown.Length > 0 ? $"{Phrase.Listed(shown.Select(i => i.Ion))} change the response. " : "")}{(open.Length > 0 ? $"{Phrase.Listed(open.Select(i => i.Ion))} are not shown to leave it within {margin}. " : "")}"
                + $"The largest effect is a ratio of {Phrase.Number(worst.Found.Effect.Value)} ({Phrase.Interval(worst.Found.Effect.Interval(0.90), "")}) with {worst.Ion}; {Phrase.Count(ions.Length, "ion")}, Holm.",
            "two one-sided tests of the ratio of means against the margin, Holm over the ions")
        {
            Numbers =
            [
                .. ions.Select(i => Deciding.Of($"response with {Stated(i)} over response without", i.Found.Effect, 0.90, "") with
                {
                    Note = $"90 % interval; p of equivalence {Phrase.Number(i.Found.AdjustedP)}, p of no effect {Phrase.Number(i.Found.DifferenceP)}, Holm over {Phrase.Number(ions.Length)}",
                }),
            ],
            Gates =
            [
                new("vessels", ions.All(i => i.Codes.Length >= Limits.Vessels), $"{Phrase.Count(ions.Min(i => i.Codes.Length), "vessel")} with some ion; {Limits.Vessels} are needed"),
                new("beside the analyte", !alone, "every ion was read alone; it must be read beside the analyte as well"),
            ],
            Warnings = [.. ions.Where(i => i.Factor > InnerFilter.Matters).Select(i => $"{i.Ion} absorbs: its signals were multiplied by up to {Phrase.Number(i.Factor!.Value)} for the inner filter.")],
            Questions =
            [
                .. alone ? [new Question("Q41", "Every ion was read alone: did the analyte ever have to compete?")] : Array.Empty<Question>(),
                .. earths ? [new Question("Q42", "Neither calcium nor magnesium was tried: what does the hardness of real water do?")] : Array.Empty<Question>(),
            ],
            Next = new(
                $"Read the analyte at half its range with each of {Phrase.Listed(ions.Select(i => i.Ion))} at the excess of your water, 3 vessels each, and 6 without, in random order.",
                3 * ions.Select(i => i.Ion).Distinct(StringComparer.Ordinal).Count() + 6, [.. ions.Select(i => i.Ion).Distinct(StringComparer.Ordinal)],
                "three separate vessels an ion, six without (common practice)"),
        };
    }

    private static string Stated(IonEffect ion)
        => ion.Concentration is { } c ? $"{ion.Ion} {Phrase.With(c, SensorAmount.Unit)}" : ion.Ion;
}
