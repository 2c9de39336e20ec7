using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>
/// One limit with the definition that makes it mean something. The same data give limits a factor 2 apart, so two limits without
/// definitions cannot be compared.
/// </summary>
/// <param name="Definition">Which definition.</param>
/// <param name="Value">The limit, in the unit of the standards (before dilution).</param>
/// <param name="Interval">95 % interval from the scatter behind it (chi-square), or null where the definition has no sd of its own.</param>
/// <param name="N">Readings behind it.</param>
public sealed record DetectionLimit(LimitDefinition Definition, double Value, Interval? Interval, int N)
{
    /// <summary>The formula in words.</summary>
    public string Formula => Definition switch
    {
        LimitDefinition.CriticalOfBlanks => "critical value: t(0.95) s₀ √(1 + 1/n₀)/b",
        LimitDefinition.DetectionOfBlanks => "detection limit, 5 % and 5 %: δ s₀ √(1 + 1/n₀)/b, δ of noncentral t",
        LimitDefinition.ThreeSd => "3 s₀/b",
        LimitDefinition.ThreePointThreeSd => "3.3 s₀/b",
        LimitDefinition.TenSd => "quantification: 10 s₀/b",
        LimitDefinition.InterceptPlusThreeS => "intercept + 3 s(y/x): 3 s/b",
        LimitDefinition.CriticalOfLine => "critical value of the calibration line",
        LimitDefinition.DetectionOfLine => "detection limit of the calibration line, twice the critical value",
        LimitDefinition.QuantificationOfLine => "quantification on the calibration line, relative 95 % half-width 1/3",
        _ => "t(0.99, n − 1) s of low spikes",
    };
}

/// <summary>Definitions of limits, each with its error rates.</summary>
public enum LimitDefinition
{
    /// <summary>Currie, IUPAC 1995: 5 % false alarms.</summary>
    CriticalOfBlanks,

    /// <summary>Currie, IUPAC 1995: 5 % false alarms and 5 % misses.</summary>
    DetectionOfBlanks,

    /// <summary>Three standard deviations of blanks; error rates not stated.</summary>
    ThreeSd,

    /// <summary>3.3 standard deviations of blanks (ICH Q2); error rates not stated.</summary>
    ThreePointThreeSd,

    /// <summary>Ten standard deviations of blanks, for quantification.</summary>
    TenSd,

    /// <summary>Reading of intercept + 3 s(y/x) (Miller and Miller); error rates not stated.</summary>
    InterceptPlusThreeS,

    /// <summary>Calibration line, in the manner of ISO 11843-2 and DIN 32645: 5 % false alarms.</summary>
    CriticalOfLine,

    /// <summary>Twice the critical value of the line: 5 % and 5 %.</summary>
    DetectionOfLine,

    /// <summary>Where the relative 95 % half-width of a reading on the line is one third.</summary>
    QuantificationOfLine,

    /// <summary>US method limit from seven or more low spikes: 1 % false alarms.</summary>
    MethodOfSpikes,
}
