using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;

namespace Holdfast.Techniques.Particles;

/// <summary>One list in strips side by side to save paper: "No. | length | No. | length", the numbers of the second strip going on where the first ends.</summary>
internal static class Strips
{
    /// <summary>The list in a table; null where the pairs may be lists of their own.</summary>
    /// <param name="table">The table, its closing rows left out.</param>
    public static SizeTable? Of(MeasuredTable table)
    {
        int[] headed = [.. Enumerable.Range(0, table.Width).Where(i => table.Named(i).Length > 0 && table.IsNumeric(i))];
        if (headed.Length < 4 || headed.Length % 2 != 0)
            return null;
        ImmutableArray<(int Index, int Size)> strips = [.. headed.Chunk(2).Select(p => (p[0], p[1]))];
        var (index, size) = (table.Says(strips[0].Index), table.Says(strips[0].Size));
        if (SizeTable.NameOf(size) is not { } name || SizeTable.IsOfOthers(size) || SizeUnits.Of(table, strips[0].Size) is not { } unit || !strips.All(s => table.Says(s.Index) == index && table.Says(s.Size) == size))
            return null;
        for (var k = 0; k < strips.Length; k++)
        {
            double[] numbers = [.. table.Numbers(strips[k].Index, DecimalMark.Point).OfType<double>()];
            if (numbers.Length == 0 || Enumerable.Range(1, numbers.Length - 1).Any(i => numbers[i] != numbers[i - 1] + 1) || (k > 0 && numbers[0] != table.Numbers(strips[k - 1].Index, DecimalMark.Point).OfType<double>().Last() + 1))
                return null;
        }

        return new(table)
        {
            IsWide = true,
            Sizes = [.. strips.Select((s, k) => (s.Size, (string?)name, true, (string?)$"strip {(k + 1).ToString(CultureInfo.InvariantCulture)}"))],
            AreStrips = true,
            IndexColumns = [.. strips.Select(s => s.Index)],
            Unit = unit,
            IsCertain = true,
            Evidence = $"'{table.Named(strips[0].Size)}' in {strips.Length.ToString(CultureInfo.InvariantCulture)} strips that count on",
        };
    }
}
