using Holdfast.Calibration;

namespace Holdfast.Fluorescence;

/// <summary>Detection limits of a sensor that dims, from blanks prepared one by one. Ten reads of one cuvette are one blank: their scatter is often five times too small.</summary>
/// <remarks>The definitions and chi-square intervals are those of <see cref="DetectionLimits"/>; here the blanks are put on the axis of the line.</remarks>
public static class SensorLimits
{
    /// <summary>Fewest separate preparations for a limit without caution (common practice).</summary>
    public const int FewestPreparations = 5;

    /// <summary>Every named limit on the line of F0/F, with the mean blank as F0; in the unit of Q.</summary>
    /// <param name="blanks">Signals of separate blanks, above 0, any unit.</param>
    /// <param name="slope">Slope of F0/F near zero, one over the unit of Q.</param>
    public static IReadOnlyList<DetectionLimit> OnLine(IReadOnlyList<double> blanks, double slope)
    {
        var mean = Mean(blanks);
        return DetectionLimits.OfBlanks([.. blanks.Select(f => mean / f)], slope);
    }

    /// <summary>Every named limit from the relative scatter of the blanks over a fitted constant, s0/(F0·K); in the unit of Q.</summary>
    /// <param name="blanks">Signals of separate blanks, above 0, any unit.</param>
    /// <param name="constant">Quenching constant near zero, one over the unit of Q.</param>
    public static IReadOnlyList<DetectionLimit> OfConstant(IReadOnlyList<double> blanks, double constant)
    {
        var mean = Mean(blanks);
        return DetectionLimits.OfBlanks([.. blanks.Select(f => f / mean)], -constant);
    }

    /// <summary>What must be said beside a limit.</summary>
    /// <param name="limit">The limit, in the unit of Q.</param>
    /// <param name="preparations">Separately prepared blanks behind it.</param>
    /// <param name="lowestLevel">Lowest level above zero that was read, in the unit of Q; null when none.</param>
    /// <param name="unit">Unit of Q, for the sentence.</param>
    public static IReadOnlyList<Finding> Says(DetectionLimit limit, int preparations, double? lowestLevel, string unit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        var findings = new List<Finding>();
        if (preparations < FewestPreparations)
            findings.Add(FluorescenceFindings.FewPreparations(preparations));
        if (lowestLevel is { } lowest && lowest > limit.Value)
            findings.Add(FluorescenceFindings.LimitBelowLowest(limit.Value, lowest, unit));
        return findings;
    }

    private static double Mean(IReadOnlyList<double> blanks)
    {
        ArgumentNullException.ThrowIfNull(blanks);
        if (blanks.Count == 0 || blanks.Any(b => !(b > 0)))
            throw new ArgumentException("Blanks of a sensor are one signal or more, all above 0.", nameof(blanks));
        return blanks.Average();
    }
}
