using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>The readings of one standard.</summary>
/// <param name="Value">Concentration, in the unit of the standards.</param>
/// <param name="Readings">Its readings, in the unit of the reading.</param>
public sealed record Level(double Value, Summary Readings)
{
    /// <summary>Groups readings by level, lowest first.</summary>
    /// <param name="standards">All readings of a run.</param>
    public static IReadOnlyList<Level> Of(IEnumerable<StandardReading> standards)
        => [.. standards.GroupBy(s => s.Level).OrderBy(g => g.Key).Select(g => new Level(g.Key, Summary.Of([.. g.Select(s => s.Signal)])))];
}
