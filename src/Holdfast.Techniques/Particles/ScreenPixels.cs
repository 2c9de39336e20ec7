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

    /// <summary>Nanometres in a pixel for each row of a table, null while one is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="sizes">Its table.</param>
    public static ImmutableArray<double>? Ask(MeasurementSource source, SizeTable sizes)
    {
        var table = sizes.Table;
        var heading = table.Named(sizes.Sizes[0].Column);
        string[] images = [.. table.Body.Select(r => sizes.ImageColumn >= 0 ? r.At(sizes.ImageColumn).Text : "")];
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        var open = false;
        foreach (var image in images.Distinct(StringComparer.Ordinal))
        {
            var id = source.Question("scale" + (image.Length > 0 ? ":" + image : ""));
            var bars = source.File.SelectMany(g => g.Rows).SelectMany(r => r.Cells).Where(c => !c.IsBlank && (image.Length == 0 || c.Text.Contains(image, StringComparison.OrdinalIgnoreCase))).Select(c => Of(c.Text)).OfType<double>().Distinct().Select(Text).ToImmutableArray();
            var answer = source.Talk.Ask(id, Codes.UnitMissing,
                $"{source.Talk.FileName}: “{heading}” is in pixels{(image.Length > 0 ? $" of {image}" : "")}. What is the scale, nm per pixel? Write it as a number, or by the scale bar: 500 nm = 221 px. A magnification alone does not say it.", bars, heading);
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
        => Bar().Match(text) is { Success: true } m && Number(m.Groups["a"].Value) is > 0 and var length && Number(m.Groups["b"].Value) is > 0 and var pixels ? Unit.Parse(m.Groups["u"].Value).Convert(length, Unit.Parse("nm")) / pixels : null;

    private static double? Number(string text) => CellText.Read(text.Trim(), null) is CellText.Number { Value: var value } ? value : null;

    private static string Text(double value) => value.ToString("G5", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<a>\d+([.,]\d+)?)\s*(?<u>nm|µm|μm|um)\D{1,20}?(?<b>\d+([.,]\d+)?)\s*(px|pix|piks)", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Bar();
}
