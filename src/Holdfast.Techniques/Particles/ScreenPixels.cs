using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>Sizes in pixels of a screen or image: how long a pixel is, picture by picture, is asked; a magnification alone does not say it.</summary>
internal static partial class ScreenPixels
{
    private const string Words = "px pix pixel pixels pixeles pixel* piksel* pikseli pixely obrazovych";

    /// <summary>True for a heading in pixels.</summary>
    /// <param name="heading">The heading with its unit.</param>
    public static bool Are(string heading) => MeasuredTable.Has(heading, Words);

    /// <summary>True where a line says that what is below it is in pixels; a scale bar alone does not say so.</summary>
    /// <param name="lines">Lines above a table.</param>
    public static bool SaidIn(IEnumerable<GridRow> lines) => lines.Any(r => r.Cells.Any(c => Are(c.Text) && !IsScale(c.Text)));

    /// <summary>True for a line that says how long a pixel is: "200 nm = 163 px", "0.8 px/nm".</summary>
    /// <param name="text">The line.</param>
    public static bool IsScale(string text) => Of(text) is not null;

    /// <summary>Nanometres in a pixel for each row of a table, for each column where every one is an image or powder of its own; null while one is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="sizes">Its table.</param>
    public static ImmutableArray<double>? Ask(MeasurementSource source, SizeTable sizes)
    {
        var table = sizes.Table;
        var heading = table.Named(sizes.Sizes[0].Column);
        string[] images = sizes.IsWide ? [.. sizes.Sizes.Select(s => s.Powder ?? "")] : [.. table.Body.Select(r => sizes.ImageColumn >= 0 ? r.At(sizes.ImageColumn).Text : "")];
        var bars = source.File.SelectMany(g => g.Rows).SelectMany(r => r.Cells.Where(c => !c.IsBlank).Select(c => (r.Number, c.Text, Scale: Of(c.Text)))).Where(b => b.Scale is not null).ToList();
        bool Names(string text, string image) => image.Length > 0 && text.Contains(image, StringComparison.OrdinalIgnoreCase);
        // A bar that names no image is of all of them, where it is the only one.
        var common = bars.Where(b => !images.Any(i => Names(b.Text, i))).Select(b => b.Scale!.Value).Distinct().ToList();
        string? single = common is [var one] && bars.TrueForAll(b => b.Scale == one) ? Text(one) : null;
        if (single is not null && source.Talk.Assume(source.Question("scale"), Codes.Ambiguous, $"“{heading}” is in pixels; line {bars[0].Number.ToString(CultureInfo.InvariantCulture)} gives the scale for all: {single} nm per pixel.", [single], heading) is var taken)
        {
            var scale = taken == single ? common[0] : Of(taken) ?? Number(taken);
            return scale is > 0 ? [.. images.Select(_ => scale.Value)] : throw Answers.Unknown(source.Question("scale"), taken, "nanometres in one pixel, or a scale bar in nm and px");
        }

        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        var open = false;
        foreach (var image in images.Distinct(StringComparer.Ordinal))
        {
            var id = source.Question("scale" + (image.Length > 0 ? ":" + image : ""));
            ImmutableArray<string> own = [.. bars.Where(b => image.Length == 0 || Names(b.Text, image)).Select(b => Text(b.Scale!.Value)).Distinct()];
            var answer = source.Talk.Ask(id, Codes.UnitMissing,
                $"{source.Talk.FileName}: “{heading}” is in pixels{(image.Length > 0 ? $" of {image}" : "")}. What is the scale, nm per pixel? Write it as a number, or by the scale bar: 500 nm = 221 px. A magnification alone does not say it.", own, heading);
            if (answer is null)
                open = true;
            else if ((Of(answer) ?? Number(answer)) is not > 0)
                throw Answers.Unknown(id, answer, "nanometres in one pixel, or a scale bar in nm and px");
            else
                known[image] = (Of(answer) ?? Number(answer))!.Value;
        }

        return open ? null : [.. images.Select(i => known[i])];
    }

    // "bar 500 nm is 221 px": nanometres in one pixel.
    private static double? Of(string text)
        => new[] { PerPixel(), PerLength(), Bar(), BarOfPixels() }.Select(r => r.Match(text)).FirstOrDefault(m => m.Success) is { } m && (m.Groups["a"].Success ? Number(m.Groups["a"].Value) : 1) is > 0 and var length && (m.Groups["b"].Success ? Number(m.Groups["b"].Value) : 1) is > 0 and var pixels
            ? Unit.Parse(m.Groups["u"].Value).Convert(length, Unit.Parse("nm")) / pixels : null;

    private static double? Number(string text) => CellText.Read(text.Trim(), null) is CellText.Number { Value: var value } ? value : null;

    private static string Text(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    // "1.23 nm/px"
    [GeneratedRegex(@"(?<a>\d+([.,]\d+)?)\s*(?<u>nm|µm|μm|um)\s*(/|per|pro|par|por|na|je)\s*(px|pix|piks)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerPixel();

    // "0.815 px/nm"
    [GeneratedRegex(@"(?<b>\d+([.,]\d+)?)\s*(px|pix\w*|piks\w*)\s*(/|per|pro|par|por|na|je)\s*(?<u>nm|µm|μm|um)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex PerLength();

    // "163 px = 200 nm"
    [GeneratedRegex(@"(?<b>\d+([.,]\d+)?)\s*(px|pix\w*|piks\w*)[^\d,;]{1,20}?(?<a>\d+([.,]\d+)?)\s*(?<u>nm|µm|μm|um)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex BarOfPixels();

    [GeneratedRegex(@"(?<a>\d+([.,]\d+)?)\s*(?<u>nm|µm|μm|um)\D{1,20}?(?<b>\d+([.,]\d+)?)\s*(px|pix|piks)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Bar();
}
