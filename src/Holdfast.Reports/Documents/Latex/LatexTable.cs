using System.Globalization;
using System.Text;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Latex;

/// <summary>A table that may run over pages, its head on each of them; lines above, below and under the head only.</summary>
internal static class LatexTable
{
    // Widths in points, for letters of 8 pt (\footnotesize), which are about half as wide as high; \tabcolsep is set to 3 pt.
    private const double LetterWidth = 4.4;
    private const double HeadLetterWidth = 5;
    private const double CellMargins = 6;
    private const double Spare = 1;

    /// <summary>The table as its rows and columns.</summary>
    /// <param name="table">The table's element.</param>
    public static WrittenTable Read(Element table) => new(table, Asked);

    /// <summary>The source of a table.</summary>
    /// <param name="table">The table's element.</param>
    /// <param name="text">Writes its text.</param>
    /// <param name="width">Width of the text, in points.</param>
    public static string Of(Element table, LatexText text, double width)
    {
        var grid = Read(table);
        var cells = grid.Rows.Select(WrittenTable.Cells).ToArray();
        var widths = grid.Widths(width);
        var to = new StringBuilder();
        to.Append(@"\begin{longtable}[l]{@{}");
        for (var c = 0; c < widths.Length; c++)
        {
            var right = cells.Any(r => c < r.Length && Tree.IsOf(r[c], "number"));
            to.Append(CultureInfo.InvariantCulture, $@">{{{(right ? @"\raggedleft" : @"\raggedright")}\arraybackslash\hspace{{0pt}}}}p{{{widths[c] - CellMargins:0.0}pt}}");
        }

        to.Append("@{}}\n");
        if (Tree.Caption(table) is { } caption)
            to.Append(text.Caption(table.Attribute("id"), caption)).Append(@"\\").Append('\n');
        var head = string.Concat(grid.Rows.Where(grid.IsHead).Select(r => Row(r, text, @"\bfseries ")));
        to.Append("\\toprule\n").Append(head).Append("\\midrule\n\\endfirsthead\n\\toprule\n").Append(head).Append("\\midrule\n\\endhead\n\\bottomrule\n\\endfoot\n");
        foreach (var row in grid.Rows.Where(r => !grid.IsHead(r)))
            to.Append(Row(row, text, ""));
        return to.Append("\\end{longtable}\n").ToString();
    }

    private static string Row(Element row, LatexText text, string look)
        => string.Join(" & ", WrittenTable.Cells(row).Select(c => look + text.Runs(c.Content))) + @" \\" + "\n";

    private static (double Least, double Wanted) Asked(Element cell)
    {
        var letter = WrittenTable.IsHeading(cell) ? HeadLetterWidth : LetterWidth;
        return ((Math.Min(WrittenTable.Unbroken(cell).Max(w => w.Length), LatexLetters.LongWord) * letter) + CellMargins + Spare, (Math.Min(cell.Words.Length, WrittenTable.MostLettersWanted) * letter) + CellMargins + Spare);
    }
}
