using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>One run with its standards, blanks and what was made of them.</summary>
/// <param name="Run">The run.</param>
/// <param name="Standards">Standards that count: known concentration in mg/L, and what was shown.</param>
/// <param name="Blanks">Signals of the reagent blanks that count, one for each blank.</param>
/// <param name="Findings">Caveats.</param>
public sealed record CalibratedRun(
    Run Run, ImmutableArray<(double Known, double Signal)> Standards, ImmutableArray<double> Blanks, ImmutableArray<Finding> Findings)
{
    /// <summary>The curve its samples are read on; null when there is none.</summary>
    public CalibrationCurve? Curve { get; init; }

    /// <summary>The run whose curve this one uses, when it has no standards of its own.</summary>
    public string? BorrowedFrom { get; init; }

    /// <summary>Check standards in the order they were read.</summary>
    public ImmutableArray<CheckReading> Checks { get; init; } = [];
}
