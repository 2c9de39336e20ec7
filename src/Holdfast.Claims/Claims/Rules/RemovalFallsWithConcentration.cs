using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>"Removal falls as the concentration rises": a trend over the levels, with no rise between neighbours.</summary>
/// <remarks>Jonckheere–Terpstra, one-sided at 5 %, normal approximation; rises between neighbours by pooled t with Holm's correction.</remarks>
public sealed class RemovalFallsWithConcentration : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 4;

        /// <summary>Fewest separate vessels at one setting.</summary>
        public const int Replicates = 2;
    }

    /// <inheritdoc/>
    public string Id => "removal-falls-with-concentration";

    /// <inheritdoc/>
    public string Wording => "Removal falls as the concentration rises in {series}.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => IsothermSeries.All(evidence).Where(s => s.Levels.Length >= Limits.Levels).Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => IsothermSeries.Of(claim, evidence) is { } s ? Grounds.OfSorption(evidence, s).Concat(Grounds.OfEquilibrium(evidence, s)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var series = IsothermSeries.Of(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "any series"));
        var below = series?.Vessels.Where(v => v.End is { IsBelowQuantification: true }).Select(v => v.Code).ToArray() ?? [];
        var decision = series is null
            ? Decision.Missing("No series with several start concentrations was found. Run four concentrations at one dose, two vessels each.")
            : Spoken(Decide(Setting.Of(series, v => v.Removal), below), series);
        var vessels = series?.Vessels.ToArray() ?? [];
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    private static Decision Spoken(Decision decision, Series series)
        => decision with { Gates = [Adequacy.Usable(series), Adequacy.Scattered(Setting.Of(series, v => v.Uptake), null), .. decision.Gates] };

    /// <summary>Judges the trend.</summary>
    /// <param name="levels">Removals in % at each start concentration in mg/L, in rising order.</param>
    /// <param name="belowQuantification">Codes of vessels whose concentration after contact lies below the limit of quantification.</param>
    public static Decision Decide(IReadOnlyList<Setting> levels, IReadOnlyList<string> belowQuantification)
    {
        ArgumentNullException.ThrowIfNull(levels);
        ArgumentNullException.ThrowIfNull(belowQuantification);
        var groups = levels.Select(l => l.Group("mg/L")).ToArray();
        if (groups.Length < 2 || JonckheereTerpstra.Of(groups).Value is not { } trend || OneWay.Of(groups).Value is not { } analysis)
            return Decision.Missing("The vessels give no trend to judge: four concentrations with two separate vessels each are needed.");

        var rises = Holm.Compare(analysis, [.. Enumerable.Range(0, groups.Length - 1).Select(i => (i + 1, i))])
            .Where(c => c.Difference.Value > 0 && c.P < Confidence.Chance).ToArray();
        var ruling = trend.PIncreasing < Confidence.Chance ? Ruling.Contradicted
            : trend.PDecreasing < Confidence.Chance && rises.Length == 0 ? Ruling.Holds
            : Ruling.NotShownYet;
        var steps = Holm.Compare(analysis, [.. Enumerable.Range(0, groups.Length - 1).Select(i => (i + 1, i))]);
        var vaguest = Enumerable.Range(0, steps.Count).MaxBy(i => steps[i].Difference.Value);
        return new Decision(ruling, Reason(levels, trend, rises), "Jonckheere–Terpstra, one-sided; Holm over neighbouring levels")
        {
            Numbers =
            [
                .. levels.Select(l => Deciding.Plain($"removal at {Phrase.With(l.X, "mg/L")}", l.Mean, "%", Phrase.Count(l.Values.Length, "vessel"))),
                Deciding.Plain("Jonckheere–Terpstra J", trend.J, "", $"expected {Phrase.Number(trend.Mean)}, variance {Phrase.Number(trend.Variance)}"),
                Deciding.Plain("z for a fall", -trend.Z),
                Deciding.Plain("p for a fall", trend.PDecreasing),
            ],
            Gates =
            [
                new("concentrations", levels.Count >= Limits.Levels, $"{Phrase.Count(levels.Count, "concentration")} were run; {Limits.Levels} are needed"),
                new("vessels per concentration", levels.Min(l => l.Values.Length) >= Limits.Replicates, $"the fewest vessels at a concentration are {Phrase.Number(levels.Min(l => l.Values.Length))}; {Limits.Replicates} are needed"),
                new("above quantification", belowQuantification.Count == 0, belowQuantification.Count == 0
                    ? "every concentration after contact lies above the limit of quantification"
                    : $"{Phrase.Listed(belowQuantification.Take(3))} read below the limit of quantification"),
            ],
            Questions =
            [
                .. belowQuantification.Count > 0
                    ? [new Question("Q19", $"Is {Phrase.With(levels.Max(l => l.Mean), "%")} a measurement or your detection limit?")]
                    : Array.Empty<Question>(),
                new("Q20", $"Removal falls from {Phrase.With(levels[0].Mean, "%")} to {Phrase.With(levels[^1].Mean, "%")} while uptake rises: which of the two matters for use, and why?"),
            ],
            Warnings = ["It follows from any isotherm that bends downwards, so it is no discovery."],
            Next = Between(levels[vaguest].X, levels[vaguest + 1].X),
        };
    }

    private static string Reason(IReadOnlyList<Setting> levels, JonckheereTerpstra trend, Comparison[] rises)
    {
        var rise = rises.Length == 0 ? "no rise between neighbours"
            : $"yet it rises from {rises[0].Second} to {rises[0].First} by {Phrase.With(rises[0].Difference.Value, "points")} (Holm {Phrase.P(rises[0].P)})";
        return $"Removal goes from {Phrase.With(levels[0].Mean, "%")} at {Phrase.With(levels[0].X, "mg/L")} to {Phrase.With(levels[^1].Mean, "%")} at {Phrase.With(levels[^1].X, "mg/L")}: "
            + $"Jonckheere–Terpstra z = {Phrase.Number(-trend.Z)} for a fall, {Phrase.P(trend.PDecreasing)}, n = {Phrase.Number(trend.N)} vessels; {rise}.";
    }

    private static NextExperiment Between(double low, double high)
    {
        string[] settings = [Phrase.With(low + (high - low) / 3, "mg/L"), Phrase.With(low + 2 * (high - low) / 3, "mg/L")];
        return new($"Add {Phrase.Listed(settings)}, between the levels that are least told apart, 3 vessels each.", 6, [.. settings], "two levels between the ambiguous ones, three vessels (common practice)");
    }
}
