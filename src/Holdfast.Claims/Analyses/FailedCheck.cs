using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// A check standard outside its window. What was read between the last check that passed before it and the next that passed after it is in doubt until
/// somebody answers: read it again after recalibrating, or strike the check with the reason why it does not speak (common practice).
/// </summary>
/// <param name="Run">The run it was read in.</param>
/// <param name="Check">The check standard.</param>
/// <param name="Low">Lower end of the window, %.</param>
/// <param name="High">Upper end of the window, %.</param>
/// <param name="Samples">Codes of the samples read between the checks that passed.</param>
public sealed record FailedCheck(string Run, CheckReading Check, double Low, double High, ImmutableArray<string> Samples)
{
    private static readonly Analysis<FailedChecks> Known = new(e => new([.. e.Runs.SelectMany(r => In(r, e))]));

    /// <summary>In words, with what to do.</summary>
    public string Sentence
    {
        get
        {
            var read = Check.Recovery is { } recovery ? string.Create(CultureInfo.InvariantCulture, $"reads back at {recovery:0.#} %") : "lies off the line";
            return string.Create(CultureInfo.InvariantCulture,
                $"Check standard {Check.Code} of {Run} {read} (window {Low:0.##} to {High:0.##} %): what was read since the last check that passed is in doubt. Read it again, or strike {Check.Code} with the reason.");
        }
    }

    /// <summary>Every failed check of a study, in the order of its runs.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ImmutableArray<FailedCheck> Of(Evidence evidence) => Known.Of(evidence).All;

    private static IEnumerable<FailedCheck> In(CalibratedRun run, Evidence evidence)
    {
        var window = FixedMargin.Of(evidence, MarginKind.CheckStandard);
        CheckReading[] checks = [.. run.Checks.OrderBy(c => c.Order)];
        for (var i = 0; i < checks.Length; i++)
        {
            if (Passes(checks[i], window))
                continue;
            var (before, after) = (checks[..i].LastOrDefault(c => Passes(c, window))?.Order ?? 0, checks[i..].FirstOrDefault(c => Passes(c, window))?.Order ?? int.MaxValue);
            yield return new(run.Run.Id, checks[i], window.Low, window.High,
            [
                .. evidence.Study.Readings
                    .Where(r => r.Run == run.Run.Id && r.Order > before && r.Order < after && evidence.Study.Sample(r.Sample)?.Role is not (null or SampleRole.Standard or SampleRole.Blank or SampleRole.CheckStandard))
                    .Select(r => r.Sample).Distinct(StringComparer.Ordinal),
            ]);
        }
    }

    private static bool Passes(CheckReading check, FixedMargin window) => check.Recovery is { } recovery && recovery >= window.Low && recovery <= window.High;

    private sealed record FailedChecks(ImmutableArray<FailedCheck> All);
}
