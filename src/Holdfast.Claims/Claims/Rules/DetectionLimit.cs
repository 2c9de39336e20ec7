using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The method detects {limit}": the stated limit lies above what the blanks allow. The standard deviation of a few blanks is itself badly
/// known, so the detection limit has an interval.
/// </summary>
/// <remarks>
/// 3.3 s/b (ICH Q2, the standard deviation of independent blanks over the slope of the line used), with the 95 % chi-square interval of s.
/// </remarks>
public sealed class DetectionLimit : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest independent blanks.</summary>
        public const int Blanks = 10;

        /// <summary>Largest ratio of the lowest standard to the limit that is stated; no unit.</summary>
        public const double LowestStandard = 10;
    }

    /// <inheritdoc/>
    public string Id => "detection-limit";

    /// <inheritdoc/>
    public string Wording => "The method detects {limit}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["run"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => CalibrationRun.Of(claim, evidence) is { } run ? [Claim.Raised(CalibrationFit.RuleId, ("run", run.Run.Id))] : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var run = CalibrationRun.Of(claim, evidence);
        var blanks = run is null ? [] : CalibrationRun.Lender(run, evidence)?.Blanks ?? [];
        var decision = run is null ? Decision.Missing("No calibrated run was found. Read standards and ten reagent blanks.")
            : claim.In("limit", "mg/L") is not { } limit || limit <= 0 ? Decision.NotNamed(claim, "limit", "0.020 mg/L")
            : run.Curve is not { } curve || Found(blanks, curve.Fit.SlopeAt(0)) is not { } found
                ? Decision.Missing($"{run.Run.Id} has {Phrase.Count(blanks.Length, "reagent blank")} with scatter and {(run.Curve is null ? "no curve" : "a curve")}: read {Limits.Blanks} independent blanks and five standards.")
            : Decide(found, limit, curve.Lowest);
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("limit", claim.Words("limit") ?? "the limit")),
            run is null ? null : $"run {run.Run.Id}, {Phrase.Count(blanks.Length, "reagent blank")}", []);
    }

    /// <summary>3.3 standard deviations of the blanks over the slope, or null without scatter.</summary>
    /// <param name="blanks">Independent blanks, in the unit of the signal.</param>
    /// <param name="slope">Slope of the curve near zero, signal per mg/L.</param>
    public static Calibration.DetectionLimit? Found(IReadOnlyList<double> blanks, double slope)
        => DetectionLimits.OfBlanks(blanks, slope).FirstOrDefault(l => l.Definition == LimitDefinition.ThreePointThreeSd);

    /// <summary>Judges a stated detection limit.</summary>
    /// <param name="found">The detection limit by the blanks, in the unit given, with its interval.</param>
    /// <param name="stated">The concentration said to be detected, in the unit given.</param>
    /// <param name="lowestStandard">Lowest standard above zero, in the unit given, or null.</param>
    /// <param name="unit">Unit of all three.</param>
    public static Decision Decide(Calibration.DetectionLimit found, double stated, double? lowestStandard, string unit = "mg/L")
    {
        ArgumentNullException.ThrowIfNull(found);
        if (found.Interval is not { } interval)
            return Decision.Missing($"The detection limit has no interval: read {Limits.Blanks} independent blanks.");
        var (limit, low, high, blanks) = (found.Value, interval.Low, interval.High, found.N);
        var ruling = stated >= high ? Ruling.Holds : stated < low ? Ruling.Contradicted : Ruling.NotShownYet;
        return new Decision(
            ruling,
            $"The detection limit is {Phrase.With(limit, unit)} (95 % interval {Phrase.Number(low)} to {Phrase.With(high, unit)}) from n = {Phrase.Count(blanks, "blank")}; the claim says {Phrase.With(stated, unit)}.",
            "3.3 standard deviations of the blanks over the slope, chi-square interval")
        {
            Numbers = [new("detection limit", limit, low, high, unit, $"95 % interval from chi-square, {Phrase.Number(blanks - 1)} degrees of freedom"), Deciding.Plain("stated", stated, unit)],
            Gates =
            [
                new("blanks", blanks >= Limits.Blanks, $"{Phrase.Count(blanks, "blank")} were read; {Limits.Blanks} are needed"),
                new("lowest standard", lowestStandard is not { } l || l <= Limits.LowestStandard * stated, $"the lowest standard, {Phrase.With(lowestStandard ?? 0, unit)}, lies more than {Phrase.Number(Limits.LowestStandard)} times above what is stated"),
            ],
            Warnings = ["No samples spiked at the stated concentration were compared with blanks."],
            Questions =
            [
                .. lowestStandard > Limits.LowestStandard * limit ? [new Question("Q45", $"Your lowest standard is {Phrase.With(lowestStandard.Value, unit)}: what is the lowest concentration you actually saw?")] : Array.Empty<Question>(),
                .. blanks < Limits.Blanks ? [new Question("Q46", $"How well do you know a standard deviation from {Phrase.Number(blanks)} values?")] : Array.Empty<Question>(),
            ],
            Next = new(
                $"Read {Limits.Blanks} independent blanks and 7 samples spiked at {Phrase.With(2 * stated, unit)}, spread over 3 days.", 17, [Phrase.With(2 * stated, unit)],
                "ten blanks and seven low spikes at one to three times the stated limit (common practice)"),
        };
    }
}
