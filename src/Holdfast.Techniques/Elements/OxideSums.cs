using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>Whether percentages of oxides are the parts of one powder: "TiO2" and "Al2O3" may as well be names of powders, each with a percentage of its own.</summary>
internal static class OxideSums
{
    // What is lost on ignition, and what was not looked for, is missing from the whole; a total rarely lies above it.
    private const double Low = 80, LowWhereSaid = 50, High = 102;

    /// <summary>True where every place comes near to 100 %, or to half of it where the grid speaks of oxides.</summary>
    /// <param name="table">The amounts.</param>
    /// <param name="grid">Where they stand.</param>
    public static bool AreWhole(IElementTable table, Grid grid)
    {
        var low = grid.Rows.Any(r => r.Cells.Any(c => MeasuredTable.Has(c.Text, AmountWords.Oxides))) ? LowWhereSaid : Low;
        DecimalMark[] marks = table.Marks().Mark is { } mark ? [mark] : [DecimalMark.Point, DecimalMark.Comma];
        return Array.Exists(marks, m => table.Lines(m) is { IsEmpty: false } lines
            && lines.GroupBy(l => l.Spot, StringComparer.Ordinal).All(g => g.Sum(l => l.Mass ?? l.Atomic ?? 0) is var sum && sum >= low && sum <= High));
    }
}
