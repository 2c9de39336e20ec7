using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;

namespace Holdfast.Techniques.Micrographs;

/// <summary>One page of a TIFF: its directory, read with every count and place checked against the file.</summary>
/// <remarks>TIFF revision 6.0 (Aldus, 1992; from memory): strips of grey, palette or RGB samples of 8 or 16 bits.</remarks>
internal sealed record TiffPage(int Width, int Height, int Bits, int Samples, StatedPixel? Stated) : PicturePage(Width, Height, Bits, Samples, Stated)
{
    /// <summary>No compression.</summary>
    public const int Plain = 1;

    /// <summary>LZW.</summary>
    public const int Lzw = 5;

    /// <summary>Deflate.</summary>
    public const int Deflate = 8;

    /// <summary>PackBits.</summary>
    public const int PackBits = 32773;

    private const int OldDeflate = 32946;
    private const int MostPages = 64;
    private const int MostTags = 1024;
    private const int WhiteIsZero = 0, BlackIsZero = 1, Rgb = 2, Palette = 3;

    // Most bytes out of one byte in: a code of 12 bits gives at most 4096 bytes; deflate 1032 to 1; two bytes of PackBits give 128.
    private static readonly ImmutableDictionary<int, double> MostOut = ImmutableDictionary<int, double>.Empty.Add(Plain, 1).Add(Lzw, 2731).Add(Deflate, 1032).Add(PackBits, 64);

    /// <summary>True for big-endian samples.</summary>
    public bool IsBigEndian { get; private init; }

    /// <summary>How the strips are packed.</summary>
    public int Compression { get; private init; }

    /// <summary>True where each sample is kept as the difference to its left neighbour.</summary>
    public bool IsDifference { get; private init; }

    /// <summary>True where 0 is white.</summary>
    public bool IsInverted { get; private init; }

    /// <summary>Rows of one strip.</summary>
    public int RowsPerStrip { get; private init; }

    /// <summary>Where each strip begins, and its length, in bytes.</summary>
    public ImmutableArray<(int Offset, int Length)> Strips { get; private init; } = [];

    /// <summary>Red, green and blue of each value of a palette; empty for none.</summary>
    public ImmutableArray<byte> Colours { get; private init; } = [];

    /// <summary>Bytes of one unpacked row.</summary>
    public int RowBytes => Width * Samples * Bits / 8;

    /// <summary>Every page of a file.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="name">Its name, for messages.</param>
    public static ImmutableArray<PicturePage> All(byte[] bytes, string name)
    {
        if (bytes.Length < 8)
            throw PictureHead.Damaged(name, "it ends within its header");
        var big = bytes[0] == 'M';
        var tiff = new Directory(bytes, big, name);
        if (tiff.Short(2) == 43)
            throw PictureHead.NotRead(name, "it is a TIFF of more than 4 GB (BigTIFF)");
        var pages = ImmutableArray.CreateBuilder<PicturePage>();
        var seen = new HashSet<uint>();
        StudyException? refusal = null;
        for (var at = tiff.Long(4); at != 0 && pages.Count < MostPages; at = tiff.Next)
        {
            if (!seen.Add(at))
                throw PictureHead.Damaged(name, "its list of pages runs in a circle");
            tiff.Open(at);
            try
            {
                pages.Add(Of(tiff, big, name));
            }
            catch (StudyException e) when (IsReducedCopy(tiff))
            {
                // A thumbnail of an odd form does not spoil the picture beside it; the other way round nobody would measure on the picture.
                refusal ??= e;
            }
        }

        return pages.Count > 0 ? pages.ToImmutable() : throw refusal ?? PictureHead.Damaged(name, "it holds no page");
    }

    private static TiffPage Of(Directory tiff, bool big, string name)
    {
        int width = tiff.One(256, 0), height = tiff.One(257, 0), samples = tiff.One(277, 1), photometric = tiff.One(262, BlackIsZero), compression = tiff.One(259, Plain);
        ImmutableArray<uint> bits = tiff.All(258, [1]);
        new PicturePage(width, height, 8, 1, null) { Packed = long.MaxValue, MostPerByte = 1 }.Require(name);
        compression = compression == OldDeflate ? Deflate : compression;
        if (tiff.Has(322) || tiff.Has(324))
            throw PictureHead.NotRead(name, "its pixels lie in tiles");
        if (!MostOut.TryGetValue(compression, out var mostOut))
            throw PictureHead.NotRead(name, $"it is compressed by method {compression.ToString(CultureInfo.InvariantCulture)}");
        if (bits.Distinct().Count() != 1 || bits[0] is not (8 or 16) || tiff.All(339, [1]).Any(f => f != 1))
            throw PictureHead.NotRead(name, $"its samples have {string.Join(", ", bits.Take(4))} bits, or are no whole numbers");
        var known = photometric switch { WhiteIsZero or BlackIsZero => samples is 1 or 2, Rgb => samples is 3 or 4, Palette => samples == 1 && bits[0] == 8, _ => false };
        if (!known || (samples > 1 && tiff.One(284, 1) != 1))
            throw PictureHead.NotRead(name, $"its colours are of kind {photometric.ToString(CultureInfo.InvariantCulture)} with {samples.ToString(CultureInfo.InvariantCulture)} samples");
        var rows = Math.Clamp(tiff.One(278, height), 1, height);
        var strips = Placed(tiff, (height + rows - 1) / rows, name);
        var page = new TiffPage(width, height, (int)bits[0], samples, PixelOf(tiff))
        {
            IsBigEndian = big,
            IsReduced = IsReducedCopy(tiff),
            Compression = compression,
            IsDifference = tiff.One(317, 1) == 2,
            IsInverted = photometric == WhiteIsZero,
            RowsPerStrip = rows,
            Strips = strips,
            Colours = photometric == Palette ? ColoursOf(tiff, name) : [],
            Packed = strips.Sum(s => (long)s.Length),
        };
        if (tiff.One(317, 1) is not (1 or 2))
            throw PictureHead.NotRead(name, "its samples are kept as differences of an unusual kind");
        page = page with { MostPerByte = mostOut / (samples * bits[0] / 8.0) };
        page.Require(name);
        return page;
    }

