using System.Collections.Immutable;
using Holdfast.Diffraction;
using Holdfast.Studies;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A phase of the study to compare patterns with: a structure, of which lines are computed, or a list of its lines.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Cell">Its cell; null for a list of lines without indices.</param>
/// <param name="Lines">Its lines under a radiation between two angles, degrees of 2θ.</param>
internal sealed record KnownPhase(string Name, UnitCell? Cell, Func<Radiation, double, double, ImmutableArray<ReferenceLine>> Lines)
{
    /// <summary>The phase a measurement holds, or null when it holds none.</summary>
    /// <param name="measurement">Any measurement.</param>
    public static KnownPhase? Of(Measurement measurement)
    {
        if (StructureReading.Of(measurement) is { } structure)
            return new(measurement.Sample, structure.Cell, (radiation, from, to) => ComputedPattern.Of(structure, radiation, from, to));
        if (!ListedLines.IsReference(measurement))
            return null;
        var lines = ListedLines.AsReference(measurement);
        return new(measurement.Sample, CellOfPlanes.Of([.. lines.Where(l => l.Planes is not null).Select(l => (l.Planes!.Value, l.Spacing))]),
            (radiation, from, to) => [.. lines.Where(l => Bragg.TwoTheta(l.Spacing, radiation.Ka1) is { } at && at >= from && at <= to)]);
    }
}
