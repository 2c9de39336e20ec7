using System.Text.RegularExpressions;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>Lengths in running lines, many on each, under lines that name powder and image: set as a table with a row a particle. What stands in brackets is left out where a line says that it does not count.</summary>
internal static partial class RunningLengths
{
    private const string PowderWords = "powder sample pulver poudre polvo polvere proszek probe echantillon muestra amostra campione probka";
    private const string ImageWords = "image img micrograph photo picture print prints frame bild aufnahme imagen imagem immagine obraz zdjecie cliche foto snimek";
    private const string BracketWords = "bracket* klammer* crochet* corchete* colchete* parentesis parenteses parentes* nawias*";

    // Fewer numbers, or fewer on a line, are a table of something else.
    private const int FewestRows = 3, FewestNumbers = 30, FewestOnALine = 4;

    /// <summary>The grid as a table, or the grid itself where it holds no running lines of lengths.</summary>
    /// <param name="grid">The grid.</param>
    public static Grid Laid(Grid grid)
    {
        (GridRow Row, string Text, string Label, string[]? Numbers)[] lines = [.. grid.Rows.Where(r => !r.IsBlank).Select(r => (r, Whole(grid, r))).Select(l => Parted(l.Item2) is var (label, numbers) ? (l.r, l.Item2, label, numbers) : default)];
        var runs = lines.Where(l => l.Numbers is { Length: >= FewestOnALine }).ToArray();
        if (runs.Length < FewestRows || runs.Sum(l => l.Numbers!.Length) < FewestNumbers)
            return grid;
        var words = lines.Where(l => l.Numbers is null).ToArray();
        var unit = words.Where(w => SizeTable.NameOf(w.Text) is not null).Select(w => SizeUnits.InLines([w.Row])).FirstOrDefault(u => u is not null);
        // "Sizes in nm" above, "measured across the longest way" below: the word that says more is the one that is meant.
        string[] names = [.. words.Select(w => SizeTable.NameOf(w.Text)).OfType<string>()];
        var said = unit is null ? null : $"{names.FirstOrDefault(n => n != SizeTable.AnySize) ?? SizeTable.AnySize} ({unit})";
        if (said is null || words.Any(w => SizeTable.IsOfOthers(w.Text)))
            return grid;
        var bracketed = runs.Any(l => l.Text.Contains('[', StringComparison.Ordinal) || l.Text.Contains('(', StringComparison.Ordinal));
        if (bracketed && !words.Any(w => MeasuredTable.Has(w.Text, BracketWords)))
            return grid;
        var rows = new List<GridRow>();
        var (powder, image, begun) = ("", "", false);
        foreach (var (row, text, label, numbers) in lines)
        {
            // What stands before a colon, or else the whole line, may name powder or image.
            if (Named(label.Length > 0 ? label : text, PowderWords) is { } named)
                (powder, image) = (named.Name, "");
            else if (Named(label.Length > 0 ? label : text, ImageWords) is { } picture)
                image = $"{picture.Key} {picture.Name}";
            else if (FileWords.IsCode(label) || numbers is null)
                (powder, image) = (FileWords.IsCode(label) ? label : Section(text)) is { } section ? (section, "") : (powder, image);
            begun = numbers is not null && (begun || label.Length > 0 || numbers.Length >= FewestOnALine);
            if (begun)
                rows.AddRange(numbers!.Where(n => char.IsAsciiDigit(n[0])).Select(n => new GridRow(row.Number, [new(powder), new(image), new(n)])));
        }

        var first = lines[0].Row.Number;
        return grid with
        {
            Separator = null,
            Rows = [.. words.Where(w => w.Row.Number < rows[0].Number && Named(w.Text, PowderWords) is null && Named(w.Text, ImageWords) is null && Section(w.Text) is null).Select(w => w.Row with { Cells = [new(w.Text)] }),
                new(first, [new(rows.Exists(r => r.Cells[0].Text.Length > 0) ? "powder" : ""), new("image"), new(said)]), .. rows],
        };
    }

    // The line as it was written: a comma in a number may have parted it.
    private static string Whole(Grid grid, GridRow row) => string.Join(grid.Separator is "," or ";" or "|" ? grid.Separator : " ", row.Cells.Select(c => c.Content)).Trim();

    // "print 1: 22.8, 26.4" is a label and its numbers; before a label that names nothing of the kind ("mean: 30.1 8.3") no number is a length.
    private static (string Label, string[]? Numbers) Parted(string text)
    {
        var mark = text.IndexOf(':', StringComparison.Ordinal);
        if (mark <= 0 || !char.IsLetter(text[0]))
            return ("", Numbers(text));
        var label = text[..mark].Trim();
        return Numbers(text[(mark + 1)..]) is { } numbers && (Named(label, PowderWords) is not null || Named(label, ImageWords) is not null || FileWords.IsCode(label)) ? (label, numbers) : ("", null);
    }

    // "== MZ-0 (plain) ==", "[MZ-0]": a line set apart by signs on both sides names what follows.
    private static string? Section(string text) => SetApart().Match(text) is { Success: true } m && m.Groups["name"].Value.Split('(')[0].Trim() is { Length: > 0 and <= 40 } name ? name : null;

    // Numbers alone, some perhaps in brackets; null for a line with anything else.
    private static string[]? Numbers(string text)
    {
        string[] tokens = [.. text.Split([' ', '\t', ';'], StringSplitOptions.RemoveEmptyEntries)], byCommas = text.Split([' ', '\t', ';', ','], StringSplitOptions.RemoveEmptyEntries);
        // Beside points, commas only part the numbers.
        if (Array.Exists(byCommas, t => t.Contains('.', StringComparison.Ordinal)))
            tokens = byCommas;
        return tokens.Length > 0 && Array.TrueForAll(tokens, t => Number().IsMatch(t)) ? tokens : null;
    }

    // "*** Powder DY-1 ***" names DY-1, "Picture 2 (x 80 000):" the picture 2.
    private static (string Key, string Name)? Named(string text, string words)
    {
        string[] parts = [.. text.Trim(' ', '*', '#', '-', '=', ':').Split([' ', ':', '('], StringSplitOptions.RemoveEmptyEntries)];
        return parts.Length >= 2 && MeasuredTable.Has(parts[0], words) ? (parts[0], parts[1]) : null;
    }

    [GeneratedRegex(@"^\s*([=*#~_-]{2,}\s*(?<name>[^=*#~_]+?)\s*[=*#~_-]{2,}|\[\s*(?<name>[^\]]+?)\s*\])\s*$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex SetApart();

    [GeneratedRegex(@"^[\[(]?\d+([.,]\d+)?[\])]?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Number();
}