    private static bool IsReducedCopy(Directory tiff) => (tiff.One(254, 0) & 1) != 0;

    private static ImmutableArray<(int Offset, int Length)> Placed(Directory tiff, int count, string name)
    {
        ImmutableArray<uint> offsets = tiff.All(273, []), lengths = tiff.All(279, []);
        if (offsets.Length < count || lengths.Length < count)
            throw PictureHead.Damaged(name, "the places of its strips are missing");
        var strips = ImmutableArray.CreateBuilder<(int, int)>(count);
        for (var i = 0; i < count; i++)
        {
            if ((long)offsets[i] + lengths[i] > tiff.Length)
                throw PictureHead.Damaged(name, "it is cut short: a strip lies past its end");
            strips.Add(((int)offsets[i], (int)lengths[i]));
        }

        return strips.ToImmutable();
    }

    private static ImmutableArray<byte> ColoursOf(Directory tiff, string name)
    {
        var map = tiff.All(320, []);
        if (map.Length < 3 * 256)
            throw PictureHead.Damaged(name, "its palette is missing");
        return [.. Enumerable.Range(0, 256).SelectMany(i => new[] { map[i], map[256 + i], map[512 + i] }).Select(v => (byte)(v >> 8))];
    }

    private static StatedPixel? PixelOf(Directory tiff) => tiff.One(296, 2) switch
    {
        2 => StatedPixel.Of(tiff.Ratio(282), tiff.Ratio(283), 2.54e7, "inch"),
        3 => StatedPixel.Of(tiff.Ratio(282), tiff.Ratio(283), 1e7, "cm"),
        _ => null,
    };

    // A list of tags at a place of the file. Nothing is read past its end, and nothing is set aside that the file could not fill.
    private sealed class Directory(byte[] bytes, bool big, string name)
    {
        private readonly Dictionary<int, (int Kind, uint Count, int Place)> tags = [];

        public int Length => bytes.Length;

        public uint Next { get; private set; }

        public int Short(long at) => (int)Number(at, 2);

        public uint Long(long at) => Number(at, 4);

        public void Open(uint at)
        {
            tags.Clear();
            var count = Short(at);
            if (count is 0 or > MostTags)
                throw PictureHead.Damaged(name, "a list of its tags has no sensible length");
            for (var i = 0; i < count; i++)
            {
                var place = at + 2L + 12 * i;
                tags[Short(place)] = (Short(place + 2), Long(place + 4), checked((int)(place + 8)));
            }

            Next = Long(at + 2L + 12 * count);
        }

        public bool Has(int tag) => tags.ContainsKey(tag);

        public int One(int tag, int otherwise) => All(tag, [(uint)otherwise]) is [var first, ..] ? (int)Math.Min(first, int.MaxValue) : otherwise;

        public ImmutableArray<uint> All(int tag, ImmutableArray<uint> otherwise)
        {
            if (!tags.TryGetValue(tag, out var found) || SizeOf(found.Kind) is not (1 or 2 or 4) || found.Count == 0)
                return otherwise;
            var size = SizeOf(found.Kind);
            var at = found.Count * (long)size <= 4 ? (long)found.Place : Long(found.Place);
            if (at + found.Count * (long)size > bytes.Length)
                throw PictureHead.Damaged(name, "a tag points past its end");
            return [.. Enumerable.Range(0, (int)found.Count).Select(i => Number(at + (long)i * size, size))];
        }

        // A quotient of two numbers; 0 where there is none.
        public double Ratio(int tag)
        {
            if (!tags.TryGetValue(tag, out var found) || found.Kind != 5 || found.Count < 1)
                return 0;
            var at = Long(found.Place);
            return at + 8L > bytes.Length || Long(at + 4L) == 0 ? 0 : Long(at) / (double)Long(at + 4L);
        }

        private static int SizeOf(int kind) => kind switch { 1 or 7 => 1, 3 => 2, 4 => 4, _ => 0 };

        private uint Number(long at, int size)
        {
            if (at < 0 || at + size > bytes.Length)
                throw PictureHead.Damaged(name, "it is cut short");
            var span = bytes.AsSpan((int)at, size);
            return size switch
            {
                1 => span[0],
                2 => big ? BinaryPrimitives.ReadUInt16BigEndian(span) : BinaryPrimitives.ReadUInt16LittleEndian(span),
                _ => big ? BinaryPrimitives.ReadUInt32BigEndian(span) : BinaryPrimitives.ReadUInt32LittleEndian(span),
            };
        }
    }
}
