using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;
using Vessel = Holdfast.Claims.Analyses.Vessel;

namespace Holdfast.Claims.Rules;

/// <summary>"Controls without sorbent stay at their start": what left the water went to the sorbent, not to wall, filter or precipitate.</summary>
/// <remarks>
/// A control may differ from its start by 5 % (common practice). The claim holds when none was found to; it is contradicted by one that surely
/// does, its one-sided 95 % bound moved in for the number of controls looked at (Bonferroni). A gain counts like a loss: it is contamination or evaporation.
/// </remarks>
public sealed class ControlsClean : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>What is tolerated (common practice); its unit is that of the quantity judged.</summary>
        public const double Tolerated = ControlCorrection.LossWorthCorrecting;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    public const string RuleId = "controls-clean";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "Controls without sorbent of {series} stayed at their start concentration.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Series.Where(s => s.Varied is not null).Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        Series[] series = claim.Words("series") is { } name ? [.. evidence.Series.Where(s => s == evidence.SeriesNamed(name))] : [.. evidence.Series];
        var sentence = Phrase.Sentence(claim, Wording, ("series", claim.Words("series") ?? "every series"));
        Vessel[] controls = [.. series.SelectMany(s => StudyControls.Reaching(evidence, s)).Distinct()];
        Vessel[] beside = controls.Length > 0 ? [] : [.. series.SelectMany(s => StudyControls.Beside(evidence, s)).Distinct()];
        var decision = beside.Length > 0 ? Elsewhere(Decide(Losses(beside)), beside) : Decide(Losses(controls)) with { Warnings = NotCovered(series, controls) };
        return decision.On(claim, sentence, Scope.Of(controls), controls.Concat(beside).Select(v => v.Code));
    }

    private static ImmutableArray<ControlLoss> Losses(IEnumerable<Vessel> controls)
        => [.. controls.Where(v => v.Start is { Value: > 0 } && v.End?.Value is not null)
            .Select(v => new ControlLoss(v.Code, BatchQuantities.RemovedShare(v.Start!.Value, v.End!.Value!.Value)))];

    // Clean controls at other concentrations are better than none and show nothing here; leaking ones leave this series untested.
    private static Decision Elsewhere(Decision found, Vessel[] controls) => found with
    {
        Ruling = Ruling.NotShownYet,
        Reason = $"No control was run at its concentrations, only at {Phrase.Listed(controls.Select(c => Phrase.With(c.Start?.Value ?? 0, "mg/L")))}. {found.Reason}",
        IsUntested = found.IsUntested || found.Ruling == Ruling.Contradicted,
    };

    /// <summary>Judges controls.</summary>
    /// <param name="controls">The controls that were read, with the share of the start concentration that each lost.</param>
    public static Decision Decide(IReadOnlyList<ControlLoss> controls)
    {
        ArgumentNullException.ThrowIfNull(controls);
        if (controls.Count == 0)
        {
            return Decision.Missing(
                "No control without sorbent was read, so loss to wall, filter and precipitate cannot be told from sorption.",
                new("Shake the metal solution without sorbent in the same vessel, for the same time, at the same end pH, filtered alike: one control at each concentration, two at each pH.", null, [], "one control per level, two per pH (common practice)"));
        }

        var worst = controls.MaxBy(c => Math.Abs(c.Loss.Value))!;
        var size = Math.Abs(worst.Loss.Value);
        var sure = NormalDistribution.Quantile(1 - Confidence.Chance / controls.Count);
        var ruling = controls.Any(c => Math.Abs(c.Loss.Value) - sure * c.Loss.U > Limits.Tolerated) ? Ruling.Contradicted : size <= Limits.Tolerated ? Ruling.Holds : Ruling.NotShownYet;
        var word = worst.Loss.Value >= 0 ? "lost" : "gained";
        return new Decision(
            ruling,
            $"Control {worst.Code} {word} {Phrase.With(100 * size, "%")} (standard uncertainty {Phrase.With(100 * worst.Loss.U, "%")}), the most of {Phrase.Count(controls.Count, "control")}; {Phrase.With(100 * Limits.Tolerated, "%")} are tolerated.",
            $"one-sided 95 % bound of each control's loss against {Phrase.With(100 * Limits.Tolerated, "%")}")
        {
            Numbers = [.. controls.Select(c => Deciding.Plain($"loss in control {c.Code}", 100 * c.Loss.Value, "%", $"standard uncertainty {Phrase.With(100 * c.Loss.U, "%")}"))],
            Questions = ruling == Ruling.Contradicted && worst.Loss.Value > 0
                ? [new("Q37", $"Without your sorbent {Phrase.With(100 * size, "%")} is gone too: what is your material's share?")]
                : [],
            Next = ruling == Ruling.Contradicted
                ? new("Correct uptakes with the measured control, or repeat where controls stay clean: another vessel material, a filter test, a lower pH.", null, [], $"control loss surely above {Phrase.With(100 * Limits.Tolerated, "%")}")
                : new($"Run three more controls at the conditions of {worst.Code}.", 3, [worst.Code], "three separate vessels (common practice)"),
        };
    }

    private static ImmutableArray<string> NotCovered(IEnumerable<Series> series, Vessel[] controls)
    {
        if (controls.Length == 0)
            return [];
        return [.. series
            .Where(s => s.Varied is { } p && (p == BatchProperties.InitialConcentration || p == BatchProperties.StartPh))
            .SelectMany(s => s.Levels
                .Where(l => !controls.Any(c => l.Vessels.Any(v => StudyControls.Reaches(c, v))))
                .Select(l => $"{s.Name} has no control at {s.Varied!.Title} {Phrase.With(l.X, s.Varied.Unit)}."))
            .Take(3)];
    }
}

/// <summary>What a control without sorbent lost.</summary>
/// <param name="Code">Code of the control.</param>
/// <param name="Loss">Share of the start concentration that is gone, (C0 − C)/C0; negative for a gain; no unit.</param>
public sealed record ControlLoss(string Code, Measured Loss);
