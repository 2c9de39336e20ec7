using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Particles;

/// <summary>An image whose sizes repeat those of another one by one: two images never do, so that a block was pasted twice.</summary>
internal static class PastedTwice
{
    // Sizes to three digits agree eight times in a row by chance in no list of people.
    private const int Fewest = 8;

    private const string LeaveOut = "leave-out", AsWritten = "as-written";

    /// <summary>Rows to leave out as answered; null while it is asked.</summary>
    /// <param name="source">The list.</param>
    /// <param name="table">Its table.</param>
    /// <param name="image">Column of images, or −1.</param>
    /// <param name="size">Column of the first size.</param>
    public static ImmutableHashSet<int>? Ask(MeasurementSource source, MeasuredTable table, int image, int size)
    {
        var left = ImmutableHashSet.CreateBuilder<int>();
        if (image < 0)
            return left.ToImmutable();
        var images = Enumerable.Range(0, table.Body.Length).GroupBy(i => table.Body[i].At(image).Text, StringComparer.Ordinal).Where(g => g.Key.Length > 0 && g.Count() >= Fewest).Select(g => (Name: g.Key, Rows: g.ToArray(), Sizes: g.Select(i => table.Body[i].At(size).Text).ToArray())).ToArray();
        var open = false;
        for (var later = 1; later < images.Length; later++)
        {
            for (var k = 0; k < later; k++)
            {
                var n = Math.Min(images[k].Sizes.Length, images[later].Sizes.Length);
                if (!images[k].Sizes.Take(n).SequenceEqual(images[later].Sizes.Take(n), StringComparer.Ordinal) || images[k].Sizes.Distinct(StringComparer.Ordinal).Count() < Fewest)
                    continue;
                var (first, again) = (images[k].Name, images[later]);
                var id = source.Question("repeat:" + again.Name);
                var answer = source.Talk.Ask(id, Codes.Ambiguous,
                    string.Create(CultureInfo.InvariantCulture, $"The {n} sizes of {again.Name} repeat those of {first} one by one, from row {table.Body[again.Rows[0]].Number} on. Were they pasted twice? Leave them out until its own are at hand?"), [LeaveOut, AsWritten], $"row {table.Body[again.Rows[0]].Number.ToString(CultureInfo.InvariantCulture)}");
                source.Talk.Explain(id, [$"{again.Name} is left out", string.Create(CultureInfo.InvariantCulture, $"both count, as {2 * n} particles")]);
                open |= answer is null;
                if (answer == LeaveOut)
                    left.UnionWith(again.Rows);
                break;
            }
        }

        return open ? null : left.ToImmutable();
    }
}
