using System.Buffers.Binary;
using System.IO.Compression;

namespace Holdfast.Techniques.Micrographs;

/// <summary>The rows of a TIFF page, one after the other: only one row is held at a time, however large the strip.</summary>
internal static class TiffRows
{
    /// <summary>Hands over every row as samples of 8 bits, or of 16 in this machine's order.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="page">The page.</param>
    /// <param name="name">Name of the file, for messages.</param>
    /// <param name="each">Given each row's number and its samples; those of 16 bits as pairs of bytes, the low one first.</param>
    public static void Read(byte[] bytes, TiffPage page, string name, Action<int, byte[]> each)
    {
        var row = new byte[page.RowBytes];
        for (var strip = 0; strip < page.Strips.Length; strip++)
        {
            var (offset, length) = page.Strips[strip];
            using var packed = new MemoryStream(bytes, offset, length, writable: false);
            using Stream unpacked = page.Compression switch
            {
                TiffPage.Lzw => new LzwStream(bytes, offset, length),
                TiffPage.Deflate => new ZLibStream(packed, CompressionMode.Decompress),
                TiffPage.PackBits => new PackBitsStream(bytes, offset, length),
                _ => packed,
            };
            for (var y = strip * page.RowsPerStrip; y < Math.Min(page.Height, (strip + 1) * page.RowsPerStrip); y++)
            {
                Fill(unpacked, row, name, y);
                Arrange(row, page);
                each(y, row);
            }
        }
    }

    private static void Fill(Stream from, byte[] row, string name, int y)
    {
        try
        {
            if (from.ReadAtLeast(row, row.Length, throwOnEndOfStream: false) == row.Length)
                return;
        }
        catch (InvalidDataException)
        {
            // Told below.
        }

        throw PictureHead.Damaged(name, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"its pixels end or are damaged in row {y + 1}"));
    }

    private static void Arrange(byte[] row, TiffPage page)
    {
        if (page.Bits == 8)
        {
            for (var i = page.Samples; page.IsDifference && i < row.Length; i++)
                row[i] = unchecked((byte)(row[i] + row[i - page.Samples]));
            return;
        }

        for (var i = 0; i < row.Length; i += 2)
        {
            var value = page.IsBigEndian ? BinaryPrimitives.ReadUInt16BigEndian(row.AsSpan(i)) : BinaryPrimitives.ReadUInt16LittleEndian(row.AsSpan(i));
            if (page.IsDifference && i >= 2 * page.Samples)
                value = unchecked((ushort)(value + BinaryPrimitives.ReadUInt16LittleEndian(row.AsSpan(i - 2 * page.Samples))));
            BinaryPrimitives.WriteUInt16LittleEndian(row.AsSpan(i), value);
        }
    }

    /// <summary>A stream that only gives.</summary>
    private abstract class Unpacking : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = 0;
            while (read < count && Next() is >= 0 and var value)
                buffer[offset + read++] = (byte)value;
            return read;
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        // The next byte, or −1 at the end.
        protected abstract int Next();
    }

    // A count, then so many bytes as they are, or one byte so many times.
    private sealed class PackBitsStream(byte[] bytes, int offset, int length) : Unpacking
    {
        private readonly int end = offset + length;
        private int at = offset;
        private int left;
        private int repeated = -1;

        protected override int Next()
        {
            while (left == 0)
            {
                if (at + 1 >= end)
                    return -1;
                var count = unchecked((sbyte)bytes[at++]);
                if (count == sbyte.MinValue)
                    continue;
                (left, repeated) = count >= 0 ? (count + 1, -1) : (1 - count, bytes[at++]);
            }

            left--;
            return repeated >= 0 ? repeated : at < end ? bytes[at++] : -1;
        }
    }

    // Codes of 9 to 12 bits, the high bit first; the width grows one code early (TIFF 6.0, section 13; from memory).
    private sealed class LzwStream(byte[] bytes, int offset, int length) : Unpacking
    {
        private const int Clear = 256, End = 257, First = 258, Most = 4096, Shortest = 9, Longest = 12;
        private readonly ushort[] before = new ushort[Most];
        private readonly byte[] last = new byte[Most];
        private readonly byte[] waiting = new byte[Most];
        private readonly int end = offset + length;
        private int at = offset;
        private int held, bits, width = Shortest, next = First, previous = -1, left;

        protected override int Next()
        {
            if (left == 0 && !Take())
                return -1;
            return waiting[--left];
        }

        private bool Take()
        {
            var code = Code();
            while (code == Clear)
            {
                (width, next, previous) = (Shortest, First, -1);
                code = Code();
            }

            if (code is End or < 0)
                return false;
            if (code > next || (previous < 0 && code >= Clear) || code >= Most)
                throw new InvalidDataException("a code that stands for nothing");

            // The one code that is not known yet is the former text with its own first byte.
            var text = code == next ? previous : code;
            if (code == next)
                left = 1;
            while (text >= First)
            {
                waiting[left++] = last[text];
                text = before[text];
            }

            waiting[left++] = (byte)text;
            if (code == next)
                waiting[0] = (byte)text;
            if (previous >= 0 && next < Most)
            {
                (before[next], last[next]) = ((ushort)previous, (byte)text);
                next++;
                if (next >= (1 << width) - 1 && width < Longest)
                    width++;
            }

            previous = code;
            return true;
        }

        private int Code()
        {
            while (bits < width)
            {
                if (at >= end)
                    return -1;
                held = (held << 8) | bytes[at++];
                bits += 8;
            }

            bits -= width;
            var code = held >> bits;
            held &= (1 << bits) - 1;
            return code;
        }
    }
}
