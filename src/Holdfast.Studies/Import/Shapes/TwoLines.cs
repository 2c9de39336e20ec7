using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Headings on two lines: "Concentration (mg/L)" over "before" and "after".</summary>
internal static class TwoLines
{
    private const int LongestPart = 30, MostCounted = 6;

    /// <summary>The heading with the line below or above joined to it, and how many lines below it took.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="heading">Place of the heading.</param>
    public static (GridRow Heading, int Below) Join(ImmutableArray<GridRow> rows, int heading)
    {
        if (heading + 1 < rows.Length && IsPart(rows[heading], rows[heading + 1]))
            return (Both(rows[heading], rows[heading + 1], rows[heading].Number), 1);
        if (heading > 0 && IsPart(rows[heading - 1], rows[heading]) && rows[heading - 1].Filled >= 2)
            return (Both(rows[heading - 1], rows[heading], rows[heading].Number), 0);
        return (rows[heading], 0);
    }

    // The lower line continues the upper one where it says before and after, first and second, under a blank to the right of a shared title.
    private static bool IsPart(GridRow upper, GridRow lower)
    {
        if (lower.IsBlank || upper.IsBlank || lower.Cells.Any(TableLayout.IsNumeric) || upper.Cells.Any(TableLayout.IsNumeric) || (TableLayout.IsUnits(lower) && !AreCounted(upper, lower)))
            return false;
        // "# strontium, 20 degrees C, 24 h" is a line of settings.
        if (upper.At(0).Text.StartsWith('#') || upper.Cells.Any(c => !c.IsBlank && CellParts.Split(c.Text) is not null))
            return false;
        if (upper.Cells.Concat(lower.Cells).Any(c => c.Text.Length > LongestPart || (!c.IsBlank && c.Text.Any(char.IsDigit) && c.Text.Contains(',', StringComparison.Ordinal))))
            return false;
        var shared = Enumerable.Range(1, Math.Max(upper.Cells.Length, lower.Cells.Length)).Any(i => upper.At(i).IsBlank && !lower.At(i).IsBlank && !upper.At(i - 1).IsBlank && !lower.At(i - 1).IsBlank);
        return (shared && lower.Cells.Any(c => Lexicon.Of(c.Text).Overlaps([HeadingWord.Start, HeadingWord.End, HeadingWord.Full, HeadingWord.Empty, HeadingWord.Replicate, HeadingWord.Mean, HeadingWord.Boat]) || c.Text.Length == 1)) || (shared && AreCounted(upper, lower));
    }

    // "L1", "L2", "L3" under one title: readings of one thing, counted.
    private static bool AreCounted(GridRow upper, GridRow lower)
    {
        var counted = Enumerable.Range(0, lower.Cells.Length).Where(i => !lower.At(i).IsBlank).ToList();
        return counted.Count is >= 2 and <= MostCounted && !upper.At(counted[0]).IsBlank && counted.Skip(1).All(i => upper.At(i).IsBlank)
            && counted.Select(i => HeadingWords.Unnumbered(lower.At(i).Text)).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1
            && counted.TrueForAll(i => char.IsAsciiDigit(lower.At(i).Text[^1])) && counted.Select(i => lower.At(i).Text).Distinct(StringComparer.Ordinal).Count() == counted.Count;
    }

    private static GridRow Both(GridRow upper, GridRow lower, int number)
    {
        var cells = ImmutableArray.CreateBuilder<Cell>();
        var carried = "";
        for (var i = 0; i < Math.Max(upper.Cells.Length, lower.Cells.Length); i++)
        {
            var (above, below) = (upper.At(i).Text, lower.At(i).Text);
            if (above.Length > 0)
                carried = above;
            else if (below.Length > 0)
                above = carried;
            // "Concentration (mg/L)" over "before": the unit stays last.
            var header = Amounts.Header.Read(above);
            cells.Add(new Cell(below.Length == 0 ? above : above.Length == 0 ? below
                : header.Unit is Amounts.UnitText.Known { Unit: { IsOne: false } unit } && Amounts.Header.Read(below).Unit is Amounts.UnitText.Absent ? $"{header.Name} {below} ({unit.Plain})"
                // "on the wheel" over "h": a unit alone is that of the words above.
                : header.Unit is Amounts.UnitText.Absent && HeadingReading.UnitOf(below) is Amounts.UnitText.Known { Unit.IsOne: false } ? $"{above} ({below})" : $"{above} {below}"));
        }

        return new GridRow(number, cells.ToImmutable());
    }
}
