using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>Lengths and widths under each other's headings, in one image or throughout: a length is never the shorter side, so it is asked about.</summary>
internal static class ExchangedSides
{
    private const int FewestParticles = 5;

    // A few particles are measured askew; nearly all of them are not.
    private const double NearlyAll = 0.9, HardlyAny = 0.1;

    /// <summary>The columns of length and width of a list that has both; null else.</summary>
    /// <param name="sizes">The list.</param>
    public static (int Length, int Width)? Of(SizeTable sizes)
        => !sizes.IsWide && sizes.Sizes.FirstOrDefault(s => s.Name == "length") is { Name: not null } length && sizes.Sizes.FirstOrDefault(s => s.Name == "width") is { Name: not null } width ? (length.Column, width.Column) : null;

    /// <summary>The rows whose two sides are to be exchanged; null while that is not answered.</summary>
    /// <param name="source">The list.</param>
    /// <param name="sizes">Its table.</param>
    /// <param name="mark">The file's decimal mark.</param>
    /// <param name="unit">Unit in which sizes are compared; cells may have units of their own.</param>
    public static ImmutableHashSet<int>? Ask(MeasurementSource source, SizeTable sizes, DecimalMark mark, string unit)
    {
        if (Of(sizes) is not var (length, width))
            return [];
        var table = sizes.Table;
        var (longer, shorter) = sizes.ArePixels ? (table.Numbers(length, mark), table.Numbers(width, mark)) : (SizeUnits.Numbers(table, length, mark, unit), SizeUnits.Numbers(table, width, mark, unit));
        var images = sizes.ImageColumn >= 0 ? table.Words(sizes.ImageColumn) : [];
        var groups = Enumerable.Range(0, table.Body.Length).Where(i => longer[i] is not null && shorter[i] is not null).GroupBy(i => images.IsDefaultOrEmpty ? "" : images[i], StringComparer.Ordinal)
            .Select(g => (Image: g.Key, Rows: g.ToArray(), Share: g.Count(i => shorter[i] > longer[i]) / (double)g.Count())).Where(g => g.Rows.Length >= FewestParticles).ToList();
        var turned = groups.Where(g => g.Share >= NearlyAll).ToList();
        if (turned.Count == 0 || groups.Exists(g => g.Share is > HardlyAny and < NearlyAll))
            return [];
        var rows = turned.SelectMany(g => g.Rows).ToImmutableHashSet();
        var where = turned.Count == groups.Count ? "nearly every row" : (turned.Count == 1 ? "image " : "images ") + string.Join(", ", turned.Select(g => g.Image));
        var answer = source.Talk.Ask(source.Question("sides"), Codes.Ambiguous, string.Create(CultureInfo.InvariantCulture,
            $"In {where} (rows {table.Body[rows.Min()].Number} to {table.Body[rows.Max()].Number}) every {table.Named(width)} is larger than its {table.Named(length)}, and a length is never the shorter side. Are the two columns exchanged there?"), ["swap", "keep"], table.Named(length), table.Named(width));
        return answer is null ? null : answer == "swap" ? rows : [];
    }
}
