using System.Collections.Immutable;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// Vessels that differ in one thing only. Struck vessels are in <see cref="Struck"/>, never among the levels.
/// </summary>
/// <param name="Name">Name of the series: "KIN-05".</param>
/// <param name="Varied">The property that was varied (contact time, initial concentration, dose, start pH, ...), or null when none was.</param>
/// <param name="Levels">Levels in rising order of the varied property.</param>
/// <param name="Controls">Controls without sorbent of the same series, in any order.</param>
/// <param name="Struck">Struck vessels of the series.</param>
public sealed record Series(
    string Name, Property? Varied, ImmutableArray<Level> Levels, ImmutableArray<Vessel> Controls, ImmutableArray<Vessel> Struck)
{
    /// <summary>All vessels that count, level by level.</summary>
    public IEnumerable<Vessel> Vessels => Levels.SelectMany(l => l.Vessels);
}
