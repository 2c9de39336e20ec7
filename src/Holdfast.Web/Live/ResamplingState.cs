using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Web.Live;

/// <summary>How the resampling of a series stands.</summary>
/// <param name="Version">The entry of the study it belongs to.</param>
/// <param name="Series">The series.</param>
/// <param name="Counting">Resamples of each curve done, and asked for.</param>
public sealed record ResamplingState(long Version, string Series, Counting Counting)
{
    /// <summary>Nothing was asked yet.</summary>
    public static ResamplingState Idle { get; } = new(0, "", default);

    /// <summary>True while it is at work.</summary>
    public bool IsRunning { get; init; }

    /// <summary>The intervals, once all resamples are done; null before, after a stop, and when they are void.</summary>
    public Table? Result { get; init; }

    /// <summary>How it ended, where there is no result; empty for nothing to say.</summary>
    public string Words { get; init; } = "";

    /// <summary>What to announce: that it runs, each quarter of the way, and how it ended. The count between them is there to be looked at.</summary>
    public string Said => this switch
    {
        { IsRunning: true, Counting.Share: { Length: > 0 } share } => $"{Series}: {share} of the resamples done.",
        { IsRunning: true } => $"Resampling {Series} in the background.",
        { Result: not null } => "All resamples are done; the table has both intervals.",
        _ => Words,
    };
}
