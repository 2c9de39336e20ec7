using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Notebook pages typed as sentences: amounts with units in running text, and no table.</summary>
internal static class Prose
{
    private const int FewestLines = 3;

    /// <summary>The first line with two amounts in it, where several lines are like it; null for other files.</summary>
    /// <param name="tables">What the file was cut into.</param>
    public static string? In(IEnumerable<(TableLayout Layout, TableKind Kind)> tables)
    {
        var lines = tables.SelectMany(t => t.Layout.Grid.Rows).Where(r => !r.IsBlank).Select(r => string.Join(r.Cells.Length > 1 && r.Cells.All(c => c.Kind == CellKind.Text) ? "," : " ", r.Cells.Where(c => !c.IsBlank).Select(c => c.Text))).Where(HoldsAmounts).ToList();
        return lines.Count >= FewestLines ? lines.Find(l => !Lexicon.Of(l).Contains(HeadingWord.Start)) ?? lines[0] : null;
    }

    private static bool HoldsAmounts(string line)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return Enumerable.Range(0, Math.Max(0, words.Length - 1)).Count(i => char.IsDigit(words[i][0]) && HeadingReading.UnitOf(words[i + 1].Trim('.', ',', ';', ')')) is Amounts.UnitText.Known { Unit.IsOne: false }) >= 2;
    }
}
