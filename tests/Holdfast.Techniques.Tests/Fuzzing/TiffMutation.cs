using System.Buffers.Binary;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Tests.Fuzzing;

/// <summary>Spoils a TIFF at its header and directories: tags, kinds, counts, values and places; seldom the pixels.</summary>
internal static class TiffMutation
{
    private static readonly uint[] Values = [0, 1, 2, 3, 5, 7, 8, 16, 32, 255, 256, 257, 1024, 32773, 32946, 65535, 65536, 1 << 20, 1 << 27, int.MaxValue, 0x80000000, uint.MaxValue - 7, uint.MaxValue];
    private static readonly int[] Tags = [254, 256, 257, 258, 259, 262, 266, 273, 274, 277, 278, 279, 282, 283, 284, 296, 317, 320, 322, 323, 324, 325, 338, 339, 0, 65535];

    /// <summary>A spoilt copy.</summary>
    /// <param name="whole">The file; little- or big-endian, with its first directory inside.</param>
    /// <param name="chance">What is done.</param>
    public static byte[] Of(byte[] whole, SeededStream chance)
    {
        var bytes = whole.ToArray();
        for (var times = 1 + chance.Below(4); times > 0; times--)
            bytes = Once(bytes, chance);
        return bytes;
    }

    private static byte[] Once(byte[] bytes, SeededStream chance)
    {
        var big = bytes.Length > 0 && bytes[0] == 'M';
        var directory = bytes.Length >= 8 ? Long(bytes, 4, big) : 0u;
        var count = directory + 2L <= bytes.Length && directory >= 8 ? Short(bytes, (int)directory, big) : 0;
        var entry = count > 0 ? (int)directory + 2 + 12 * chance.Below(count) : -1;
        if (entry < 0 || entry + 12 > bytes.Length)
            return Anywhere(bytes, chance);
        switch (chance.Below(12))
        {
            case 0:
                Put(bytes, entry, 2, (uint)Tags[chance.Below(Tags.Length)], big);
                break;
            case 1:
                Put(bytes, entry + 2, 2, (uint)chance.Below(14), big);
                break;
            case 2:
                Put(bytes, entry + 4, 4, Values[chance.Below(Values.Length)], big);
                break;
            case 3 or 4 or 5 or 6:
                Put(bytes, entry + 8, chance.Below(2) == 0 ? 2 : 4, Values[chance.Below(Values.Length)], big);
                break;
            case 7:
                // A place inside the file: another list, the pixels, itself.
                Put(bytes, entry + 8, 4, (uint)chance.Below(bytes.Length + 16), big);
                break;
            case 8:
                var end = (int)directory + 2 + 12 * count;
                if (end + 4 <= bytes.Length)
                    Put(bytes, end, 4, chance.Below(2) == 0 ? directory : (uint)chance.Below(bytes.Length), big);
                break;
            case 9:
                Put(bytes, (int)directory, 2, chance.Below(3) == 0 ? 65535u : (uint)chance.Below(40), big);
                break;
            case 10:
                // Behind the list lie long values: strips, palette, ratios.
                var after = (int)directory + 6 + 12 * count;
                if (after + 4 <= bytes.Length)
                    Put(bytes, after + chance.Below(bytes.Length - after - 3), 4, Values[chance.Below(Values.Length)], big);
                break;
            default:
                return Anywhere(bytes, chance);
        }

        return bytes;
    }

    private static byte[] Anywhere(byte[] bytes, SeededStream chance)
    {
        switch (chance.Below(5))
        {
            case 0:
                return bytes[..chance.Below(bytes.Length + 1)];
            case 1:
                return [.. bytes[..Math.Min(bytes.Length, 8)], .. bytes.AsSpan(Math.Min(bytes.Length, 8 + chance.Below(12)))];
            case 2 when bytes.Length >= 8:
                Put(bytes, 4, 4, chance.Below(2) == 0 ? Values[chance.Below(Values.Length)] : (uint)chance.Below(bytes.Length), bytes[0] == 'M');
                return bytes;
            case 3:
                return [.. bytes, .. Enumerable.Range(0, chance.Below(64)).Select(_ => (byte)chance.Below(256))];
            default:
                for (var i = chance.Below(8); i >= 0 && bytes.Length > 0; i--)
                    bytes[chance.Below(bytes.Length)] = (byte)chance.Below(256);
                return bytes;
        }
    }

    private static int Short(byte[] bytes, int at, bool big) => big ? BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at)) : BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at));

    private static uint Long(byte[] bytes, int at, bool big) => big ? BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at)) : BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(at));

    private static void Put(byte[] bytes, int at, int size, uint value, bool big)
    {
        Span<byte> four = stackalloc byte[4];
        if (big)
            BinaryPrimitives.WriteUInt32BigEndian(four, size == 2 ? value << 16 : value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(four, value);
        four[..size].CopyTo(bytes.AsSpan(at));
    }
}
