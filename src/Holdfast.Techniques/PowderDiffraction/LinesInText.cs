using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Lines told in running sentences, "31.81 (d 2.811 A, I 100, hkl 211)", set as a table.</summary>
internal static partial class LinesInText
{
    // Fewer pairs of numbers could belong together by chance.
    private const int FewestLines = 4;

    // Longest text that is looked at, characters: a message, no book.
    private const int LongestText = 20_000;

    /// <summary>The grid with the lines as a table under its sentences, or null where no four pairs of numbers are 2θ and d of one radiation.</summary>
    /// <param name="grid">A grid.</param>
    public static Grid? Of(Grid grid)
    {
        var found = new List<(int Row, string TwoTheta, string Spacing, string Intensity, string Planes, double Wavelength)>();
        var (length, sentences) = (0, new List<GridRow>());
        foreach (var row in grid.Rows.Where(r => !r.IsBlank))
        {
            var text = string.Join(grid.Separator is "," or ";" ? grid.Separator + " " : " ", row.Cells.Where(c => !c.IsBlank).Select(c => c.Text));
            if ((length += text.Length) > LongestText)
                return null;
            sentences.Add(row);
            foreach (Match m in Pair().Matches(text))
            {
                var (x, d) = (Number(m.Groups["x"].Value), Number(m.Groups["d"].Value));
                if (x is > 1 and < ScanLayout.LargestAngle)
                    found.Add((row.Number, m.Groups["x"].Value, m.Groups["d"].Value, m.Groups["i"].Value, m.Groups["hkl"].Value, 2 * d * Math.Sin(x * Math.PI / 360)));
            }
        }

        var known = found.Where(f => LineListLayout.Nearest(f.Wavelength) is not null).GroupBy(f => LineListLayout.Nearest(f.Wavelength)!.Anode).MaxBy(g => g.Count());
        if (known is null || known.Count() < FewestLines)
            return null;
        var heading = known.First().Row;
        return grid with
        {
            Separator = null,
            Rows = [.. sentences.Select(s => s with { Cells = [new(string.Join(' ', s.Cells.Where(c => !c.IsBlank).Select(c => c.Text)))] }).Where(s => !known.Any(k => k.Row == s.Number)),
                new(heading, [new("2theta"), new("d"), new("I"), new("hkl")]), .. known.Select(k => new GridRow(k.Row, [new(k.TwoTheta), new(k.Spacing), new(k.Intensity), new(k.Planes)]))],
        };
    }

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<![\d.,])(?<x>\d{1,3}[.,]\d{1,4})\s*(°|deg\w*)?\s*[(\[,;:–-]*\s*d\s*[=:≈]?\s*(?<d>\d{1,2}[.,]\d{2,5})(\s*(Å|A|Å))?([\s,;]*I(\s*/\s*I\w*)?\s*[=:]?\s*(?<i>\d{1,5}([.,]\d+)?)\s*%?)?([\s,;]*(hkl\s*[=:]?)?\s*\(?(?<hkl>\d{3}|-?\d{1,2} -?\d{1,2} -?\d{1,2})(?![\d.,]\d)\)?)?", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Pair();
}
