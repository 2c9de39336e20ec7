using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>How large the images are that particles were measured in, as lines around a list state it: no particle is larger than its image.</summary>
/// <param name="Nanometres">The diagonal of the image, or as long as an image with its scale bar may be, nm.</param>
/// <param name="Said">As written.</param>
/// <param name="Row">Where, as a person counts.</param>
internal sealed partial record ImageExtent(double Nanometres, string Said, int Row)
{
    private const string AsWritten = "as-written";
    private const string WidthWords = "wide width breit* breite* bildbreite bildfeld sehfeld gesichtsfeld field fov champ campo largeur* large ancho anchura* largura* larghezza* szerokosc* pole";
    private const string BarWords = "bar scalebar massstab* maßstab* balken* messbalken echelle barre barra escala scala podzialk* skali";

    // A bar is drawn a tenth of the image long or more, rarely a thirtieth.
    private const double ImagesPerBar = 40;

    // A wrong prefix under the heading: what fits is one of the finer units.
    private static readonly string[] Finer = ["nm", "um", "mm", "cm"];

    /// <summary>The largest image that the lines state; null for none.</summary>
    /// <param name="lines">Lines above and below a list.</param>
    public static ImageExtent? In(IEnumerable<GridRow> lines)
        => lines.SelectMany(r => r.Cells.Where(c => !c.IsBlank).Select(c => (r.Number, c.Text))).SelectMany(t => Stated(t.Text, t.Number)).OrderByDescending(e => e.Nanometres).FirstOrDefault();

    /// <summary>Factor of all lengths where more than half of them are larger than their image, as answered; 1 where they are not, or were answered to be right; null while it is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="lines">Lines above and below it.</param>
    /// <param name="heading">Heading of the lengths.</param>
    /// <param name="sizes">The lengths.</param>
    /// <param name="unit">Their unit.</param>
    public static double? Factor(MeasurementSource source, IEnumerable<GridRow> lines, string heading, IReadOnlyCollection<double> sizes, string unit)
    {
        if (sizes.Count == 0 || In(lines) is not { } image || Array.IndexOf(Finer, unit) is not (> 0 and var at))
            return 1;
        var (median, factor) = (Summary.Of([.. sizes]).Median, Unit.Parse(unit).Convert(1, Unit.Parse("nm")));
        if (!(median * factor > image.Nanometres))
        {
            if (sizes.Count(s => s * factor > image.Nanometres) is > 0 and var beyond)
                source.Talk.Note(Codes.OddCell, Weight.Caution, $"{heading}: {beyond.ToString(CultureInfo.InvariantCulture)} of {sizes.Count.ToString(CultureInfo.InvariantCulture)} sizes are larger than the image, {image.Said} (line {image.Row.ToString(CultureInfo.InvariantCulture)}).", heading);
            return 1;
        }

        string[] fits = [.. Finer[..at].Where(u => median * Unit.Parse(u).Convert(1, Unit.Parse("nm")) <= image.Nanometres).Reverse()];
        var id = source.Question("image");
        var answer = source.Talk.Ask(id, Codes.Ambiguous,
            $"{heading}: a median of {Text(median)} {unit} does not fit into an image, {image.Said} (line {image.Row.ToString(CultureInfo.InvariantCulture)}). Are the sizes in another unit?", [.. fits, AsWritten], heading);
        source.Talk.Explain(id, [.. fits.Select(u => $"median {Text(median)} {u}"), $"median {Text(median)} {unit}, larger than the image"]);
        return answer is null ? null : Array.IndexOf(fits, answer) >= 0 ? Unit.Parse(answer).Convert(1, Unit.Parse(unit)) : 1;
    }

    private static IEnumerable<ImageExtent> Stated(string text, int row)
    {
        var sides = Sides().Matches(text).Select(m => (m, A: Length(m.Groups["a"].Value, m.Groups["u"].Success ? m.Groups["u"].Value : m.Groups["v"].Value), B: Length(m.Groups["b"].Value, m.Groups["v"].Value))).Where(s => s.A is not null && s.B is not null).ToList();
        if (sides.Count > 0)
            return sides.Select(s => new ImageExtent(Math.Sqrt((s.A!.Value * s.A.Value) + (s.B!.Value * s.B.Value)), s.m.Value, row));
        var (wide, bar) = (MeasuredTable.Has(text, WidthWords), MeasuredTable.Has(text, BarWords));
        if (wide == bar)
            return [];
        // A width alone: the other side is hardly longer.
        return One().Matches(text).Select(m => (m, Length: Length(m.Groups["a"].Value, m.Groups["u"].Value))).Where(o => o.Length is not null)
            .Select(o => new ImageExtent(o.Length!.Value * (bar ? ImagesPerBar : Math.Sqrt(2)), bar ? $"{o.m.Value} by its scale bar" : o.m.Value, row));
    }

    private static double? Length(string number, string unit)
        => SizeUnits.Is(unit) && double.TryParse(number.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value > 0 ? Unit.Parse(unit).Convert(value, Unit.Parse("nm")) : null;

    private static string Text(double value) => value.ToString("G4", CultureInfo.InvariantCulture);

    // "1,50 µm x 1,12 µm", "2.0 × 1.5 µm"
    [GeneratedRegex(@"(?<a>\d+([.,]\d+)?)\s*(?<u>[a-zµμ]{2,3})?\s*[x×*]\s*(?<b>\d+([.,]\d+)?)\s*(?<v>[a-zµμ]{2})\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Sides();

    [GeneratedRegex(@"(?<a>\d+([.,]\d+)?)\s*(?<u>[nµμum]m)\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex One();
}
