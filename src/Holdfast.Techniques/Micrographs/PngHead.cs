using System.Buffers.Binary;

namespace Holdfast.Techniques.Micrographs;

/// <summary>The header of a PNG: size, bits, and the size of a pixel where it is stated.</summary>
/// <remarks>ISO/IEC 15948 (PNG), chunks IHDR, pHYs, IDAT, IEND; from memory.</remarks>
internal static class PngHead
{
    private const int DeflateMost = 1032;

    /// <summary>Reads it.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="name">Its name, for messages.</param>
    public static PicturePage Of(byte[] bytes, string name)
    {
        PicturePage? page = null;
        long packed = 0, at = 8;
        var ended = false;
        while (!ended && at + 12 <= bytes.Length)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan((int)at));
            var kind = bytes.AsSpan((int)at + 4, 4);
            if (at + 12 + length > bytes.Length)
                break;
            var data = bytes.AsSpan((int)at + 8, (int)length);
            if (kind.SequenceEqual("IHDR"u8) && length >= 13)
                page = Header(data, name);
            else if (kind.SequenceEqual("pHYs"u8) && length >= 9 && data[8] == 1 && page is not null)
                page = page with { Stated = StatedPixel.Of(BinaryPrimitives.ReadUInt32BigEndian(data), BinaryPrimitives.ReadUInt32BigEndian(data[4..]), 1e9, "m") };
            else if (kind.SequenceEqual("IDAT"u8))
                packed += length;
            ended = kind.SequenceEqual("IEND"u8);
            at += 12L + length;
        }

        if (page is null)
            throw PictureHead.Damaged(name, "its header is missing or damaged");
        if (!ended)
            throw PictureHead.Damaged(name, "it is cut short");
        return page with { Packed = packed, MostPerByte = 8.0 * DeflateMost / (page.Bits * page.Samples) };
    }

    private static PicturePage Header(ReadOnlySpan<byte> data, string name)
    {
        uint width = BinaryPrimitives.ReadUInt32BigEndian(data), height = BinaryPrimitives.ReadUInt32BigEndian(data[4..]);
        var samples = data[9] switch { 0 or 3 => 1, 2 => 3, 4 => 2, 6 => 4, _ => 0 };
        if (width > int.MaxValue || height > int.MaxValue || samples == 0 || data[8] is not (1 or 2 or 4 or 8 or 16))
            throw PictureHead.Damaged(name, "its header says what no PNG has");
        return new((int)width, (int)height, data[8], samples, null);
    }
}
