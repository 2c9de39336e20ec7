using System.Collections.Immutable;

namespace Holdfast.Claims.Comparisons;

/// <summary>One series in a line.</summary>
/// <param name="Name">Name of the series, with the setting where its levels stand alone.</param>
/// <param name="Material">The material; null when not recorded.</param>
/// <param name="Water">The water; null when not recorded.</param>
/// <param name="Levels">Its levels, lowest concentration left first.</param>
/// <param name="Curves">The curves that its points do not tell apart, best first; empty where none was fitted.</param>
/// <param name="VesselSd">Scatter of single vessels as a share of the uptake; null without replicates; no unit.</param>
/// <param name="VesselFreedom">Its degrees of freedom.</param>
public sealed record SeriesLine(
    string Name, string? Material, string? Water, ImmutableArray<LevelLine> Levels, ImmutableArray<CurveLine> Curves, double? VesselSd, int VesselFreedom)
{
    /// <summary>Where a published value is written; null for a study's own.</summary>
    public string? Source { get; init; }

    /// <summary>True when every number can be computed with.</summary>
    internal bool IsSound
        => Name is not null && !Levels.IsDefaultOrEmpty && Levels.All(l => l is { IsSound: true }) && Levels.SequenceEqual(Levels.OrderBy(l => l.Left))
            && !Curves.IsDefault && Curves.All(c => c is { IsSound: true }) && (VesselSd ?? 1) > 0 && double.IsFinite(VesselSd ?? 1) && VesselFreedom >= 0;
}
