using System.Buffers.Binary;
using System.Text;

namespace Holdfast.Reports.Fonts;

/// <summary>
/// A copy of a typeface that draws only some characters, for embedding in one document, which the licence of the typeface leaves free. Glyph
/// numbers and widths stay; outlines of other glyphs and tables that only screens and line breakers use are left out (OpenType 1.9: glyf, loca).
/// </summary>
internal static class TypefaceSubset
{
    // By tag, as the table directory wants them.
    private static readonly string[] Kept = ["OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"];

    private const int MoreComponents = 0x20;
    private const int WordArguments = 0x01;
    private const int OneScale = 0x08;
    private const int TwoScales = 0x40;
    private const int FourScales = 0x80;

    /// <summary>The file of the copy.</summary>
    /// <param name="typeface">The whole typeface.</param>
    /// <param name="characters">The characters to keep.</param>
    public static byte[] Of(Typeface typeface, IEnumerable<Rune> characters)
    {
        var starts = Starts(typeface);
        var outlines = typeface.TableBytes("glyf");
        var used = new SortedSet<int> { 0 };
        foreach (var character in characters)
            Use(typeface.Glyph(character), outlines, starts, used);

        var (glyf, loca) = Cut(outlines, starts, used);
        var head = typeface.TableBytes("head").ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(8), 0);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);

        // Names of glyphs (post, version 2) are not needed by number: version 3 has none.
        var post = typeface.TableBytes("post")[..32].ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(post, 0x00030000);
        return Assemble(Kept.Select(tag => (tag, tag switch
        {
            "glyf" => glyf,
            "loca" => loca,
            "head" => head,
            "post" => post,
            _ => typeface.TableBytes(tag).ToArray(),
        })).ToArray());
    }

    private static int[] Starts(Typeface typeface)
    {
        var loca = typeface.TableBytes("loca");
        var isLong = BinaryPrimitives.ReadInt16BigEndian(typeface.TableBytes("head")[50..]) == 1;
        var starts = new int[loca.Length / (isLong ? 4 : 2)];
        for (var i = 0; i < starts.Length; i++)
            starts[i] = isLong ? BinaryPrimitives.ReadInt32BigEndian(loca[(4 * i)..]) : 2 * BinaryPrimitives.ReadUInt16BigEndian(loca[(2 * i)..]);
        return starts;
    }

    // A composite glyph needs the glyphs that it is put together from.
    private static void Use(int glyph, ReadOnlySpan<byte> outlines, int[] starts, SortedSet<int> used)
    {
        if (!used.Add(glyph) || starts[glyph + 1] == starts[glyph])
            return;
        var outline = outlines[starts[glyph]..starts[glyph + 1]];
        if (BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
            return;
        var at = 10;
        int flags;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline[at..]);
            Use(BinaryPrimitives.ReadUInt16BigEndian(outline[(at + 2)..]), outlines, starts, used);
            at += 4 + ((flags & WordArguments) != 0 ? 4 : 2)
                + ((flags & OneScale) != 0 ? 2 : (flags & TwoScales) != 0 ? 4 : (flags & FourScales) != 0 ? 8 : 0);
        }
        while ((flags & MoreComponents) != 0);
    }

    private static (byte[] Glyf, byte[] Loca) Cut(ReadOnlySpan<byte> outlines, int[] starts, SortedSet<int> used)
    {
        var glyf = new List<byte>();
        var loca = new byte[4 * starts.Length];
        for (var i = 0; i < starts.Length; i++)
        {
            BinaryPrimitives.WriteInt32BigEndian(loca.AsSpan(4 * i), glyf.Count);
            if (!used.Contains(i))
                continue;
            glyf.AddRange(outlines[starts[i]..starts[i + 1]]);
            while (glyf.Count % 4 != 0)
                glyf.Add(0);
        }

        return ([.. glyf], loca);
    }

    private static byte[] Assemble((string Tag, byte[] Bytes)[] tables)
    {
        var directory = 12 + 16 * tables.Length;
        var file = new byte[directory + tables.Sum(t => Padded(t.Bytes.Length))];
        BinaryPrimitives.WriteUInt32BigEndian(file, 0x00010000);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(4), (ushort)tables.Length);
        var power = (int)Math.Floor(Math.Log2(tables.Length));
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(6), (ushort)(16 << power));
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(8), (ushort)power);
        BinaryPrimitives.WriteUInt16BigEndian(file.AsSpan(10), (ushort)(16 * tables.Length - (16 << power)));
        int at = directory, head = 0;
        for (var i = 0; i < tables.Length; i++)
        {
            var (tag, bytes) = tables[i];
            var record = file.AsSpan(12 + 16 * i);
            bytes.CopyTo(file, at);
            Encoding.ASCII.GetBytes(tag, record);
            BinaryPrimitives.WriteUInt32BigEndian(record[4..], Sum(file.AsSpan(at, Padded(bytes.Length))));
            BinaryPrimitives.WriteInt32BigEndian(record[8..], at);
            BinaryPrimitives.WriteInt32BigEndian(record[12..], bytes.Length);
            head = tag == "head" ? at : head;
            at += Padded(bytes.Length);
        }

        // OpenType 1.9, head: the whole file is to add up to this number.
        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(head + 8), unchecked(0xB1B0AFBA - Sum(file)));
        return file;
    }

    private static int Padded(int length) => (length + 3) / 4 * 4;

    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        uint sum = 0;
        for (var i = 0; i + 4 <= bytes.Length; i += 4)
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(bytes[i..]));
        return sum;
    }
}
