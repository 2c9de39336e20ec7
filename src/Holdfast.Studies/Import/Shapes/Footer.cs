using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Rows under a table that are no samples: averages, sums, notes.</summary>
internal static class Footer
{
    private const int WordsOfANote = 3, FewestOfAFullRow = 3;
    private static readonly HashSet<string> OfAPivot = ["grand total", "gesamtergebnis", "total general", "total geral", "totale complessivo", "eindtotaal", "suma koncowa", "celkovy soucet", "genel toplam", "overall"];

    // The line of a form that shows how to fill it in.
    private static readonly HashSet<string> OfATemplate = ["example", "exemplo", "beispiel", "exemple", "ejemplo", "esempio", "voorbeeld", "przyklad", "priklad", "ornek", "exempel", "contoh"];
    private static readonly string[] CheckWeights = ["prufgewicht", "pruefgewicht", "kalibriergewicht", "justiergewicht", "eichgewicht", "testweight", "calibrationmass", "testmass", "odwaznik", "ijkgewicht", "pesadecontrol", "zavazi"];

    /// <summary>True where the label names a mean, a scatter or a sum, and no sample: "Average", "Standardabweichung", "RSD (%)".</summary>
    /// <param name="label">Cell of the code column.</param>
    public static bool IsSummary(string label) => Summaries.Of(label);

    private static readonly ByShape<bool> Summaries = new(label =>
    {
        var tokens = Lexicon.Tokens(label);
        if (tokens.IsEmpty)
            return false;
        if (OfAPivot.Contains(string.Join(' ', tokens)) || (tokens.Length == 1 && OfATemplate.Contains(tokens[0])))
            return true;
        // "class average", "group mean"
        if (tokens.Length == 2 && tokens[1].Length > 2 && Lexicon.OfToken(tokens[1]).Contains(HeadingWord.Mean))
            return true;
        var first = Lexicon.OfToken(tokens[0]).ToList();
        return (first.Contains(HeadingWord.Mean) && !tokens[0].All(char.IsDigit) && tokens[0].Length > 2) || (first.Contains(HeadingWord.Spread) && !first.Contains(HeadingWord.Sample))
            || (tokens.Length == 1 && tokens[0] is "sum" or "total" or "summe" or "gesamt" or "min" or "max" or "minimum" or "maximum" or "somme" or "suma" or "soma" or "somma" or "n" or "mw" or "moy" or "gem" or "prom" or "med" or "ort" or "sr" or "mittelw");
    });

    /// <summary>True where the label names the weight that a balance is checked with: "Prüfgewicht", "check weight", "poids étalon".</summary>
    /// <param name="label">Cell of the code column.</param>
    public static bool IsCheckWeight(string label) => Weighings.Of(label);

    private static readonly ByShape<bool> Weighings = new(label =>
    {
        var tokens = Lexicon.Tokens(label);
        return Array.Exists(CheckWeights, w => string.Concat(tokens).Contains(w, StringComparison.Ordinal))
            || (Lexicon.Of(tokens) is var words && words.Contains(HeadingWord.Mass) && words.Overlaps([HeadingWord.Check, HeadingWord.Standard, HeadingWord.Control]));
    });

    /// <summary>True where the label names a limit of the method: "LOQ", "Bestimmungsgrenze".</summary>
    /// <param name="label">The only words of a row.</param>
    public static bool IsLimit(string label) => Lexicon.Tokens(label) is [{ Length: > 1 } first, ..] && Lexicon.OfToken(first).Contains(HeadingWord.Limit);

    /// <summary>Rows of the table, and lines that only say something.</summary>
    /// <param name="rows">Rows under the heading.</param>
    public static (ImmutableArray<GridRow> Body, ImmutableArray<GridRow> Lines) Split(ImmutableArray<GridRow> rows)
    {
        var full = rows.Where(r => !r.IsBlank).Select(r => r.Filled).Order().ToList() is { Count: > 0 } filled ? filled[filled.Count / 2] : 0;
        var lines = rows.Where((r, i) => IsLine(r) || IsTitleBelow(rows, i) || (full >= FewestOfAFullRow && IsRemarkBetween(r, full))).ToHashSet();
        if (lines.Count == 0)
            return (rows, []);
        ImmutableArray<GridRow> body = [.. rows.Where(r => !lines.Contains(r))];
        while (body.Length > 0 && body[^1].IsBlank)
            body = body.RemoveAt(body.Length - 1);
        return (body, [.. rows.Where(lines.Contains)]);
    }

    // "Discussion", alone behind a blank row under a table whose rows are fuller: what follows is text.
    private static bool IsTitleBelow(ImmutableArray<GridRow> rows, int at)
        => at > 1 && rows[at - 1].IsBlank && rows[at].Filled == 1 && rows[at].Cells[0] is { Kind: CellKind.Text, IsBlank: false } cell && !cell.Text.Any(char.IsDigit)
            && rows.Take(at).Max(r => r.Filled) > 2 && rows.Skip(at).All(r => r.Filled <= 1);

    // "rinsed electrode", "-- new rack --" between full rows, or a sentence cut at its comma: words, and no number of a row.
    private static bool IsRemarkBetween(GridRow row, int full)
    {
        var cells = row.Cells.Where(c => !c.IsBlank).ToList();
        if (cells.Count == 0 || cells.Count * 2 > full || cells.Exists(c => c.Kind != CellKind.Text || TableLayout.IsNumberLike(c)))
            return false;
        return cells.Count == 1 ? !cells[0].Text.Any(char.IsDigit) && cells[0].Text.Any(char.IsWhiteSpace)
            : cells[0].Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length >= WordsOfANote && row.Cells[0] == cells[0] && row.Cells[1] == cells[1];
    }

    // One cell with a sentence in it: a code has no three words.
    private static bool IsLine(GridRow row)
    {
        if (row.Filled != 1)
            return false;
        var cell = row.Cells.First(c => !c.IsBlank);
        return cell.Kind == CellKind.Text && (cell.Text[0] is '#' or '*' or '!' || (cell.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length >= WordsOfANote && cell.Text.Any(char.IsLetter))
            || (cell.Text.Contains('=', StringComparison.Ordinal) && cell.Text.Any(char.IsDigit)));
    }
}
