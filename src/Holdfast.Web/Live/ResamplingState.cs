using Holdfast.Reports.Tables;

namespace Holdfast.Web.Live;

/// <summary>How the resampling of a fit stands.</summary>
/// <param name="Version">The entry of the study it belongs to.</param>
/// <param name="Series">The series.</param>
/// <param name="Count">Resamples asked for; 0 before anything was asked.</param>
public sealed record ResamplingState(long Version, string Series, int Count)
{
    /// <summary>Nothing was asked yet.</summary>
    public static ResamplingState Idle { get; } = new(0, "", 0);

    /// <summary>True while it is at work.</summary>
    public bool IsRunning { get; init; }

    /// <summary>Resamples done.</summary>
    public int Done { get; init; }

    /// <summary>Seconds left at the pace so far; null when that is not known yet.</summary>
    public int? SecondsLeft { get; init; }

    /// <summary>The intervals, once all resamples are done; null before, after a stop, and when they are void.</summary>
    public Table? Result { get; init; }

    /// <summary>How it ended, where there is no result; empty for nothing to say.</summary>
    public string Words { get; init; } = "";
}
