using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The sensor works in {series}": what was added is found again within the window. A slope of found on added that differs from 1 shows that the water
/// changes the response, even where the window is met.
/// </summary>
/// <remarks>Slope by least squares over single vessels; 90 % interval inside the window (two one-sided tests at 5 %), 95 % interval against 1. Window by common practice.</remarks>
public sealed class WorksInWater : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest additions.</summary>
        public const int Additions = 3;

        /// <summary>Fewest separate vessels.</summary>
        public const int Vessels = 3;
    }

    /// <inheritdoc/>
    public string Id => "works-in-water";

    /// <inheritdoc/>
    public string Wording => "The sensor works in {series}.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => Sensing.Of(evidence).Waters.Select(w => Claim.Raised(Id, ("series", w.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => SensorGround.Of(claim, evidence);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var water = Sensing.Of(evidence).WaterNamed(claim.Words("series"));
        var margin = FixedMargin.Of(evidence, MarginKind.Recovery);
        var decision = water is null
            ? Decision.Missing("No spiked water was found. Read the water as it is and at three additions, three vessels each.", Plan)
            : Decide(water.Water, water.Amounts.GroupBy(a => a.Added).Min(g => g.Count()), margin.Low / 100, margin.High / 100);
        if (water is not null)
        {
            decision = decision with
            {
                Warnings = [.. decision.Warnings, .. margin.Notes, .. water.ReadBack ? Array.Empty<string>() : ["What was found came worked out: its readings are not here."]],
            };
        }

        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", water?.Name ?? claim.Words("series") ?? "the water")),
            water is null ? null : $"additions to {Phrase.With(water.Amounts.Max(a => a.Added), SensorAmount.Unit)}, {SensorScope.Of(water.Samples)}; {Phrase.Count(water.Samples.Length, "vessel")}",
            water?.Samples.Select(s => s.Code) ?? []);
    }

    /// <summary>Judges recoveries.</summary>
    /// <param name="water">What came back.</param>
    /// <param name="vessels">Fewest vessels at one level.</param>
    /// <param name="low">Lower end of the window; no unit.</param>
    /// <param name="high">Upper end of the window; no unit.</param>
    public static Decision Decide(SpikedWater water, int vessels, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(water);
        var slope = water.Slope.Interval(Confidence.Level);
        var ruling = IntervalRuling.Within(water.Slope, low, high);
        var recoveries = Phrase.Listed(water.Levels.Select(l => Phrase.With(100 * l.Recovery, "%")));
        return new Decision(
            ruling,
            $"Recoveries are {recoveries}; found rises {Phrase.Number(water.Slope.Value)} per added ({Phrase.Interval(slope, "")}) against a window of {Phrase.Span(100 * low, 100 * high, "%")}; n = {Phrase.Count(water.Slope.N, "vessel")}."
                + (water.MatrixEffectIsShown ? " The slope differs from 1: a matrix effect is shown; use standard additions." : ""),
            "slope of found on added: 90 % interval inside the window, 95 % interval against 1")
        {
            Numbers =
            [
                Deciding.Of("slope of found on added", water.Slope, Confidence.Level, ""),
                Deciding.Of("slope of found on added", water.Slope, 0.90, ""),
                .. water.Levels.Select(l => l.Estimate is { } e ? Deciding.Of($"recovery at {Phrase.With(l.Added, SensorAmount.Unit)}", e, Confidence.Level, "") : Deciding.Plain($"recovery at {Phrase.With(l.Added, SensorAmount.Unit)}", l.Recovery)),
                Deciding.Of("found at no addition", water.Native, Confidence.Level, SensorAmount.Unit),
            ],
            Gates =
            [
                new("additions", water.Levels.Count >= Limits.Additions, $"{Phrase.Count(water.Levels.Count, "addition")} were read; {Limits.Additions} are needed"),
                new("vessels", vessels >= Limits.Vessels, $"{Phrase.Count(vessels, "vessel")} at some level; {Limits.Vessels} are needed"),
            ],
            Warnings = water.MatrixEffectIsShown ? ["The claim holds for the window only: results in this water are off by the slope."] : [],
            Questions =
            [
                .. water.MatrixEffectIsShown ? [new Question("Q69", $"The slope is {Phrase.Number(water.Slope.Value)}, not 1: which component of the water changes it?")] : Array.Empty<Question>(),
                new Question("Q70", "Who else measured these samples, by another method?"),
            ],
            Next = Plan,
        };
    }

    private static NextExperiment Plan { get; } = new(
        "Read the water by standard additions at 3 levels, 3 vessels each, or 5 samples of it by a second method, paired.", 9, [],
        "standard additions at three levels of three vessels (common practice)");
}
