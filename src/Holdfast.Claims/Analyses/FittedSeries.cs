using System.Collections.Immutable;
using Holdfast.BatchSorption;
using Holdfast.Fitting;

namespace Holdfast.Claims.Analyses;

/// <summary>Every curve of one family fitted to one series.</summary>
/// <param name="Series">The series.</param>
public sealed record FittedSeries(Series Series)
{
    /// <summary>
    /// The fits, one for each curve, all through the one error model of the series: what is stated of each vessel, shared parts shared, and the scatter
    /// between vessels. A curve that the data refuse is here too, with its reason.
    /// </summary>
    public ImmutableArray<FitResult> Fits { get; init; } = [];

    /// <summary>The plateau test of a kinetic series; null for an isotherm and where the times do not allow one.</summary>
    public Plateau? Plateau { get; init; }

    /// <summary>Caveats on the series as a whole.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The settled, comparable fit of least AICc, or null.</summary>
    public FitResult? Best => Fits.Where(f => f.IsFit && f.Aicc is not null).MinBy(f => f.Aicc!.Value);

    /// <summary>Settled fits within two AICc units of the best: the data do not tell them apart.</summary>
    public IReadOnlyList<FitResult> Undistinguished => CurveComparison.NotToldApart(Fits);
}
