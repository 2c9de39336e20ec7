using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The uptake is higher than a published one": at the same concentration, pH, temperature and water, own lower bound above their upper
/// bound. Two fitted capacities from different conditions decide nothing.
/// </summary>
/// <remarks>
/// Own uptake at the published concentration from the isotherm with the lowest AICc that has a standard error there. Conditions count as equal within
/// 0.5 in pH and 5 K. The claim states the published side: published, published-u, at, published-ph, published-temperature.
/// </remarks>
public sealed class BetterThanPublished : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Largest difference of pH at which two uptakes compare.</summary>
        public const double PhWindow = 0.5;

        /// <summary>Largest difference of temperature at which two uptakes compare, K.</summary>
        public const double TemperatureWindow = 5;
    }

    /// <inheritdoc/>
    public string Id => "better-than-published";

    /// <inheritdoc/>
    public string Wording => "The uptake is higher than the published {published}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series", "at", "published-u", "published-temperature", "published-ph", "published-water"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedIsotherm.Of(claim, evidence) is { } f ? Grounds.OfSorption(evidence, f.Series).Concat(Grounds.OfEquilibrium(evidence, f.Series)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedIsotherm.Of(claim, evidence);
        var vessels = fitted?.Series.Vessels.ToArray() ?? [];
        var decision = fitted is null ? Decision.Missing("No series with several start concentrations was fitted, so own uptake at the published concentration is not known.")
            : claim.In("published", "mg/g") is not { } published ? Decision.NotNamed(claim, "published", "11.0 mg/g, with at, published-u, published-ph, published-temperature and published-water beside it")
            : Decide(Own(fitted, claim.In("at", "mg/L")), published, claim.In("published-u", "mg/g"), Matches(claim, vessels));
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("published", claim.Words("published") ?? "value")), Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the comparison.</summary>
    /// <param name="own">Own uptake at the published concentration, mg/g, or null when that concentration is not known or lies outside the data.</param>
    /// <param name="published">Published uptake, mg/g.</param>
    /// <param name="publishedU">Its standard uncertainty, mg/g, or null when not published.</param>
    /// <param name="matches">Whether concentration, pH, temperature and water are the same.</param>
    public static Decision Decide(Estimate? own, double published, double? publishedU, ImmutableArray<Gate> matches)
    {
        var questions = ImmutableArray.Create(
            new Question("Q61", $"At your water's concentration, which one removes more? {Phrase.With(published, "mg/g")} was found elsewhere."),
            new Question("Q62", "How did you select the list of sorbents you compare with?"));
        var next = new NextExperiment(
            "Run one commercial reference sorbent side by side: 5 concentrations, 3 vessels each, same water, pH and day.", 15, [], "five levels with three vessels (common practice)");
        if (own is null)
        {
            return Decision.Missing($"The published {Phrase.With(published, "mg/g")} comes without a concentration inside the data, so own uptake cannot be set beside it.", next, questions.AsSpan());
        }

        var matched = matches.All(m => m.Passed);
        var half = publishedU is { } u ? NormalDistribution.Quantile(Confidence.Level) * u : (double?)null;
        var ruling = half is not { } h || !matched ? Ruling.NotShownYet
            : own.LowerBound() > published + h ? Ruling.Holds
            : own.UpperBound() < published - h ? Ruling.Contradicted
            : Ruling.NotShownYet;
        var theirs = half is { } w ? $"{Phrase.Number(published - w)} to {Phrase.With(published + w, "mg/g")}" : $"{Phrase.With(published, "mg/g")} without an uncertainty";
        var unlike = matched ? "" : $" Conditions do not match: {Phrase.Listed(matches.Where(m => !m.Passed).Select(m => m.Sentence))}.";
        return new Decision(
            ruling,
            $"Own uptake there is {Phrase.With(own.Value, "mg/g")}, one-sided 95 % bounds {Phrase.Number(own.LowerBound())} and {Phrase.With(own.UpperBound(), "mg/g")}, n = {Phrase.Count(own.N, "vessel")}; published: {theirs}.{unlike}",
            "one-sided bounds at the same concentration")
        {
            Numbers = [Deciding.Of("own uptake at the published concentration", own, 0.90, "mg/g"), Deciding.Plain("published uptake", published, "mg/g", publishedU is null ? "no uncertainty published" : $"standard uncertainty {Phrase.With(publishedU.Value, "mg/g")}")],
            Gates = [.. matches, new("published uncertainty", publishedU is not null, "the uncertainty of the published value is not known")],
            Questions = questions,
            Next = next,
        };
    }

    private static Estimate? Own(FittedSeries fitted, double? at)
    {
        double[] left = [.. fitted.Series.Levels.SelectMany(l => l.EndConcentrations)];
        if (at is not { } c || left.Length == 0 || c < left.Min() || c > left.Max())
            return null;
        var best = fitted.Fits.Where(f => f is { IsFit: true, Nu: > 0, Aicc: not null, Covariance: not null, Model: not null }).MinBy(f => f.Aicc);
        return best?.ConfidenceBand(c) is { StandardError: > 0 } band ? new($"{best.Card.Name} at {Phrase.With(c, "mg/L")}", band.Value, band.StandardError, best.Nu, best.N) : null;
    }

    private static ImmutableArray<Gate> Matches(Claim claim, IReadOnlyList<Vessel> vessels)
    {
        double[] ph = [.. vessels.Select(v => v.Sample.Number(BatchProperties.EndPh) ?? v.Sample.Number(BatchProperties.StartPh)).OfType<double>()];
        double[] kelvin = [.. vessels.Select(v => v.Sample.Number(BatchProperties.Temperature)).OfType<double>()];
        string[] waters = [.. vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];
        return
        [
            Within("pH", "", ph, claim.Number("published-ph"), Limits.PhWindow),
            Within("temperature", "K", kelvin, claim.In("published-temperature", "K"), Limits.TemperatureWindow),
            new("water", waters.Length == 1 && string.Equals(waters[0], claim.Words("published-water"), StringComparison.OrdinalIgnoreCase),
                $"own water {Phrase.Listed(waters)}, theirs {claim.Words("published-water") ?? "not stated"}"),
        ];
    }

    private static Gate Within(string name, string unit, double[] own, double? theirs, double window)
        => theirs is not { } t || own.Length == 0
            ? new(name, false, $"{name} of one side is not known")
            : new(name, own.All(o => Math.Abs(o - t) <= window), $"own {name} {Phrase.Span(own.Min(), own.Max(), unit)}, theirs {Phrase.With(t, unit)}");
}
