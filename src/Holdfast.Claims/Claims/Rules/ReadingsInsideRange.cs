using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "Every sample was read inside the calibrated range": a reading above the highest standard is no number. A sample that has another
/// reading inside the range, after dilution, is fine.
/// </summary>
public sealed class ReadingsInsideRange : IClaimRule
{
    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "readings-inside-range";

    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "Every sample of {run} was read inside the calibrated range.";

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
        var readings = run is null ? [] : Portions(run, evidence);
        var decision = run is null ? Decision.Missing("No calibrated run was found.")
            : run.Curve is not { } curve ? Decision.Missing($"{run.Run.Id} has no calibration curve: it has no standards and names no run whose curve it uses.")
            : Decide(readings, curve.TopReading);
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("run", run?.Run.Id ?? claim.Words("run") ?? "the run")),
            run is null ? null : $"run {run.Run.Id}, {Phrase.Count(readings.Length, "portion")}", readings.Select(r => r.Sample));
    }

    /// <summary>Judges readings against the highest standard.</summary>
    /// <param name="readings">Sample, mean signal and dilution of each portion that counts.</param>
    /// <param name="highest">Mean reading of the highest standard in use, in the unit of the signal.</param>
    public static Decision Decide(IReadOnlyList<(string Sample, double Signal, double Dilution)> readings, double highest)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count == 0)
            return Decision.Missing("The run has no readings of samples.");
        var above = readings.Where(r => r.Signal > highest).ToArray();
        string[] samples = [.. readings.Select(r => r.Sample).Distinct(StringComparer.Ordinal)];
        string[] without = [.. samples.Where(s => readings.Where(r => r.Sample == s).All(r => r.Signal > highest))];
        var worst = without.Length == 0 ? default : above.Where(r => without.Contains(r.Sample, StringComparer.Ordinal)).MaxBy(r => r.Signal);
        var next = without.Length == 0 ? null : RangeGuard.NextDilution(worst.Dilution, worst.Signal, highest);
        return new Decision(
            without.Length > 0 ? Ruling.Contradicted : Ruling.Holds,
            without.Length > 0
                ? $"{Phrase.Listed(without.Take(3))}{(without.Length > 3 ? $" and {Phrase.Number(without.Length - 3)} more" : "")} read above the highest standard only: {Phrase.Number(worst.Signal)} against {Phrase.Number(highest)}, n = {Phrase.Count(readings.Count, "portion")} of {Phrase.Count(samples.Length, "sample")}."
                : $"Each of {Phrase.Count(samples.Length, "sample")} has a portion at or below the highest standard ({Phrase.Number(highest)}), n = {Phrase.Count(readings.Count, "portion")}; the highest is {Phrase.Number(readings.Where(r => r.Signal <= highest).Max(r => r.Signal))}.",
            "each portion against the highest standard")
        {
            Numbers = [Deciding.Plain("portions above the highest standard", above.Length), Deciding.Plain("samples without a portion inside the range", without.Length), Deciding.Plain("signal of the highest standard", highest)],
            Warnings = above.Length > 0 && without.Length == 0 ? [$"{Phrase.Count(above.Length, "portion")} above the highest standard {(above.Length == 1 ? "was" : "were")} left out; the samples have others inside."] : [],
            Next = new(
                $"Dilute {Phrase.Listed(without.Take(5))} {(next is { } factor ? Phrase.Number(factor) : "more than 1000")} times and read again.", null, [.. without],
                "highest reading over highest standard, with a quarter to spare"),
        };
    }

    private static ImmutableArray<(string Sample, double Signal, double Dilution)> Portions(CalibratedRun run, Evidence evidence)
    {
        var roles = evidence.Study.Samples.ToLookup(s => s.Code, s => s.Role, StringComparer.Ordinal);
        return [.. evidence.Study.Readings
            .Where(r => string.Equals(r.Run, run.Run.Id, StringComparison.Ordinal) && r.Value is not null && !evidence.Study.IsStruck(r))
            .Where(r => !roles[r.Sample].Any(role => role is SampleRole.Standard or SampleRole.Blank or SampleRole.CheckStandard))
            .GroupBy(r => (r.Sample, r.Portion, r.Dilution))
            .Select(g => (g.Key.Sample, g.Average(r => r.Value!.Value), g.Key.Dilution))];
    }
}
