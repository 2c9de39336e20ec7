using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>A list of codes and numbers without headings, under a title that says what the numbers are and in which unit: "weighing log, powder into bottles, mg".</summary>
internal static class TitledList
{
    private const int FewestRows = 3;

    /// <summary>The grid with the title as the heading of its numbers, or null where it is no such list.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid? Turn(Grid grid)
    {
        var filled = grid.Rows.Where(r => !r.IsBlank).ToList();
        var list = filled.FindIndex(IsItem);
        if (list < 1 || filled.Count - list < FewestRows || !filled.Skip(list).All(IsItem) || filled.Skip(list).Select(r => r.At(0).Text).Distinct(StringComparer.OrdinalIgnoreCase).Count() < filled.Count - list)
            return null;
        // Its title is one line of words; two cells would be headings of their own, amounts settings.
        var titles = filled.Take(list).Select(r => string.Join(", ", r.Cells.Where(c => !c.IsBlank).Select(c => c.Text))).ToList();
        if (filled.Take(list).Any(r => r.Filled == 2) || titles.Exists(t => t.Any(char.IsDigit)) || titles.FindAll(IsHeading) is not [var title])
            return null;
        var heading = new GridRow(filled[titles.IndexOf(title)].Number, [new Cell("Sample"), new Cell(title)]);
        return grid with { Rows = [.. filled.Take(list).Where((_, i) => titles[i] != title), heading, .. filled.Skip(list)] };
    }

    private static bool IsItem(GridRow row) => row.Cells.Length == 2 && row.At(0) is { IsBlank: false } code && code.Text.Any(char.IsLetter) && !code.Text.Contains(' ', StringComparison.Ordinal) && TableLayout.IsNumeric(row.At(1));

    private static bool IsHeading(string title) => HeadingReading.Of(title) is { Unit: UnitText.Known { Unit.IsOne: false } } heading && ColumnGuess.Of(heading, default) is { Property: not null };
}
