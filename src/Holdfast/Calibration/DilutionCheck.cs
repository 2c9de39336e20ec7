using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>Two dilutions of one sample that both fell into range must agree; else the matrix or a slip speaks.</summary>
/// <param name="Difference">First less second; what they share of the curve cancels.</param>
/// <param name="Interval">95 % interval of the difference, in the unit of the sample.</param>
public sealed record DilutionCheck(Measured Difference, Interval Interval)
{
    /// <summary>True when the interval holds 0.</summary>
    public bool Agree => Interval.Contains(0);

    /// <summary>Compares two results of one sample.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="first">Result of one dilution.</param>
    /// <param name="second">Result of the other, same unit.</param>
    public static Outcome<DilutionCheck> Of(string sample, Measured first, Measured second)
    {
        ArgumentException.ThrowIfNullOrEmpty(sample);
        var difference = first - second;
        var half = difference.U == 0 ? 0 : StudentDistribution.TwoSided(0.95, difference.DegreesOfFreedom) * difference.U;
        var check = new DilutionCheck(difference, new(difference.Value - half, difference.Value + half, 0.95));
        return new(check, check.Agree ? [] : [CalibrationFindings.DilutionsDisagree(sample, first.Value, second.Value)]);
    }
}
