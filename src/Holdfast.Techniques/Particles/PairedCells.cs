using System.Text.RegularExpressions;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>Two sizes in one cell, "102.1 × 32.5" under "length × width (nm)": a column each.</summary>
internal static partial class PairedCells
{
    private const int FewestRows = 10;

    /// <summary>The grid with such a column cut in two; the grid itself where there is none.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid Apart(Grid grid)
    {
        var width = grid.Rows.Select(r => r.Cells.Length).DefaultIfEmpty(0).Max();
        var column = Enumerable.Range(0, width).FirstOrDefault(c => grid.Rows.Count(r => Pair().IsMatch(r.At(c).Text)) is >= FewestRows and var pairs && grid.Rows.Count(r => !r.At(c).IsBlank) <= 2 * pairs, -1);
        return column < 0 ? grid : grid with { Rows = [.. grid.Rows.Select(r => r.Cells.Length <= column ? r : r with { Cells = [.. r.Cells[..column], .. Cut(r.At(column)), .. r.Cells[(column + 1)..]] })] };
    }

    // A heading has its unit once, at the end.
    private static Cell[] Cut(Cell cell)
    {
        if (Pair().Match(cell.Text) is { Success: true } sizes)
            return [new(sizes.Groups["a"].Value), new(sizes.Groups["b"].Value)];
        return Words().Match(cell.Text) is { Success: true } words
            ? [new($"{words.Groups["a"].Value.Trim()} {words.Groups["unit"].Value}".Trim()), new($"{words.Groups["b"].Value.Trim()} {words.Groups["unit"].Value}".Trim())] : [cell, default];
    }

    [GeneratedRegex(@"^(?<a>\d+([.,]\d+)?)\s*[×xX*]\s*(?<b>\d+([.,]\d+)?)$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Pair();

    [GeneratedRegex(@"^(?<a>[\p{L} .]+)\s*(×|\*| [xX] )\s*(?<b>[\p{L} .]+)(?<unit>[\[(/].*)?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Words();
}
