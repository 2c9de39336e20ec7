using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Diffraction;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A table of lines instead of a scan: places as 2θ or d, with intensities, widths or indices.</summary>
/// <param name="Table">The table.</param>
/// <param name="TwoTheta">Column of 2θ, or null.</param>
/// <param name="Spacing">Column of d, or null.</param>
/// <param name="Wavelength">Wavelength in ångström under which 2θ and d belong together in every row; null without both.</param>
/// <param name="PerSpacing">Ångström in one of the units of d: 1, or 10 for nanometres.</param>
/// <param name="Says">What speaks for it.</param>
internal sealed partial record LineListLayout(MeasuredTable Table, int? TwoTheta, int? Spacing, double? Wavelength, double PerSpacing, Recognition Says)
{
    // Fewer lines tell no phase; no list of a powder is longer.
    private const int FewestLines = 4, MostLines = 400;

    // Rounded angles and spacings agree within this part, whatever the radiation.
    private const double Agreement = 4e-3;

    // Spacings that laboratories see, ångström.
    private const double LeastSpacing = 0.5, MostSpacing = 100;

    /// <summary>Column of intensities, or null.</summary>
    public int? Intensity { get; private init; }

    /// <summary>Column of widths, or null.</summary>
    public int? Width { get; private init; }

    /// <summary>Columns of indices: one, three for h, k and l, or none.</summary>
    public ImmutableArray<int> Planes { get; private init; } = [];

    /// <summary>The layout of a grid, or null when it lists no lines.</summary>
    /// <param name="grid">The grid.</param>
    public static LineListLayout? Of(Grid grid)
    {
        if (MeasuredTable.Of(grid, 2) is not { Body.Length: >= FewestLines and <= MostLines } table)
            return null;
        var columns = Enumerable.Range(0, table.Width).ToArray();
        var numbers = columns.Select(c => (double?[])[.. table.Body.Select(r => ScanLayout.Number(r.At(c), null))]).ToArray();
        var headings = columns.Select(table.Says).ToArray();
        var planes = PlanesIn(table, headings);
        int? angle = null, spacing = null;
        (double Wavelength, double PerSpacing)? together = null;
        foreach (var (x, d) in columns.SelectMany(x => columns.Where(d => d != x).Select(d => (x, d))))
        {
            if (together is null && Together(numbers[x], numbers[d], headings[d]) is { } found)
                (angle, spacing, together) = (x, d, found);
        }

        angle ??= Named(ScanAxis.TwoTheta, columns, headings, numbers, v => v is > 1 and < ScanLayout.LargestAngle);
        spacing ??= Named(ScanAxis.Spacing, columns, headings, numbers, v => v is > LeastSpacing / 10 and < MostSpacing);
        var free = columns.Where(c => c != angle && c != spacing && !planes.Contains(c) && table.IsNumeric(c)).ToArray();
        int? intensity = free.Where(c => IntensityOrArea().IsMatch(headings[c]) || ScanWords.Column(headings[c]) == ScanColumn.Intensity).Select(c => (int?)c).FirstOrDefault();
        int? width = free.Where(c => WidthWord().IsMatch(headings[c])).Select(c => (int?)c).FirstOrDefault();
        var text = string.Join(' ', table.Preamble.Append(table.Heading).OfType<GridRow>().SelectMany(r => r.Cells).Select(c => c.Text));
        var says = together is not null ? Recognition.Certain("2θ and d that belong together in every row")
            : angle is not null && (!planes.IsEmpty || LinesWord().IsMatch(text)) ? Recognition.Certain("2θ of lines")
            // A d alone may be a diameter, and a peak one of sizes.
            : spacing is { } only && (!planes.IsEmpty || intensity is not null && (ScanWords.SaysSpacing(headings[only]) || ScanWords.IsOfDiffraction(text))) ? Recognition.Certain("spacings of lines")
            : Recognition.None;
        return says.Evidence is null ? null : new(table, angle, spacing, together?.Wavelength, together?.PerSpacing ?? (spacing is { } s && Nanometre().IsMatch(headings[s]) ? 10 : 1), says)
        {
            Intensity = intensity,
            Width = width,
            Planes = planes,
        };
    }

    /// <summary>True when words around the table, or the name of its file, say that the lines are those of a known phase.</summary>
    /// <param name="file">Name of the file.</param>
    public bool SaysReference(string file)
        => ReferenceWord().IsMatch(file.Replace('_', ' ')) || Table.Preamble.Append(Table.Heading).OfType<GridRow>().SelectMany(r => r.Cells).Any(c => ReferenceWord().IsMatch(c.Text));

