using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Scaleup;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>"Low cost": the cost per gram removed lies below that of a named rival in 95 of 100 draws over the ranges of its inputs.</summary>
/// <remarks>
/// Propagation of distributions with rectangular ranges, one seed. The dose is the working dose of one stage from the isotherm, not a capacity; uses are
/// those shown by a reuse test. Prices in one currency of one date ("currency": "EUR 2026"), written as ranges: "40 to 60".
/// </remarks>
public sealed class LowCost : IClaimRule
{
    private const ulong Seed = 20;

    /// <inheritdoc/>
    public string Id => "low-cost";

    /// <inheritdoc/>
    public string Wording => "Treatment costs less than {rival} per gram removed.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["c0", "limit", "isotherm"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("rival", "rival's cost per gram removed", "0.5 to 0.8", null),
        new("price", "price of the sorbent per kg", "2 to 4", null),
        new("uses", "how many times it is used", "1 to 3", null),
        new("disposal", "disposal per kg of loaded sorbent", "0.3 to 0.6", null),
        new("eluent", "eluent, L per m³ treated", "5 to 10", null),
        new("eluent-price", "price of the eluent per L", "0.1 to 0.2", null),
        new("eluent-uses", "how many times the eluent is used", "1 to 2", null),
        new("energy", "energy, cost per m³", "0.05 to 0.1", null),
        new("labour", "labour, cost per m³", "0.2 to 0.4", null),
    ];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => Range(claim, "uses") is { High: > 1 } uses
            ? [Claim.Raised("reusable", ("cycles", Phrase.Plain(Math.Ceiling(uses.High), "")))]
            : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("rival", claim.Words("rival") ?? "a rival"));
        var chosen = StagePlans.Isotherm(evidence, claim.Words("isotherm"));
        if (claim.In("c0", "mg/L") is not { } c0 || claim.In("limit", "mg/L") is not { } limit || !(limit > 0 && limit < c0))
            return Decision.Missing("A cost needs a water and a target: name its concentration (“c0”) and the limit below it (“limit”).", null, new Question("Q63", "Per gram of metal removed, at which concentration?")).On(claim, sentence, null, []);
        if (Range(claim, "price") is null || Range(claim, "rival") is not { } rival)
            return Decision.Missing("A cost needs a range for the price of the sorbent per kg (“price”) and for the rival's cost per gram removed (“rival”), written like 40 to 60.").On(claim, sentence, null, []);
        if (chosen is not { } isotherm)
            return Decision.Missing("No isotherm with uncertainties was fitted: the working dose is not known.").On(claim, sentence, null, []);
        var (lowest, highest) = StagePlans.Measured(isotherm.Fit);
        var plan = Stages.Of(isotherm.Fit, "isotherm:" + isotherm.Series.Series.Name, c0, limit, lowest, highest);
        if (plan.Value is not { } stages)
            return Decision.Missing(plan.Findings[0].Sentence).On(claim, sentence, null, []);

        var uses = Range(claim, "uses") ?? new(1, 1);
        var shown = Shown(evidence);
        var cost = CostOf(claim, stages.Single)!.Value;
        var missing = new[] { "disposal", "energy", "labour" }.Where(n => Range(claim, n) is null).ToArray();
        var decision = Decide(cost, c0 - limit, Of("rival", rival), uses.High, shown, missing, claim.Words("currency"));
        var vessels = isotherm.Series.Series.Vessels.ToArray();
        return decision.On(claim, sentence, $"{Phrase.With(c0, "mg/L")} brought to {Phrase.With(limit, "mg/L")} in one stage; {Scope.Of(vessels)}", vessels.Select(v => v.Code));
    }

    /// <summary>The cost that a claim's ranges make of a dose; what has no range costs nothing, sorbent and eluent are used once. Null without a price.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="dose">Sorbent, kg per m³.</param>
    public static TreatmentCost<Measured>? CostOf(Claim claim, Measured dose)
    {
        ArgumentNullException.ThrowIfNull(claim);
        return Range(claim, "price") is not { } price ? null : new(
            dose, Of("price", price), Of("uses", Range(claim, "uses") ?? new(1, 1)), Of("disposal", Range(claim, "disposal")), Of("eluent", Range(claim, "eluent")),
            Of("eluent-price", Range(claim, "eluent-price")), Of("eluent-uses", Range(claim, "eluent-uses") ?? new(1, 1)), Of("energy", Range(claim, "energy")), Of("labour", Range(claim, "labour")));
    }

    /// <summary>Judges a cost against a rival's.</summary>
    /// <param name="cost">The inputs with their ranges.</param>
    /// <param name="removed">Removed, g per m³.</param>
    /// <param name="rival">What the rival costs per gram removed.</param>
    /// <param name="uses">Most uses that the cost counts on.</param>
    /// <param name="cyclesShown">Cycles that a reuse test showed.</param>
    /// <param name="missing">Names of inputs without a range: counted as nothing.</param>
    /// <param name="currency">Currency and date of every price, or null when they are not said.</param>
    public static Decision Decide(TreatmentCost<Measured> cost, Measured removed, Measured rival, double uses, int cyclesShown, IReadOnlyCollection<string> missing, string? currency)
    {
        ArgumentNullException.ThrowIfNull(missing);
        if (CostDraws.PerGram(cost, removed, new SeededStream(Seed, "cost")).Value is not { } own
            || CostDraws.AgainstRival(cost, removed, rival, new SeededStream(Seed, "cost against a rival")).Value is not { } difference)
            return Decision.Missing("The ranges of the inputs allow costs without a finite value. Narrow the uses.");
        var unit = (string.IsNullOrWhiteSpace(currency) ? "currency units" : currency) + " per g";
        var first = CostDraws.Shares(cost, removed).Rows.Take(2).ToArray();
        var ruling = CostDraws.Cheaper(difference);
        return new Decision(
            ruling,
            $"Removal costs {Phrase.With(own.Median, unit)} ({Phrase.Interval(own.EqualTails, "")}); own less rival: {Phrase.Interval(difference.EqualTails, "")} of {Phrase.Number(difference.Draws)} draws."
                + (first.Length > 0 ? $" Most of the spread comes from {Phrase.Listed(first.Select(r => r.Name))}." : ""),
            "propagation of distributions over the ranges of the inputs")
        {
            Numbers =
            [
                new("cost per gram removed", own.Median, own.EqualTails.Low, own.EqualTails.High, unit, "95 % of the draws"),
                new("own less rival, per gram removed", difference.Median, difference.EqualTails.Low, difference.EqualTails.High, unit, "90 % of the draws"),
                .. first.Select(r => Deciding.Plain($"share of the variance from {r.Name}", r.Share, "%")),
            ],
            Gates =
            [
                new("inputs", missing.Count == 0, missing.Count == 0 ? "disposal, energy and labour are in the cost" : $"no range is given for {Phrase.Listed(missing)}: counted as nothing"),
                new("currency", !string.IsNullOrWhiteSpace(currency), string.IsNullOrWhiteSpace(currency) ? "no currency and date are named for the prices" : $"prices in {currency}"),
                new("uses", uses <= cyclesShown, $"{Phrase.Number(uses)} uses are counted on; the reuse test shows {Phrase.Number(cyclesShown)}"),
            ],
            Questions = uses > cyclesShown ? [new("Q64", $"Did you show those {Phrase.Number(uses)} cycles?")] : [],
            Next = new(
                first.Length > 0 ? $"Pin down {first[0].Name} first: it carries {Phrase.With(first[0].Share, "%")} of the variance." : "Give ranges for the prices instead of single numbers.",
                null, [.. first.Select(r => r.Name)], "the input with the largest share of the variance is measured first"),
        };
    }

    // Cycles in which the reuse claim, judged for itself, keeps enough; one use needs no test.
    private static int Shown(Evidence evidence)
        => ReuseStudy.Of(evidence).Series
            .SelectMany(s => s.Cycles.Skip(1).Select(c => c.Number).Where(n => new Reusable().Judge(
                Claim.Raised("reusable", ("series", s.Name), ("cycles", n.ToString(CultureInfo.InvariantCulture))), evidence).Ruling == Ruling.Holds))
            .DefaultIfEmpty(1).Max();

    private static Measured Of(string name, PriceRange? range)
        => range is not { } r ? 0 : r.Low.Equals(r.High) ? r.Low : CostDraws.Between("cost:" + name, name.Replace('-', ' '), r.Low, r.High, "");

    // "40 to 60", "40..60" or one number.
    private static PriceRange? Range(Claim claim, string name)
    {
        if (claim.Words(name) is not { } words)
            return null;
        var ends = words.Replace("..", " to ", StringComparison.Ordinal).Split(" to ", StringSplitOptions.TrimEntries);
        double[] read = [.. ends.Select(e => Claim.Raised("", ("n", e)).Number("n")).OfType<double>()];
        return read.Length == ends.Length && read.Length is 1 or 2 && read[0] >= 0 && read[^1] >= read[0] ? new(read[0], read[^1]) : null;
    }

    private sealed record PriceRange(double Low, double High);
}
