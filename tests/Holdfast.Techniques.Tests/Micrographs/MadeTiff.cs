using System.Buffers.Binary;
using System.IO.Compression;

namespace Holdfast.Techniques.Tests.Micrographs;

/// <summary>Small TIFFs in every form that is read, written by the rules of TIFF 6.0 (from memory).</summary>
internal sealed record MadeTiff(int Width, int Height)
{
    public bool IsBig { get; init; }

    public int Bits { get; init; } = 8;

    public int Samples { get; init; } = 1;

    public int Compression { get; init; } = 1;

    public bool IsDifference { get; init; }

    public int Photometric { get; init; } = 1;

    public int RowsPerStrip { get; init; } = 4;

    /// <summary>Pixels per cm across and down; 0 for none.</summary>
    public uint PerCentimetre { get; init; }

    /// <summary>Tags written over what they would be.</summary>
    public Dictionary<int, uint> Over { get; init; } = [];

    /// <summary>What a sample holds.</summary>
    public static int Sample(int x, int y, int s, int bits) => (x * 7 + y * 13 + s * 29 + (bits == 16 ? 311 * x : 0)) & ((1 << bits) - 1);

    /// <summary>The file.</summary>
    public byte[] Write()
    {
        var strips = new List<byte[]>();
        for (var y = 0; y < Height; y += RowsPerStrip)
            strips.Add(Packed([.. Enumerable.Range(y, Math.Min(RowsPerStrip, Height - y)).SelectMany(Row)]));
        var tags = new SortedDictionary<int, (int Kind, uint[] Values)>
        {
            [256] = (3, [(uint)Width]),
            [257] = (3, [(uint)Height]),
            [258] = (3, [.. Enumerable.Repeat((uint)Bits, Samples)]),
            [259] = (3, [(uint)Compression]),
            [262] = (3, [(uint)Photometric]),
            [273] = (4, new uint[strips.Count]),
            [277] = (3, [(uint)Samples]),
            [278] = (3, [(uint)RowsPerStrip]),
            [279] = (4, [.. strips.Select(s => (uint)s.Length)]),
            [317] = (3, [IsDifference ? 2u : 1u]),
        };
        if (PerCentimetre > 0)
        {
            tags[282] = tags[283] = (5, [PerCentimetre, 1]);
            tags[296] = (3, [3]);
        }

        foreach (var (tag, value) in Over)
            tags[tag] = (tags.TryGetValue(tag, out var known) ? known.Kind : 4, [value]);
        var directory = 8 + strips.Sum(s => s.Length);
        var at = 8u;
        for (var i = 0; i < strips.Count && !Over.ContainsKey(273); i++)
        {
            tags[273].Values[i] = at;
            at += (uint)strips[i].Length;
        }

        using var file = new MemoryStream();
        file.Write(IsBig ? "MM\0*"u8 : "II*\0"u8);
        Put(file, (uint)directory, 4);
        strips.ForEach(s => file.Write(s));
        Put(file, (uint)tags.Count, 2);
        var more = directory + 2 + 12 * tags.Count + 4;
        using var long_ = new MemoryStream();
        foreach (var (tag, (kind, values)) in tags)
        {
            var size = kind == 3 ? 2 : 4;
            Put(file, (uint)tag, 2);
            Put(file, (uint)kind, 2);
            Put(file, (uint)(kind == 5 ? 1 : values.Length), 4);
            var inside = new MemoryStream();
            foreach (var value in values)
                Put(inside, value, size);
            if (inside.Length <= 4)
            {
                inside.SetLength(4);
                file.Write(inside.ToArray());
            }
            else
            {
                Put(file, (uint)(more + long_.Length), 4);
                long_.Write(inside.ToArray());
            }
        }

        Put(file, 0, 4);
        file.Write(long_.ToArray());
        return file.ToArray();
    }

    private void Put(Stream to, uint value, int size)
    {
        Span<byte> bytes = stackalloc byte[4];
        if (IsBig)
            BinaryPrimitives.WriteUInt32BigEndian(bytes, size == 2 ? value << 16 : value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(bytes, value);
        to.Write(bytes[..size]);
    }

    private byte[] Row(int y)
    {
        using var row = new MemoryStream();
        for (var x = 0; x < Width; x++)
        {
            for (var s = 0; s < Samples; s++)
            {
                var value = Sample(x, y, s, Bits) - (IsDifference && x > 0 ? Sample(x - 1, y, s, Bits) : 0);
                if (Bits == 8)
                    row.WriteByte(unchecked((byte)value));
                else
                    Put(row, unchecked((ushort)value), 2);
            }
        }

        return row.ToArray();
    }

    private byte[] Packed(byte[] plain) => Compression switch
    {
        5 => Lzw(plain),
        8 or 32946 => Deflated(plain),
        32773 => PackBits(plain),
        _ => plain,
    };

    private static byte[] Deflated(byte[] plain)
    {
        using var to = new MemoryStream();
        using (var zip = new ZLibStream(to, CompressionLevel.Optimal, leaveOpen: true))
            zip.Write(plain);
        return to.ToArray();
    }

    // Runs of three and more, the rest as it is.
    private static byte[] PackBits(byte[] plain)
    {
        var to = new List<byte>();
        for (var i = 0; i < plain.Length;)
        {
            var run = 1;
            while (run < 128 && i + run < plain.Length && plain[i + run] == plain[i])
                run++;
            if (run >= 3)
            {
                to.Add(unchecked((byte)(1 - run)));
                to.Add(plain[i]);
                i += run;
                continue;
            }

            var end = Math.Min(plain.Length, i + 100);
            to.Add((byte)(end - i - 1));
            to.AddRange(plain[i..end]);
            i = end;
        }

        return [.. to];
    }

    // The writer of TIFF 6.0: a table of texts by their bytes, the width growing one code early.
    private static byte[] Lzw(byte[] plain)
    {
        var to = new List<byte>();
        var (held, bits, width) = (0, 0, 9);
        var table = new Dictionary<string, int>(StringComparer.Ordinal);
        void Reset()
        {
            table.Clear();
            for (var i = 0; i < 256; i++)
                table[((char)i).ToString()] = i;
            (table["clear"], table["end"], width) = (256, 257, 9);
        }

        void Code(int code)
        {
            held = (held << width) | code;
            bits += width;
            while (bits >= 8)
            {
                to.Add(unchecked((byte)(held >> (bits - 8))));
                bits -= 8;
                held &= (1 << bits) - 1;
            }
        }

        Reset();
        Code(256);
        var text = "";
        foreach (var b in plain)
        {
            var longer = text + (char)b;
            if (table.ContainsKey(longer))
            {
                text = longer;
                continue;
            }

            Code(table[text]);
            table[longer] = table.Count;
            text = ((char)b).ToString();
            if (table.Count is 512 or 1024 or 2048)
                width++;
            if (table.Count == 4095)
            {
                Code(256);
                Reset();
            }
        }

        Code(table[text]);
        // The reader counts the code that a further text would get.
        if (table.Count + 1 is 512 or 1024 or 2048)
            width++;
        Code(257);
        if (bits > 0)
            to.Add(unchecked((byte)(held << (8 - bits))));
        return [.. to];
    }
}
