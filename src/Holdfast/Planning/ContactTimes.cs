namespace Holdfast.Planning;

/// <summary>Contact times that inform: spaced geometrically over the rise, with three on the plateau.</summary>
/// <remarks>
/// From an eighth of the half-time to five half-times geometrically, then 7.5 and 10 half-times, so that first-order uptake is followed to 99.9 % and
/// second-order to 91 % of qe. Spacing and reach from reference/sorption/reach.csv; the first sample at five separation times is common practice.
/// </remarks>
public static class ContactTimes
{
    /// <summary>A list of times.</summary>
    /// <param name="halfTime">Time to half the uptake supposed, above 0.</param>
    /// <param name="separationTime">Time that separating liquid and solid takes, same unit, 0 or above.</param>
    /// <param name="count">Number of times, 7 or more.</param>
    public static IReadOnlyList<double> Propose(double halfTime, double separationTime, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(halfTime);
        ArgumentOutOfRangeException.ThrowIfNegative(separationTime);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 7);
        var first = Math.Max(halfTime / 8, 5 * separationTime);
        var late = Math.Max(5 * halfTime, 4 * first);
        var rise = count - 2;
        return
        [
            .. Enumerable.Range(0, rise).Select(i => first * Math.Pow(late / first, i / (rise - 1.0))),
            1.5 * late,
            2 * late,
        ];
    }

    /// <summary>What the plan should say when separating takes too long for the rate.</summary>
    /// <param name="halfTime">Time to half the uptake supposed, above 0.</param>
    /// <param name="separationTime">Time that separating takes, same unit.</param>
    /// <returns>True when no sample can be taken before half the uptake without the separation blurring it.</returns>
    public static bool SeparationIsTooSlow(double halfTime, double separationTime) => 5 * separationTime > halfTime;
}
