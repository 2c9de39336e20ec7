using System.Buffers.Binary;
using System.Text;

namespace Holdfast.Reports.Fonts;

/// <summary>
/// Widths of the letters of one typeface, read from its own tables (OpenType 1.9: head, hhea, hmtx, cmap formats 4 and 12). Labels are measured
/// with these on every machine, so a figure is laid out alike whatever draws it.
/// </summary>
public sealed class Typeface
{
    private readonly byte[] data;
    private readonly int unitsPerEm;
    private readonly int advances;
    private readonly int widths;
    private readonly Dictionary<int, int> glyphs = [];

    internal Typeface(byte[] data)
    {
        this.data = data;
        unitsPerEm = U16(Table("head") + 18);
        advances = U16(Table("hhea") + 34);
        widths = Table("hmtx");
        ReadCharacters(Table("cmap"));
    }

    /// <summary>The file, byte for byte.</summary>
    public ReadOnlyMemory<byte> File => data;

    /// <summary>True when the typeface draws the character.</summary>
    /// <param name="character">The character.</param>
    public bool Has(Rune character) => glyphs.ContainsKey(character.Value);

    /// <summary>Width of a text set without kerning, in em.</summary>
    /// <param name="text">The characters.</param>
    public double Width(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var sum = 0L;
        foreach (var character in text.EnumerateRunes())
            sum += Advance(glyphs.GetValueOrDefault(character.Value));
        return (double)sum / unitsPerEm;
    }

    /// <summary>Number of the glyph of a character; 0 when there is none.</summary>
    internal int Glyph(Rune character) => glyphs.GetValueOrDefault(character.Value);

    /// <summary>Bytes of a table; empty when there is none.</summary>
    internal ReadOnlySpan<byte> TableBytes(string tag)
        => Record(tag) is { } record ? data.AsSpan((int)U32(record + 8), (int)U32(record + 12)) : [];

    private int Advance(int glyph) => U16(widths + 4 * Math.Min(glyph, advances - 1));

    private int Table(string tag)
        => Record(tag) is { } record ? (int)U32(record + 8) : throw new InvalidDataException($"The typeface has no table '{tag}'.");

    private int? Record(string tag)
    {
        for (var i = 0; i < U16(4); i++)
        {
            if (Encoding.ASCII.GetString(data, 12 + 16 * i, 4) == tag)
                return 12 + 16 * i;
        }

        return null;
    }

    private void ReadCharacters(int cmap)
    {
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var table = cmap + (int)U32(cmap + 4 + 8 * i + 4);
            var format = U16(table);
            if (format == 4)
                ReadSegments(table);
            else if (format == 12)
                ReadGroups(table);
        }
    }

    private void ReadSegments(int table)
    {
        var doubled = U16(table + 6);
        for (var s = 0; s < doubled; s += 2)
        {
            var end = U16(table + 14 + s);
            var start = U16(table + 16 + doubled + s);
            var delta = U16(table + 16 + 2 * doubled + s);
            var at = table + 16 + 3 * doubled + s;
            var offset = U16(at);
            for (var c = start; c <= end && c != 0xFFFF; c++)
            {
                var glyph = offset == 0 ? c : U16(at + offset + 2 * (c - start));
                if (glyph != 0 || offset == 0)
                    Add(c, (glyph + delta) & 0xFFFF);
            }
        }
    }

    private void ReadGroups(int table)
    {
        for (var g = 0; g < U32(table + 12); g++)
        {
            var group = table + 16 + 12 * g;
            var start = (int)U32(group);
            for (var c = start; c <= U32(group + 4); c++)
                Add(c, (int)U32(group + 8) + c - start);
        }
    }

    private void Add(int character, int glyph)
    {
        if (glyph != 0)
            glyphs[character] = glyph;
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(data.AsSpan(at));
}
