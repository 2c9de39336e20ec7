namespace Holdfast.Statistics;

/// <summary>Two one-sided tests against a margin fixed before the data were seen. "Not shown to differ" is not "equal"; this is.</summary>
/// <remarks>D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657–680 (from memory): same as the 1 − 2α interval lying inside the margin.</remarks>
/// <param name="Estimate">What was estimated.</param>
/// <param name="Low">Lower margin, in the unit of the estimate.</param>
/// <param name="High">Upper margin, in the unit of the estimate.</param>
/// <param name="PLow">One-sided p against "at or below the lower margin".</param>
/// <param name="PHigh">One-sided p against "at or above the upper margin".</param>
/// <param name="Interval">The interval that must lie inside the margin, 90 % for the usual 5 %.</param>
public sealed record Equivalence(Estimate Estimate, double Low, double High, double PLow, double PHigh, Interval Interval)
{
    /// <summary>Judges an estimate against margins.</summary>
    /// <param name="estimate">A difference, or a ratio on either scale.</param>
    /// <param name="low">Lower margin, in the unit of the estimate.</param>
    /// <param name="high">Upper margin, in the unit of the estimate.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static Equivalence Of(Estimate estimate, double low, double high, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        Probability.Require(alpha);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(low, high);
        return new(estimate, low, high, estimate.PAbove(low), estimate.PBelow(high), estimate.Interval(1 - 2 * alpha));
    }

    /// <summary>The larger of the two one-sided p.</summary>
    public double P => Math.Max(PLow, PHigh);

    /// <summary>True when the interval lies inside the margin.</summary>
    public bool IsShown => Interval.LiesWithin(Low, High);
}
