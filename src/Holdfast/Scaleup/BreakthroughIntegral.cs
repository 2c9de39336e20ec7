using Holdfast.Amounts;

namespace Holdfast.Scaleup;

/// <summary>
/// A breakthrough curve without a model: times by the trapezium rule, which cannot overshoot. A cubic spline can: on the textbook run of Geankoplis it gives
/// a used time beyond the break time.
/// </summary>
/// <remarks>C. J. Geankoplis, Transport Processes and Unit Operations, example 12.3-1, for the times and the unused length.</remarks>
public static class BreakthroughIntegral
{
    /// <summary>C/C0 that a run must reach before the total time means a capacity; common practice.</summary>
    public const double RunUntil = 0.95;

    /// <summary>Total time ∫(1 − C/C0)dt over the run, in the unit of time: the time in which the bed took all that it took.</summary>
    /// <param name="times">Times, rising.</param>
    /// <param name="ratios">C/C0 in the same order; no unit.</param>
    public static T TotalTime<T>(ReadOnlySpan<double> times, ReadOnlySpan<T> ratios) where T : struct, IReal<T>
    {
        Require(times, ratios.Length);
        T total = 0;
        for (var i = 1; i < times.Length; i++)
            total += (times[i] - times[i - 1]) * (1 - 0.5 * (ratios[i] + ratios[i - 1]));
        return total;
    }

    /// <summary>First time at which C/C0 reaches a share, by straight interpolation, in the unit of time; null when it never does.</summary>
    /// <param name="times">Times, rising.</param>
    /// <param name="ratios">C/C0 in the same order; no unit.</param>
    /// <param name="share">C/C0 of the break, between 0 and 1.</param>
    public static T? BreakTime<T>(ReadOnlySpan<double> times, ReadOnlySpan<T> ratios, double share) where T : struct, IReal<T>
    {
        Require(times, ratios.Length);
        for (var i = 1; i < times.Length; i++)
        {
            if (ratios[i].Value >= share && ratios[i - 1].Value < share)
                return times[i - 1] + (times[i] - times[i - 1]) * (share - ratios[i - 1]) / (ratios[i] - ratios[i - 1]);
        }

        return null;
    }

    /// <summary>Used time ∫(1 − C/C0)dt up to the break, in the unit of time; null when the break is never reached.</summary>
    /// <param name="times">Times, rising.</param>
    /// <param name="ratios">C/C0 in the same order; no unit.</param>
    /// <param name="share">C/C0 of the break, between 0 and 1.</param>
    public static T? UsedTime<T>(ReadOnlySpan<double> times, ReadOnlySpan<T> ratios, double share) where T : struct, IReal<T>
    {
        if (BreakTime(times, ratios, share) is not { } end)
            return null;
        T used = 0;
        var i = 1;
        for (; i < times.Length && times[i] < end.Value; i++)
            used += (times[i] - times[i - 1]) * (1 - 0.5 * (ratios[i] + ratios[i - 1]));
        return used + (end - times[i - 1]) * (1 - 0.5 * (ratios[i - 1] + share));
    }

    /// <summary>Length of bed not used at the break, L·(1 − used/total), in the unit of length; it stays the same at another depth and equal velocity.</summary>
    /// <param name="length">Bed length.</param>
    /// <param name="used">Used time.</param>
    /// <param name="total">Total time, in the same unit.</param>
    public static T UnusedLength<T>(T length, T used, T total) where T : struct, IReal<T> => length * (1 - used / total);

    /// <summary>Capacity q = C0·(Q·t_total − V_held)/m, mg/g, less the liquid that bed and tubes hold.</summary>
    /// <param name="total">Total time, min.</param>
    /// <param name="c0">Inlet concentration, mg/L.</param>
    /// <param name="flow">Flow, L/min.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    /// <param name="held">Liquid held in bed and tubes, L.</param>
    public static T Capacity<T>(T total, T c0, T flow, T mass, T held) where T : struct, IReal<T> => c0 * (flow * total - held) / mass;

    private static void Require(ReadOnlySpan<double> times, int ratios)
    {
        if (times.Length != ratios || times.Length < 2)
            throw new ArgumentException(FormattableString.Invariant($"There are {times.Length} times and {ratios} ratios; two or more of each are needed."), nameof(times));
        for (var i = 1; i < times.Length; i++)
        {
            if (!(times[i] > times[i - 1]))
                throw new ArgumentException("Times must rise.", nameof(times));
        }
    }
}
