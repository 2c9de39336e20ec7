using Holdfast.Amounts;

namespace Holdfast.Calibration;

/// <summary>A sample read on a curve: the number with its trail, or the reason why there is none.</summary>
/// <param name="SampleId">The sample.</param>
/// <param name="Kind">Where the reading fell.</param>
/// <param name="MeanReading">Mean of its readings, in the unit of the readings.</param>
/// <param name="Readings">How many readings.</param>
/// <param name="Dilution">Dilution factor, 1 or more; no unit.</param>
/// <param name="Signed">Concentration in the undiluted sample, sign kept; null when there is no number.</param>
/// <param name="Prediction">The step back on the curve, before dilution; null when there is no number.</param>
/// <param name="Below">The censored result, when the reading is below the critical value.</param>
/// <param name="NextDilution">The factor to try next, when the reading is above the top standard; no unit.</param>
/// <param name="Findings">Caveats and refusals.</param>
public sealed record ReadBack(
    string SampleId,
    ReadBackKind Kind,
    double MeanReading,
    int Readings,
    Measured Dilution,
    Measured? Signed,
    InversePrediction? Prediction,
    Censored? Below,
    double? NextDilution,
    IReadOnlyList<Finding> Findings);

/// <summary>Where a sample's reading fell.</summary>
public enum ReadBackKind
{
    /// <summary>Between the lowest and the top standard.</summary>
    InRange,

    /// <summary>Above detection, below the lowest standard: a number with a flag.</summary>
    BelowLowestStandard,

    /// <summary>Above the critical value, below the detection limit: seen, hardly measured.</summary>
    BelowDetectionLimit,

    /// <summary>Below the critical value: printed as "&lt; limit", kept with its sign.</summary>
    NotDetected,

    /// <summary>Above the top standard: no number.</summary>
    AboveTop,

    /// <summary>The curve has no such reading: no number.</summary>
    OffCurve,
}
