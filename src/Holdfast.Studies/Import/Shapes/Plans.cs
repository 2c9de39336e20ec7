using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables of what was meant to be done, beside tables that hold results of the same samples.</summary>
internal static class Plans
{
    /// <summary>The table that says what was done to the samples of a plan; null where the table is no plan, or nothing was done yet.</summary>
    /// <param name="layout">The table that may be a plan.</param>
    /// <param name="results">Tables of the file that hold results.</param>
    public static TableLayout? DoneIn(TableLayout layout, ImmutableArray<TableLayout> results)
    {
        if (!Is(layout))
            return null;
        var codes = RowNames(layout);
        return results.FirstOrDefault(l => !Is(l) && RowNames(l) is { Count: > 0 } others && others.Count(codes.Contains) * 2 > others.Count);
    }

    /// <summary>What a table is called: its sheet, its title, or where it stands.</summary>
    /// <param name="layout">The table.</param>
    public static string Name(TableLayout layout) => layout.Grid.Sheet is { } sheet ? "Sheet " + sheet : Settings.TitleOf(layout) ?? "the table in row " + History.Ordinal.Text(layout.Heading?.Number ?? 1);

    private static bool Is(TableLayout layout)
    {
        var headings = Columns.ReadHeadings(layout);
        return headings.Count(h => h.HasAny(HeadingWord.Planned, HeadingWord.Known)) * 2 >= headings.Length - 1 || (layout.Grid.Sheet is { } sheet && Lexicon.Of(sheet).Contains(HeadingWord.Planned));
    }

    private static HashSet<string> RowNames(TableLayout layout)
        => CodeColumns.Of(layout, Columns.ReadHeadings(layout)) is >= 0 and var code ? [.. layout.Body.Select(r => r.At(code).Text).Where(t => t.Length > 0)] : [];
}
