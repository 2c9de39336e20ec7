using System.Collections.Immutable;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>One run with its standards, blanks and what was made of them.</summary>
/// <param name="Run">The run.</param>
/// <param name="Standards">Standards that count: known concentration in mg/L, and what was shown.</param>
/// <param name="Blanks">Signals of the reagent blanks that count.</param>
/// <param name="Findings">Caveats.</param>
public sealed record CalibratedRun(
    Run Run, ImmutableArray<(double Known, double Signal)> Standards, ImmutableArray<double> Blanks, ImmutableArray<Finding> Findings);
