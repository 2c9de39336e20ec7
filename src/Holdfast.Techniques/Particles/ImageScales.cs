using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>An image whose sizes are ten or a thousand times those of the others of its powder: perhaps measured in another unit than the heading says.</summary>
internal static class ImageScales
{
    /// <summary>What each row is multiplied by, empty where nothing is; null while it is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="sizes">Its table.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="unit">Unit of the sizes.</param>
    public static ImmutableArray<double>? Ask(MeasurementSource source, SizeTable sizes, DecimalMark mark, string unit)
    {
        // Where rows name their powder, powders are compared with each other.
        if (sizes.ImageColumn < 0 || sizes.GroupColumn >= 0 || sizes.IsWide)
            return [];
        var numbers = SizeUnits.Numbers(sizes.Table, sizes.Sizes[0].Column, mark, unit);
        string[] images = [.. sizes.Table.Body.Select(r => r.At(sizes.ImageColumn).Text)];
        var medians = Enumerable.Range(0, images.Length).Where(i => numbers[i] is > 0).GroupBy(i => images[i], StringComparer.Ordinal).ToDictionary(g => g.Key, g => Summary.Of([.. g.Select(i => numbers[i]!.Value)]).Median, StringComparer.Ordinal);
        if (medians.Count < 2)
            return [];
        // Of two images the first is held for right, of more the median.
        var usual = medians.Count == 2 ? medians[images.First(medians.ContainsKey)] : Summary.Of([.. medians.Values]).Median;
        var factors = new Dictionary<string, double>(StringComparer.Ordinal);
        var open = false;
        foreach (var (image, median) in medians.Where(m => TenfoldSlip.OfGroup(m.Value, usual) is not null))
        {
            var factor = TenfoldSlip.OfGroup(median, usual)!.Value;
            var text = $"The sizes in image {image} have a median of {Text(median)} {unit}, those of the other images {Text(usual)} {unit}: a factor of about {Text(factor)} apart. Are they in another unit than the heading says?";
            if (TenfoldScale.Ask(source, source.Question("scale:image " + image), text, image, median, factor, unit) is { } scale)
                factors[image] = scale;
            else
                open = true;
        }

        return open ? null : factors.Count == 0 ? [] : [.. images.Select(i => factors.GetValueOrDefault(i, 1))];
    }

    private static string Text(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
