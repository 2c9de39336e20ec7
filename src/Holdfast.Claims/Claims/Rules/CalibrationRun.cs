using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>The calibrated run that a claim speaks of, and its standards up to a concentration.</summary>
internal static class CalibrationRun
{
    /// <summary>The run a claim names; without a name the first run with standards; or null.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static CalibratedRun? Of(Claim claim, Evidence evidence)
        => claim.Words("run") is { } name
            ? evidence.Runs.FirstOrDefault(r => string.Equals(r.Run.Id, name, StringComparison.OrdinalIgnoreCase))
            : evidence.Runs.FirstOrDefault(r => r.Standards.Length > 0);

    /// <summary>The run whose standards it is read on: itself, or the one it borrows from; null when there is none.</summary>
    /// <param name="run">The run.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static CalibratedRun? Lender(CalibratedRun run, Evidence evidence)
        => run.BorrowedFrom is not { } from ? run : evidence.Runs.FirstOrDefault(r => string.Equals(r.Run.Id, from, StringComparison.Ordinal));

    /// <summary>The standards up to a concentration.</summary>
    /// <param name="run">The run.</param>
    /// <param name="top">Highest concentration, mg/L, or null for all.</param>
    public static ImmutableArray<StandardReading> UpTo(CalibratedRun run, double? top)
        => [.. run.Standards.Where(s => top is not { } t || s.Known <= t * 1.0001).Select(s => new StandardReading(s.Known, s.Signal))];
}
