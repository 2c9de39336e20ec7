using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The calibration is fit for its purpose": standards from another stock read back right, the line does not drift, blanks are blank,
/// duplicates agree. A straight line through its own standards shows none of these.
/// </summary>
/// <remarks>Check standards 90 to 110 %, drift 5 %, duplicates 20 % (all common practice); duplicates below five detection limits are not judged by ratio.</remarks>
public sealed class CalibrationFit : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 5;

        /// <summary>Largest change of the check standard over a run, %.</summary>
        public const double Drift = 5;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "calibration-fit";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The calibration of {run} is fit for its purpose.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => evidence.Runs.Select(r => Claim.Raised(Id, ("run", r.Run.Id)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var run = CalibrationRun.Of(claim, evidence);
        var window = FixedMargin.Of(evidence, MarginKind.CheckStandard);
        var decision = run is null
            ? Decision.Missing("No calibrated run was found. Read five standards, ten blanks, and a check standard from another stock.")
            : Decide(Quality(run, evidence), window.Low, window.High);
        return (decision with { Warnings = [.. decision.Warnings, .. window.Notes] }).On(
            claim, Phrase.Sentence(claim, Wording, ("run", run?.Run.Id ?? claim.Words("run") ?? "the run")),
            run is null ? null : $"run {run.Run.Id}", []);
    }

    /// <summary>Judges a calibration.</summary>
    /// <param name="found">What the run says about itself.</param>
    /// <param name="low">Lower end of the window for check standards, %.</param>
    /// <param name="high">Upper end, %.</param>
    public static Decision Decide(CalibrationQuality found, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(found);
        var failed = found.Recoveries.Where(r => r < low || r > high).ToArray();
        var drift = found.Recoveries.Length >= 2 ? found.Recoveries[^1] - found.Recoveries[0] : (double?)null;
        var apart = found.Pairs.Where(d => !d.Passes).ToArray();
        var dirty = found.BlankConcentration is { } blank && found.DetectionLimit is { } lod && Math.Abs(blank) > lod;
        var ruling = failed.Length > 0 || dirty ? Ruling.Contradicted : Ruling.Holds;
        return new Decision(ruling, Reason(found, failed, drift, dirty, low, high), "recovery of check standards, drift, blanks, duplicates")
        {
            IsUntested = found.Recoveries.IsEmpty,
            Numbers =
            [
                .. found.Recoveries.Select((r, i) => Deciding.Plain($"check standard {Phrase.Number(i + 1)}", r, "%")),
                .. drift is { } d ? [Deciding.Plain("drift from the first check standard to the last", d, "%")] : Array.Empty<Deciding>(),
                .. found.Pairs.Select((d, i) => Deciding.Plain($"duplicate {Phrase.Number(i + 1)}: relative difference", d.RelativeDifferencePercent, "%")),
                .. found.BlankConcentration is { } b ? [Deciding.Plain("mean of the blanks", b, "mg/L")] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("levels", found.Levels >= Limits.Levels, $"the line rests on {Phrase.Count(found.Levels, "level")}; {Limits.Levels} are needed"),
                new("check standard", found.Recoveries.Length > 0, "no check standard from another stock was read"),
                new("drift", drift is not { } by || Math.Abs(by) <= Limits.Drift, $"the check standard drifts by {Phrase.With(drift ?? 0, "%")}; {Phrase.With(Limits.Drift, "%")} is tolerated"),
                new("duplicates", apart.Length == 0, $"{Phrase.Count(apart.Length, "duplicate")} differ by more than {Phrase.With(Duplicates.LargestPercent, "%")}"),
            ],
            Next = new(
                failed.Length > 0 || Math.Abs(drift ?? 0) > Limits.Drift
                    ? "Recalibrate and read again all samples since the last check standard that passed."
                    : "Read a check standard from another stock after every 10 samples, and one reagent blank per 10 vessels.",
                null, [], "one check standard per ten readings (common practice)"),
        };
    }

    private static string Reason(CalibrationQuality found, double[] failed, double? drift, bool dirty, double low, double high)
    {
        var checks = found.Recoveries.IsEmpty ? "No check standard was read"
            : failed.Length > 0 ? $"{failed.Length} of {Phrase.Count(found.Recoveries.Length, "check standard")} fail, the worst at {Phrase.With(failed.MaxBy(r => Math.Abs(r - 100)), "%")}"
            : $"{Phrase.Count(found.Recoveries.Length, "check standard")} recover {Phrase.Span(found.Recoveries.Min(), found.Recoveries.Max(), "%")}";
        var moved = drift is { } d ? $", drift {Phrase.With(d, "%")}" : "";
        var blanks = found.BlankConcentration is { } b
            ? $" Blanks read {Phrase.With(b, "mg/L")} on average{(dirty ? $", above the detection limit of {Phrase.With(found.DetectionLimit ?? 0, "mg/L")}: contamination" : "")}."
            : "";
        return $"{checks} (window {Phrase.Span(low, high, "%")}){moved}; the line rests on {Phrase.Count(found.Levels, "level")}.{blanks}";
    }

    private static CalibrationQuality Quality(CalibratedRun run, Evidence evidence)
    {
        var limit = run.Curve?.Limits.Detection.Value;
        var blanks = CalibrationRun.Lender(run, evidence)?.Blanks ?? [];
        return new(
            run.Curve is { } curve ? curve.Standards.Select(s => s.Level).Distinct().Count() : 0,
            [.. run.Checks.OrderBy(c => c.Order).Select(c => c.Recovery).OfType<double>()],
            [.. Pairs(run, evidence)],
            run.Curve is { } line && !blanks.IsEmpty && InversePrediction.Solve(line.Fit, blanks.Average()) is { } blank ? blank : null,
            limit);
    }

    /// <summary>Samples of which two portions were read in the run, in the undiluted sample's mg/L.</summary>
    private static IEnumerable<Duplicates> Pairs(CalibratedRun run, Evidence evidence)
        => from sample in evidence.Study.Readings
               .Where(r => string.Equals(r.Run, run.Run.Id, StringComparison.Ordinal) && r.Value is not null && !evidence.Study.IsStruck(r))
               .GroupBy(r => r.Sample, StringComparer.Ordinal)
           where evidence.Study.Sample(sample.Key)?.Role is SampleRole.Vessel or SampleRole.Spike or SampleRole.StartSolution
           let portions = sample.GroupBy(r => (r.Portion, r.Dilution))
               .Select(g => run.Curve is { } c && InversePrediction.Solve(c.Fit, g.Average(r => r.Value!.Value)) is { } x ? x * g.Key.Dilution : (double?)null)
               .OfType<double>().ToArray()
           where portions.Length == 2 && portions[0] + portions[1] > 0
           select new Duplicates(portions[0], portions[1], run.Curve?.Limits.Detection.Value);
}

/// <summary>What a run says about its own calibration.</summary>
/// <param name="Levels">Levels of the line.</param>
/// <param name="Recoveries">Check standards in the order they were read, % of what they are.</param>
/// <param name="Pairs">Samples read from two separate portions, mg/L.</param>
/// <param name="BlankConcentration">Mean of the reagent blanks, mg/L, or null.</param>
/// <param name="DetectionLimit">Detection limit, mg/L, or null.</param>
public sealed record CalibrationQuality(
    int Levels, ImmutableArray<double> Recoveries, ImmutableArray<Duplicates> Pairs, double? BlankConcentration, double? DetectionLimit);
