namespace Holdfast.Calibration;

/// <summary>How far the slope moved between the standards at the start and at the end of a run.</summary>
/// <param name="Start">Slope at the start.</param>
/// <param name="End">Slope at the end, same unit.</param>
public sealed record Drift(double Start, double End)
{
    /// <summary>Change over the start, signed; no unit.</summary>
    public double Relative => (End - Start) / Start;

    /// <summary>What to do about it (limits of 2, 5 and 10 % by common practice).</summary>
    public DriftRemedy Remedy => Math.Abs(Relative) switch
    {
        <= 0.02 => DriftRemedy.Pool,
        <= 0.05 => DriftRemedy.PoolWithUncertainty,
        <= 0.10 => DriftRemedy.Interpolate,
        _ => DriftRemedy.RefuseRun,
    };

    /// <summary>Relative standard uncertainty of the slope when both sets are pooled: range/√12; no unit.</summary>
    public double RelativeU => Math.Abs(Relative) / Math.Sqrt(12);

    /// <summary>Slope at a moment of the run, straight between start and end, in the unit of the slopes.</summary>
    /// <param name="share">0 at the start, 1 at the end; no unit.</param>
    public double SlopeAt(double share)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(share, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(share, 1);
        return Start + share * (End - Start);
    }

    /// <summary>Judges the drift of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="start">Slope at the start, not 0, any unit.</param>
    /// <param name="end">Slope at the end, same unit.</param>
    public static Outcome<Drift> Of(string run, double start, double end)
    {
        ArgumentException.ThrowIfNullOrEmpty(run);
        ArgumentOutOfRangeException.ThrowIfZero(start);
        var drift = new Drift(start, end);
        return new(drift, drift.Remedy is DriftRemedy.Pool or DriftRemedy.PoolWithUncertainty ? [] : [CalibrationFindings.Drifted(run, drift)]);
    }
}

/// <summary>What to do about a drift.</summary>
public enum DriftRemedy
{
    /// <summary>Pool the standards of start and end.</summary>
    Pool,

    /// <summary>Pool them and carry the drift as an uncertainty.</summary>
    PoolWithUncertainty,

    /// <summary>Interpolate the slope in time and flag the run.</summary>
    Interpolate,

    /// <summary>Refuse the run.</summary>
    RefuseRun,
}
