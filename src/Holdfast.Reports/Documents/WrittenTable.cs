using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>A table of a document as formats with pages need it: its rows, which of them are its head, and how wide its columns are.</summary>
/// <param name="table">The table's element.</param>
/// <param name="asked">What a cell asks for: the least width at which no word of it is broken, and the width it would like; in any unit.</param>
internal sealed class WrittenTable(Element table, Func<Element, (double Least, double Wanted)> asked)
{
    /// <summary>More letters of a cell than this do not make its column wider.</summary>
    public const int MostLettersWanted = 110;

    // A table of this few letters fits a third of a page and is not broken over pages.
    private const int FewLetters = 1200;

    private const int Halvings = 40;

    private readonly HashSet<Element> heads = Tree.All(table).Where(e => e.Name == "thead").SelectMany(h => h.Content.OfType<Element>()).ToHashSet<Element>(ReferenceEqualityComparer.Instance);

    /// <summary>Its rows, the head first.</summary>
    public Element[] Rows { get; } = [.. Tree.All(table).Where(e => e.Name == "tr")];

    /// <summary>True where it is kept on one page.</summary>
    public bool IsWhole => Rows.Sum(r => r.Words.Length) <= FewLetters;

    /// <summary>The least width of the table at which no word is broken.</summary>
    public double Least => Columns().Sum(c => c.Least);

    /// <summary>True for a row of the head, which stands again on each page.</summary>
    /// <param name="row">The row.</param>
    public bool IsHead(Element row) => heads.Contains(row);

    /// <summary>Cells of a row.</summary>
    /// <param name="row">The row.</param>
    public static Element[] Cells(Element row) => [.. row.Content.OfType<Element>().Where(e => e.Name is "td" or "th")];

    /// <summary>True for a cell that heads a column.</summary>
    /// <param name="cell">The cell.</param>
    public static bool IsHeading(Element cell) => cell.Attribute("scope") == "col";

    /// <summary>True for a cell that is set to the right.</summary>
    /// <param name="cell">The cell.</param>
    public static bool IsToTheRight(Element cell) => Tree.IsOf(cell, "number") || Tree.IsOf(cell, "missing");

    /// <summary>What of a cell stays in one line: a number with its uncertainty, else each word.</summary>
    /// <param name="cell">The cell.</param>
    public static IEnumerable<string> Unbroken(Element cell) => Tree.IsOf(cell, "number") && !IsHeading(cell) ? [cell.Words] : cell.Words.Split(' ');

    /// <summary>
    /// Widths of the columns: each gets its longest word, and what is left raises the narrowest until they have what they would like, so that short cells stay in one
    /// line and long texts share what remains.
    /// </summary>
    /// <param name="width">Width of the text.</param>
    public double[] Widths(double width)
    {
        var columns = Columns();
        var (least, wanted) = (columns.Sum(c => c.Least), columns.Sum(c => c.Wanted));
        if (least >= width)
            return [.. columns.Select(c => c.Least * width / least)];
        if (wanted <= width)
            return [.. columns.Select(c => c.Wanted)];
        // The sum rises with the level, from the least to what is wanted; halving the span finds the level to far below a hundredth of a point.
        var (low, high) = (0.0, columns.Max(c => c.Wanted));
        for (var i = 0; i < Halvings; i++)
        {
            var level = (low + high) / 2;
            (low, high) = columns.Sum(c => Math.Clamp(level, c.Least, c.Wanted)) > width ? (low, level) : (level, high);
        }

        return [.. columns.Select(c => Math.Clamp(low, c.Least, c.Wanted))];
    }

    private (double Least, double Wanted)[] Columns()
    {
        var columns = new (double Least, double Wanted)[Rows.Select(r => Cells(r).Length).DefaultIfEmpty(0).Max()];
        foreach (var row in Rows)
        {
            foreach (var (cell, c) in Cells(row).Select((cell, c) => (cell, c)))
            {
                var (least, wanted) = asked(cell);
                columns[c] = (Math.Max(columns[c].Least, least), Math.Max(columns[c].Wanted, Math.Max(least, wanted)));
            }
        }

        return columns;
    }
}
