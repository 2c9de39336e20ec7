using System.Text.RegularExpressions;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>Lengths in running lines, many on each, under lines that name powder and image: set as a table with a row a particle. What stands in brackets is left out where a line says that it does not count.</summary>
internal static partial class RunningLengths
{
    private const string PowderWords = "powder sample pulver poudre polvo polvere proszek probe echantillon muestra amostra campione probka";
    private const string ImageWords = "image img micrograph photo picture bild aufnahme imagen imagem immagine obraz zdjecie cliche foto snimek";
    private const string BracketWords = "bracket* klammer* crochet* corchete* colchete* parentesis parenteses parentes* nawias*";

    // Fewer numbers, or fewer on a line, are a table of something else.
    private const int FewestRows = 3, FewestNumbers = 30, FewestOnALine = 4;

    /// <summary>The grid as a table, or the grid itself where it holds no running lines of lengths.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid Laid(Grid grid)
    {
        (GridRow Row, string Text)[] lines = [.. grid.Rows.Where(r => !r.IsBlank).Select(r => (r, Whole(grid, r)))];
        var runs = lines.Where(l => Numbers(l.Text) is { Length: >= FewestOnALine }).ToArray();
        if (runs.Length < FewestRows || runs.Sum(l => Numbers(l.Text)!.Length) < FewestNumbers)
            return grid;
        var words = lines.Where(l => Numbers(l.Text) is null).ToArray();
        var said = words.Select(w => SizeTable.NameOf(w.Text) is { } name && SizeUnits.InLines([w.Row]) is { } unit ? $"{name} ({unit})" : null).FirstOrDefault(s => s is not null);
        if (said is null || words.Any(w => SizeTable.IsOfOthers(w.Text)))
            return grid;
        var bracketed = runs.Any(l => l.Text.Contains('[', StringComparison.Ordinal) || l.Text.Contains('(', StringComparison.Ordinal));
        if (bracketed && !words.Any(w => MeasuredTable.Has(w.Text, BracketWords)))
            return grid;
        var rows = new List<GridRow>();
        var (powder, image, begun) = ("", "", false);
        foreach (var (row, text) in lines)
        {
            if (Numbers(text) is { } numbers && (begun || numbers.Length >= FewestOnALine))
            {
                begun = true;
                rows.AddRange(numbers.Where(n => char.IsAsciiDigit(n[0])).Select(n => new GridRow(row.Number, [new(powder), new(image), new(n)])));
                continue;
            }

            begun = false;
            if (Named(text, PowderWords) is { } named)
                (powder, image) = (named.Name, "");
            else if (Named(text, ImageWords) is { } picture)
                image = $"{picture.Key} {picture.Name}";
        }

        var first = lines[0].Row.Number;
        return grid with
        {
            Separator = null,
            Rows = [.. words.Where(w => w.Row.Number < rows[0].Number && Named(w.Text, PowderWords) is null && Named(w.Text, ImageWords) is null).Select(w => w.Row with { Cells = [new(w.Text)] }),
                new(first, [new(rows.Exists(r => r.Cells[0].Text.Length > 0) ? "powder" : ""), new("image"), new(said)]), .. rows],
        };
    }

    // The line as it was written: a comma in a number may have parted it.
    private static string Whole(Grid grid, GridRow row) => string.Join(grid.Separator is "," or ";" or "|" ? grid.Separator : " ", row.Cells.Select(c => c.Content)).Trim();

    // Numbers alone, some perhaps in brackets; null for a line with anything else.
    private static string[]? Numbers(string text)
    {
        string[] tokens = [.. text.Split([' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries)];
        return tokens.Length > 0 && Array.TrueForAll(tokens, t => Number().IsMatch(t)) ? tokens : null;
    }

    // "*** Powder DY-1 ***" names DY-1, "Picture 2 (x 80 000):" the picture 2.
    private static (string Key, string Name)? Named(string text, string words)
    {
        string[] parts = [.. text.Trim(' ', '*', '#', '-', '=', ':').Split([' ', ':', '('], StringSplitOptions.RemoveEmptyEntries)];
        return parts.Length >= 2 && MeasuredTable.Has(parts[0], words) ? (parts[0], parts[1]) : null;
    }

    [GeneratedRegex(@"^[\[(]?\d+([.,]\d+)?[\])]?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
