using System.Collections.Concurrent;

namespace Holdfast.Studies.Import.Headings;

/// <summary>
/// What the words of a label say, worked out once for labels that differ only in a long number: "V-00017" and "V-00018" have one shape, and a sheet of
/// a hundred thousand rows has few shapes. A number of one or two digits is kept, since "C0" and "t0" are words.
/// </summary>
/// <param name="of">What is worked out from the words; it must not depend on the value of a number of three digits or more.</param>
/// <typeparam name="T">What it gives.</typeparam>
internal sealed class ByShape<T>(Func<string, T> of)
{
    private const int ShortestNumber = 3;
    private const int LongestLabel = 128;
    private const int MostShapes = 4096;
    private readonly ConcurrentDictionary<string, T> known = new(StringComparer.Ordinal);

    /// <summary>What this label says.</summary>
    /// <param name="label">The label as written.</param>
    public T Of(string label)
    {
        if (label.Length > LongestLabel)
            return of(label);
        Span<char> buffer = stackalloc char[LongestLabel];
        ReadOnlySpan<char> shape = buffer[..Fold(label, buffer)];
        if (known.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(shape, out var said))
            return said;
        var folded = shape.ToString();
        said = of(folded);
        // A bench that is open for weeks keeps no label that it ever saw.
        if (known.Count < MostShapes)
            known.TryAdd(folded, said);
        return said;
    }

    private static int Fold(ReadOnlySpan<char> label, Span<char> shape)
    {
        var (length, run) = (0, 0);
        foreach (var c in label)
        {
            run = char.IsAsciiDigit(c) ? run + 1 : 0;
            if (run < ShortestNumber)
            {
                shape[length++] = c;
            }
            else if (run == ShortestNumber)
            {
                shape[length - 1] = '0';
                shape[length - 2] = '0';
                shape[length++] = '0';
            }
        }

        return length;
    }
}
