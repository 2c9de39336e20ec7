using Holdfast.Amounts;

namespace Holdfast.Calibration;

/// <summary>What is known about a run before its curve is chosen. All of it is decided before the samples are read.</summary>
public sealed record CalibrationOptions
{
    /// <summary>Stable name of the run, unique within a study: the sources of uncertainty that its samples share carry it.</summary>
    public string Run { get; init; } = "calibration";

    /// <summary>Unit of the standards, for sentences: "mg/L".</summary>
    public string ConcentrationUnit { get; init; } = "mg/L";

    /// <summary>Unit of the readings, for budgets; empty for absorbance.</summary>
    public string SignalUnit { get; init; } = "";

    /// <summary>Which curve; automatic lets the data speak and says how.</summary>
    public CurveKind? Curve { get; init; }

    /// <summary>Standards above this level are left out, in the run's concentration unit; null takes all.</summary>
    public double? Top { get; init; }

    /// <summary>Weights; null lets the scatter at both ends decide.</summary>
    public Weighting? Weighting { get; init; }

    /// <summary>What to do when the full range bends.</summary>
    public WhenCurved WhenCurved { get; init; } = WhenCurved.ShortenRange;

    /// <summary>Which detection limit is reported and used for censoring.</summary>
    public LimitDefinition Limit { get; init; } = LimitDefinition.ThreePointThreeSd;

    /// <summary>Replicate readings that a sample will get; the limits from the line depend on it.</summary>
    public int SampleReplicates { get; init; } = 3;

    /// <summary>Common factor of all standards, nominally 1, with the uncertainty of the stock behind them; no unit.</summary>
    public Measured StandardScale { get; init; } = 1;

    /// <summary>Names of the stocks the standards were made from; empty when not recorded.</summary>
    public IReadOnlyList<string> Stocks { get; init; } = [];

    /// <summary>Time between the curve and the samples read on it; null when not recorded.</summary>
    public TimeSpan? Age { get; init; }

    /// <summary>The flame line in use, or null; its table value tells whether the instrument behaves.</summary>
    public FlameLine? Flame { get; init; }
}

/// <summary>The shapes a calibration curve may take.</summary>
public enum CurveKind
{
    /// <summary>y = a + b·x.</summary>
    Line,

    /// <summary>y = b·x; only by physics and with an intercept that does not differ from zero.</summary>
    LineThroughZero,

    /// <summary>y = c₀ + c₁·x + c₂·x², inside the standards only.</summary>
    Quadratic,
}

/// <summary>How readings of different levels are weighted.</summary>
public enum Weighting
{
    /// <summary>All alike.</summary>
    Equal,

    /// <summary>1/sd(x)² with sd(x)² = sd₀² + (c·x)² fitted to the replicate variances of all levels together.</summary>
    VarianceFunction,

    /// <summary>1/x; the zero level counts as half the lowest.</summary>
    InverseLevel,

    /// <summary>1/x²; the zero level counts as half the lowest.</summary>
    InverseSquareLevel,
}

/// <summary>What to do when the full range of standards bends.</summary>
public enum WhenCurved
{
    /// <summary>Take the longest straight part from the bottom, at least five levels; else the quadratic.</summary>
    ShortenRange,

    /// <summary>Take the quadratic over the full range where it is allowed; else the straight part.</summary>
    UseQuadratic,
}
