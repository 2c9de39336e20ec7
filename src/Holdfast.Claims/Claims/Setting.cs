using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Claims;

/// <summary>
/// Replicate values at one setting: what a comparison needs of a level. n counts separate vessels, never repeated readings of one.
/// </summary>
/// <param name="X">The setting, in its own unit.</param>
/// <param name="Values">One value for each vessel, all in one unit.</param>
public sealed record Setting(double X, ImmutableArray<double> Values)
{
    /// <summary>
    /// The same values with their propagated uncertainty, when it is known: the larger of this and the scatter of the replicates counts.
    /// </summary>
    public ImmutableArray<Measured> Propagated { get; init; } = [];

    /// <summary>The levels of a series, for one quantity; vessels without it and levels left empty are passed over.</summary>
    /// <param name="series">The series.</param>
    /// <param name="quantity">Which quantity of a vessel.</param>
    internal static ImmutableArray<Setting> Of(Series series, Func<Vessel, Measured?> quantity)
        => [.. series.Levels.Select(l => Of(l.X, l.Vessels, quantity)).Where(s => s.Values.Length > 0)];

    /// <summary>One setting from the vessels at it.</summary>
    /// <param name="x">The setting, in its own unit.</param>
    /// <param name="vessels">The vessels.</param>
    /// <param name="quantity">Which quantity of a vessel.</param>
    internal static Setting Of(double x, IEnumerable<Vessel> vessels, Func<Vessel, Measured?> quantity)
    {
        Measured[] found = [.. vessels.Select(quantity).Where(m => m is { } v && double.IsFinite(v.Value)).Select(m => m!.Value)];
        return new(x, [.. found.Select(m => m.Value)]) { Propagated = [.. found] };
    }

    /// <summary>The values as a group of an analysis of variance.</summary>
    /// <param name="unit">Unit of the setting, for the group's name.</param>
    internal Group Group(string unit) => new(Phrase.With(X, unit), Values);

    /// <summary>Mean of the values.</summary>
    internal double Mean => Values.Average();

    /// <summary>Mean with the propagated uncertainty, or null when that is not known.</summary>
    internal Measured? PropagatedMean
        => Propagated.Length == Values.Length && Propagated.Length > 0
            ? Propagated.Aggregate((a, b) => a + b) / Propagated.Length
            : null;
}