    // 2d·sin θ is one number in all rows: the wavelength, known or not.
    private static (double Wavelength, double PerSpacing)? Together(double?[] x, double?[] d, string heading)
    {
        double[] products = [.. x.Zip(d).Where(p => p.First is > 1 and < ScanLayout.LargestAngle && p.Second is > 0).Select(p => 2 * p.Second!.Value * Math.Sin(p.First!.Value * Math.PI / 360)).Order()];
        if (products.Length < FewestLines || products.Length < x.Count(v => v is not null) || x.OfType<double>().Distinct().Count() < FewestLines)
            return null;
        var middle = products[products.Length / 2];
        if (products[^1] / products[0] - 1 > Agreement)
            return null;
        var per = Nanometre().IsMatch(heading) || Radiation.Near(middle) is null && !Radiation.IsPossible(middle) || Nearest(middle) is null && Nearest(10 * middle) is not null ? 10 : 1;
        return Radiation.IsPossible(per * middle) ? (per * middle, per) : null;
    }

    /// <summary>The anode whose wavelength lies within the rounding of a list, or null.</summary>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public static Radiation? Nearest(double wavelength) => Radiation.All.Where(r => Math.Abs(wavelength / r.Mean - 1) <= Agreement).MinBy(r => Math.Abs(wavelength / r.Mean - 1));

    private static int? Named(ScanAxis axis, int[] columns, string[] headings, double?[][] numbers, Func<double, bool> possible)
        => columns.Where(c => (axis == ScanAxis.TwoTheta ? ScanWords.SaysTwoTheta(headings[c]) : ScanWords.Axis(headings[c]) == axis) && numbers[c].Count(v => v is { } n && possible(n)) >= FewestLines
            && numbers[c].All(v => v is null || possible(v.Value))).Select(c => (int?)c).FirstOrDefault();

    private static ImmutableArray<int> PlanesIn(MeasuredTable table, string[] headings)
    {
        for (var c = 0; c < table.Width; c++)
        {
            if (PlanesWord().IsMatch(headings[c]) && table.Body.Count(r => ListedLines.Planes(r.At(c).Text) is not null) >= table.Body.Length / 2)
                return [c];
            if (c + 2 < table.Width && table.Named(c).Trim() is "h" or "H" && table.Named(c + 1).Trim() is "k" or "K" && table.Named(c + 2).Trim() is "l" or "L")
                return [c, c + 1, c + 2];
        }

        return [];
    }

    [GeneratedRegex(@"(?<![a-z])\(?h\s*,?\s*k\s*,?\s*l\)?(?![a-z])|miller|indices|índices|indici|indeks", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex PlanesWord();

    [GeneratedRegex(@"intens|(?<![a-z])int(?![a-z])|(?<![a-z])i(\s*/\s*i)?(?![a-z])|(?<![a-z])i\s*/?\s*(0|1|max|rel|r)|height|altezza|hoch|höhe|hauteur|altura|wysoko|yükseklik|area|fläche|surface|counts|peak\s*h", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex IntensityOrArea();

    [GeneratedRegex(@"fwhm|width|breite|hwb|larghezza|largeur|anchura|ancho|largura|szeroko|breedte|geni(ş|s)lik", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex WidthWord();

    [GeneratedRegex(@"(?<![a-z])(lines?|peaks?|reflections?|reflexe?n?|linien|raies|pics|réflexions|reflexions|picos?|l(í|i)neas?|reflexiones|reflex(õ|o)es|linhas|righe|picchi|riflessi(oni)?|linie|piki?|refleksy?|tepe(ler)?|pieken|lijnen)(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex LinesWord();

    [GeneratedRegex(@"(?<![a-z])(ref|reference|referenz\w*|référence|referencia|referência|riferimento|card|database|calculated|computed|berechnet|calculée?s?|calculado|calculated|literature?|literatur\w*|littérature|wzorzec|wzorca|odniesieni\w*|known phase|bekannte phase|norm\w*\s*daten)(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex ReferenceWord();

    [GeneratedRegex(@"\bnm\b", RegexOptions.None, matchTimeoutMilliseconds: ScanWords.Patience)]
    private static partial Regex Nanometre();
}
