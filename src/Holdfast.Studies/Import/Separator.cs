using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>What separates the cells of a text that does not say it.</summary>
internal static class Separator
{
    private const int LinesSniffed = 400;
    private const int LinesWithHeading = 100;
    private const int FewestFramed = 3;
    private const double FewestEven = 0.3;
    private const double SurelyEven = 0.8;
    private const int FewestOfNumbers = 3;
    private const double FewestWithComma = 0.5;

    /// <summary>
    /// The right separator cuts most lines into the same number of cells, and gives a heading that means something. Spaces also stand between words, and a comma may be a decimal
    /// mark: each counts only where no more telling separator does.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">Its file, for what is said when a limit is passed.</param>
    public static string Of(string text, string fileName)
    {
        // Rows framed by bars are told by their frame, whatever stands in the lines around them.
        if (text.Split('\n', LinesSniffed).Count(l => l.TrimStart().StartsWith('|') && l.TrimEnd().EndsWith('|')) >= FewestFramed)
            return "|";
        // Nobody types a tab within a cell: where most lines hold one and are cut alike, it parts the cells, whatever words stand above.
        if (TabsPart(text, fileName))
            return "tab";
        var best = (Name: ",", Score: 0.0, Headings: 0, OverRows: 0, Even: 0.0);
        foreach (var separator in CellSplitter.Separators)
        {
            if (separator == "," && CommasAreInNumbers(text, fileName))
                continue;
            if (separator == "spaces" && (best.OverRows >= 2 || best.Even >= SurelyEven))
                break;
            var rows = new CellSplitter(text, separator, fileName).Rows(LinesSniffed).Select(r => DelimitedText.Unframed(r, separator)).Where(r => !r.IsBlank).ToList();
            var cut = rows.Where(r => r.Cells.Length > 1).ToList();
            if (cut.Count == 0)
                continue;
            var widths = cut.GroupBy(r => r.Cells.Length).MaxBy(g => g.Count())!;
            var even = widths.Count() / (double)rows.Count;
            var known = rows.Take(LinesWithHeading).Select(r => (r.Cells.Length, Known: TableLayout.KnownHeadings(r))).ToList();
            var headings = known.Select(r => r.Known).DefaultIfEmpty(0).Max();
            // A title with commas in it, "25 °C, 3 h", is no heading over rows that are wider.
            var overRows = known.Where(r => r.Length >= widths.Key).Select(r => r.Known).DefaultIfEmpty(0).Max();
            var score = even + (headings >= 2 ? 1 : 0) + (separator is "tab" or ";" or "|" ? 0.25 : 0) + (0.05 * Math.Min(headings, 8));
            if (even >= FewestEven && (separator == "spaces" && best.Score > 0 ? headings >= 2 && even >= best.Even : score > best.Score))
                best = (separator, score, headings, overRows, even);
        }

        return best.Name;
    }

    private static bool TabsPart(string text, string fileName)
    {
        var rows = new CellSplitter(text, "tab", fileName).Rows(LinesSniffed).Where(r => !r.IsBlank).ToList();
        var cut = rows.Where(r => r.Cells.Length > 1).ToList();
        return cut.Count >= FewestFramed && cut.Count * 2 >= rows.Count && cut.GroupBy(r => r.Cells.Length).Max(g => g.Count()) >= cut.Count * SurelyEven;
    }

    // "0,00798 → 18,735" in columns of tabs, "1,912.5   17.101" in columns of spaces: commas that stand in numbers alone part no cells.
    private static bool CommasAreInNumbers(string text, string fileName)
    {
        foreach (var separator in CellSplitter.Separators.Where(s => s != ","))
        {
            var rows = new CellSplitter(text, separator, fileName).Rows(LinesSniffed).Where(r => !r.IsBlank).ToList();
            var numbers = rows.Where(r => r.Cells.Count(c => !c.IsBlank && IsNumber(c)) > 1 && r.Cells.All(c => !c.Text.Contains(',', StringComparison.Ordinal) || IsNumber(c))).ToList();
            if (numbers.Count >= FewestOfNumbers && numbers.Count >= rows.Count * FewestEven && numbers.Count(r => r.Cells.Any(c => c.Text.Contains(',', StringComparison.Ordinal))) >= numbers.Count * FewestWithComma
                && (separator != "spaces" || text.Contains("  ", StringComparison.Ordinal)))
                return true;
        }

        return false;

        static bool IsNumber(Cell cell) => CellText.Read(cell.Text, null) is not CellText.NotANumber;
    }
}
