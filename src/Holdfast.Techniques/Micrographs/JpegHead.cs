using System.Buffers.Binary;

namespace Holdfast.Techniques.Micrographs;

/// <summary>The header of a JPEG: size, and the density where it is stated.</summary>
/// <remarks>ISO/IEC 10918-1 (markers SOF, SOS, EOI) and JFIF 1.02 (APP0); from memory.</remarks>
internal static class JpegHead
{
    // A block of 64 pixels takes a bit at the least; colour at half the width and height has six blocks for 256 pixels. Runs of empty blocks take less still.
    private const int MostPixelsPerByte = 4096;
    private const int EndOfImage = 0xD9, StartOfScan = 0xDA, App0 = 0xE0;

    /// <summary>Reads it.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="name">Its name, for messages.</param>
    public static PicturePage Of(byte[] bytes, string name)
    {
        StatedPixel? stated = null;
        for (var at = 2; at + 4 <= bytes.Length;)
        {
            if (bytes[at] != 0xFF)
                break;
            int marker = bytes[at + 1], length = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 2));
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker is StartOfScan or EndOfImage || length < 2 || at + 2 + length > bytes.Length)
                break;
            var data = bytes.AsSpan(at + 4, length - 2);
            if (marker == App0 && data.Length >= 12 && data.StartsWith("JFIF\0"u8))
                stated = Density(data);
            if (IsFrame(marker) && data.Length >= 6)
            {
                var end = bytes.AsSpan(at + 2 + length);
                if (end.LastIndexOf([(byte)0xFF, (byte)EndOfImage]) < 0)
                    throw PictureHead.Damaged(name, "it is cut short");
                return new(BinaryPrimitives.ReadUInt16BigEndian(data[3..]), BinaryPrimitives.ReadUInt16BigEndian(data[1..]), data[0], data[5], stated) { Packed = end.Length, MostPerByte = MostPixelsPerByte };
            }

            at += 2 + length;
        }

        throw PictureHead.Damaged(name, "its header is missing or damaged");
    }

    private static bool IsFrame(int marker) => marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);

    private static StatedPixel? Density(ReadOnlySpan<byte> data)
    {
        double across = BinaryPrimitives.ReadUInt16BigEndian(data[8..]), down = BinaryPrimitives.ReadUInt16BigEndian(data[10..]);
        return data[7] switch { 1 => StatedPixel.Of(across, down, 2.54e7, "inch"), 2 => StatedPixel.Of(across, down, 1e7, "cm"), _ => null };
    }
}
