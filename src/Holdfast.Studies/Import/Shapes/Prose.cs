using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Notebook pages typed as sentences: amounts with units in running text, and no table.</summary>
internal static class Prose
{
    private const int FewestLines = 3, MostLines = 60, WordsOfASentence = 4, WordsANumber = 4;

    /// <summary>The first line with two amounts in it, where several lines are like it; null for other files.</summary>
    /// <param name="tables">What the file was cut into.</param>
    public static string? In(IEnumerable<(TableLayout Layout, TableKind Kind)> tables)
    {
        var lines = tables.SelectMany(t => t.Layout.Grid.Rows).Where(r => !r.IsBlank).Select(r => Line(r, r.Cells.Length > 1 && r.Cells.All(c => c.Kind == CellKind.Text) ? "," : null)).Where(HoldsAmounts).ToList();
        return lines.Count >= FewestLines ? lines.Find(l => !Lexicon.Of(l).Contains(HeadingWord.Start)) ?? lines[0] : null;
    }

    /// <summary>True for a short text of which no line looks like a row of a table: at most one number a line that has no unit behind it. Dates do not count.</summary>
    /// <param name="grid">The text.</param>
    public static bool IsNotes(Grid grid)
    {
        if (grid.Sheet is not null || grid.Rows.Length > MostLines)
            return false;
        var lines = grid.Rows.Where(r => !r.IsBlank).Select(r => Line(r, grid.Separator)).ToList();
        return lines.Count > 0 && lines.TrueForAll(l => BareNumbers(l) is var bare && (bare <= 1 || bare * WordsANumber <= l.Split([' ', ',']).Count(w => w.Any(char.IsLetter)))) && lines.Exists(l => l.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Length >= WordsOfASentence);
    }

    /// <summary>A text as its lines, each in one cell.</summary>
    /// <param name="grid">The text.</param>
    public static Grid AsLines(Grid grid) => grid with { Rows = [.. grid.Rows.Select(r => r.IsBlank ? r with { Cells = [] } : r with { Cells = [new Cell(Line(r, grid.Separator))] })] };

    /// <summary>A line of text as it stood before it was cut into cells.</summary>
    /// <param name="row">Its cells.</param>
    /// <param name="separator">What it was cut at.</param>
    public static string Line(GridRow row, string? separator) => string.Join(separator switch { "," => ",", ";" => "; ", _ => " " }, row.Cells.Where(c => !c.IsBlank).Select(c => c.Text));

    private static int BareNumbers(string line)
    {
        var words = line.Split([' ', ',', ';', '=', ':', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        // "9 June 2026": what stands beside a month is its day and year.
        bool IsOfADate(int i) => (i > 0 && DateText.IsMonth(words[i - 1])) || (i + 1 < words.Length && DateText.IsMonth(words[i + 1]));
        return Enumerable.Range(0, words.Length).Count(i => double.TryParse(words[i], System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _)
            && !(i + 1 < words.Length && HeadingReading.UnitOf(words[i + 1].Trim('.', ',', ';', ')')) is Amounts.UnitText.Known { Unit.IsOne: false } or Amounts.UnitText.Ambiguous)
            && !IsOfADate(i) && !(i > 0 && words[i - 1].Equals("pH", StringComparison.OrdinalIgnoreCase)));
    }

    private static bool HoldsAmounts(string line)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return Enumerable.Range(0, Math.Max(0, words.Length - 1)).Count(i => char.IsDigit(words[i][0]) && HeadingReading.UnitOf(words[i + 1].Trim('.', ',', ';', ')')) is Amounts.UnitText.Known { Unit.IsOne: false }) >= 2;
    }
}
