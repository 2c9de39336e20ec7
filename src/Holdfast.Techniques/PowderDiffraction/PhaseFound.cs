using System.Collections.Immutable;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A phase whose lines a pattern was held against.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Cell">Its cell as stated; null for a list of lines without indices.</param>
/// <param name="Lines">Its lines inside the scan.</param>
/// <param name="Match">What was matched.</param>
/// <param name="HasIntensities">True for a structure or a list with intensities; false for a bare cell, of which any line may be absent.</param>
internal sealed record PhaseFound(string Name, UnitCell? Cell, ImmutableArray<ReferenceLine> Lines, LineMatch Match, bool HasIntensities)
{
    /// <summary>Area of the matched lines, unit of the readings × degree.</summary>
    public double Area => Match.Matched.Sum(m => m.Line.Area);
}
