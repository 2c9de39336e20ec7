using System.Runtime.InteropServices;
using Holdfast.Studies;
using SkiaSharp;

namespace Holdfast.Techniques.Micrographs;

/// <summary>
/// A picture as it is shown: grey or colour of 8 bits, with copies of half, a quarter … its size, so that a piece of any size is given out at once. Places on it are always in pixels of the
/// whole picture. Samples of 16 bits are stretched to what they hold; the file is not changed.
/// </summary>
public sealed class Picture
{
    /// <summary>Side of a piece, in pixels.</summary>
    public const int Side = 512;

    private const int Grey = 1, Colour = 3;
    private const double LeftOut = 0.001;
    private const long MostDecoded = 512L << 20;
    private readonly List<byte[]> levels = [];
    private readonly int samples;

    private Picture(int width, int height, int samples, byte[] pixels)
    {
        (Width, Height, this.samples) = (width, height, samples);
        levels.Add(pixels);
        for (var level = 1; WidthAt(level - 1) > Side || HeightAt(level - 1) > Side; level++)
            levels.Add(Halved(levels[level - 1], WidthAt(level - 1), HeightAt(level - 1), WidthAt(level), HeightAt(level), samples));
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>How many sizes there are: 0 is the picture itself, each further one half as large.</summary>
    public int Levels => levels.Count;

    /// <summary>Bytes that it holds in memory.</summary>
    public long Bytes => levels.Sum(l => (long)l.Length);

    /// <summary>Opens a page of a file that was taken in.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="page">Which page, from 0.</param>
    /// <param name="name">Name of the file, for messages.</param>
    /// <exception cref="StudyException">Damaged (HF-406), or past a limit (HF-407).</exception>
    public static Picture Of(byte[] bytes, int page, string name)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var head = PictureHead.Of(bytes, name);
        if (page < 0 || page >= head.Pages.Length)
            throw PictureHead.Damaged(name, "it has no such page");
        return head.Pages[page] is TiffPage tiff ? OfTiff(bytes, tiff, name) : OfPacked(bytes, head.Pages[page], name);
    }

    /// <summary>A piece of the picture as PNG, or null where there is none.</summary>
    /// <param name="level">0 for the picture itself, 1 for half its size …</param>
    /// <param name="column">Which piece across, from 0.</param>
    /// <param name="row">Which piece down, from 0.</param>
    public byte[]? Piece(int level, int column, int row)
    {
        if (level < 0 || level >= levels.Count || column < 0 || row < 0)
            return null;
        int width = WidthAt(level), height = HeightAt(level);
        long left = (long)column * Side, top = (long)row * Side;
        if (left >= width || top >= height)
            return null;
        int across = (int)Math.Min(Side, width - left), down = (int)Math.Min(Side, height - top);
        using var piece = new SKBitmap(new SKImageInfo(across, down, samples == Grey ? SKColorType.Gray8 : SKColorType.Rgba8888, SKAlphaType.Opaque));
        var to = piece.GetPixelSpan();
        var all = MemoryMarshal.CreateSpan(ref MemoryMarshal.GetReference(to), to.Length);
        for (var y = 0; y < down; y++)
        {
            var from = levels[level].AsSpan((int)((top + y) * width + left) * samples, across * samples);
            var line = all[(y * piece.RowBytes)..];
            if (samples == Grey)
            {
                from.CopyTo(line);
                continue;
            }

            for (var x = 0; x < across; x++)
            {
                from.Slice(x * Colour, Colour).CopyTo(line[(4 * x)..]);
                line[4 * x + 3] = byte.MaxValue;
            }
        }

        using var pixels = piece.PeekPixels() ?? throw new InvalidOperationException("A piece has no pixels.");
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Up, 1));
        return data?.ToArray();
    }

    /// <summary>One shown sample of the picture itself, 0 to 255: for checks.</summary>
    /// <param name="x">Pixels from the left.</param>
    /// <param name="y">Pixels from above.</param>
    internal byte At(int x, int y) => levels[0][(y * Width + x) * samples];

    private int WidthAt(int level) => Math.Max(1, (Width + (1 << level) - 1) >> level);

    private int HeightAt(int level) => Math.Max(1, (Height + (1 << level) - 1) >> level);

    private static Picture OfTiff(byte[] bytes, TiffPage page, string name)
    {
        var stretch = page.Bits == 16 ? GreyRange.Of(page, bytes, name) : null;
        var colour = page.Samples >= Colour || !page.Colours.IsEmpty;
        var samples = colour && (long)page.Width * page.Height * Colour <= MostDecoded / 2 ? Colour : Grey;
        var pixels = new byte[page.Width * page.Height * samples];
        TiffRows.Read(bytes, page, name, (y, row) =>
        {
            var line = pixels.AsSpan(y * page.Width * samples, page.Width * samples);
            if (stretch is null && page is { Samples: 1, IsInverted: false, Colours.IsEmpty: true })
            {
                row.CopyTo(line);
                return;
            }

            for (var x = 0; x < page.Width; x++)
            {
                if (!colour)
                {
                    line[x] = Shown(row, x * page.Samples);
                    continue;
                }

                var (red, green, blue) = page.Colours.IsEmpty
                    ? (Shown(row, x * page.Samples), Shown(row, x * page.Samples + 1), Shown(row, x * page.Samples + 2))
                    : (page.Colours[3 * row[x]], page.Colours[3 * row[x] + 1], page.Colours[3 * row[x] + 2]);
                if (samples == Colour)
                    (line[3 * x], line[3 * x + 1], line[3 * x + 2]) = (red, green, blue);
                else
                    line[x] = (byte)((red + green + blue) / 3);
            }
        });
        return new(page.Width, page.Height, samples, pixels);

        byte Shown(byte[] row, int sample)
        {
            var value = stretch is null ? row[sample] : stretch.Shown(row[2 * sample] | (row[2 * sample + 1] << 8));
            return page.IsInverted ? (byte)(byte.MaxValue - value) : value;
        }
    }

    private static Picture OfPacked(byte[] bytes, PicturePage page, string name)
    {
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data) ?? throw PictureHead.Damaged(name, "its pixels are damaged");
        if (codec.Info.Width != page.Width || codec.Info.Height != page.Height)
            throw PictureHead.Damaged(name, "its header says two sizes");
        var deep = page.Bits == 16;
        var grey = !deep && codec.Info.ColorType == SKColorType.Gray8;
        var info = new SKImageInfo(page.Width, page.Height, deep ? SKColorType.RgbaF16 : grey ? SKColorType.Gray8 : SKColorType.Rgba8888, deep || !grey ? SKAlphaType.Unpremul : SKAlphaType.Opaque);
        if (info.BytesSize64 > MostDecoded)
            throw new StudyException(Codes.LimitExceeded, FormattableString.Invariant($"{name} needs {info.BytesSize64 >> 20} MB once it is unpacked; the limit is {MostDecoded >> 20} MB. Save it as TIFF, or in 8 bits grey."));
        using var whole = new SKBitmap();
        if (!whole.TryAllocPixels(info))
            throw PictureHead.Damaged(name, "there is no memory for its pixels");
        if (codec.GetPixels(info, whole.GetPixels()) is not SKCodecResult.Success)
            throw PictureHead.Damaged(name, "its pixels end early or are damaged");
        var from = whole.GetPixelSpan();
        if (grey)
        {
            var lines = new byte[page.Width * page.Height];
            for (var y = 0; y < page.Height; y++)
                from.Slice(y * whole.RowBytes, page.Width).CopyTo(lines.AsSpan(y * page.Width));
            return new(page.Width, page.Height, Grey, lines);
        }

        return deep ? OfDeep(MemoryMarshal.Cast<byte, Half>(from), page) : OfColour(from, page);
    }

    private static Picture OfColour(ReadOnlySpan<byte> from, PicturePage page)
    {
        var pixels = new byte[page.Width * page.Height * Colour];
        for (var i = 0; i < page.Width * page.Height; i++)
            from.Slice(4 * i, Colour).CopyTo(pixels.AsSpan(Colour * i));
        return new(page.Width, page.Height, Colour, pixels);
    }

    // Samples of 16 bits come as fractions; the mean of the three colours is shown, stretched.
    private static Picture OfDeep(ReadOnlySpan<Half> from, PicturePage page)
    {
        var greys = new ushort[page.Width * page.Height];
        for (var i = 0; i < greys.Length; i++)
            greys[i] = (ushort)Math.Clamp(((float)from[4 * i] + (float)from[4 * i + 1] + (float)from[4 * i + 2]) / 3 * ushort.MaxValue, 0, ushort.MaxValue);
        var range = GreyRange.Of(greys);
        return new(page.Width, page.Height, Grey, Array.ConvertAll(greys, g => range.Shown(g)));
    }

    // Each pixel is the mean of the four under it.
    private static byte[] Halved(byte[] from, int width, int height, int toWidth, int toHeight, int samples)
    {
        var to = new byte[toWidth * toHeight * samples];
        Parallel.For(0, toHeight, y =>
        {
            var above = from.AsSpan(2 * y * width * samples, width * samples);
            var below = from.AsSpan(Math.Min(2 * y + 1, height - 1) * width * samples, width * samples);
            var line = to.AsSpan(y * toWidth * samples, toWidth * samples);
            for (var x = 0; x < toWidth; x++)
            {
                int left = 2 * x * samples, right = Math.Min(2 * x + 1, width - 1) * samples;
                for (var s = 0; s < samples; s++)
                    line[x * samples + s] = (byte)((above[left + s] + above[right + s] + below[left + s] + below[right + s] + 2) / 4);
            }
        });
        return to;
    }

    // What samples of 16 bits hold, but for one in a thousand at each end, shown from black to white.
    private sealed class GreyRange
    {
        private readonly int low;
        private readonly double slope;

        private GreyRange(long[] counts)
        {
            long all = counts.Sum(), below = 0, above = 0;
            int from = 0, to = counts.Length - 1;
            while (from < to && (below += counts[from]) <= LeftOut * all)
                from++;
            while (to > from && (above += counts[to]) <= LeftOut * all)
                to--;
            (low, slope) = (from, 255.0 / Math.Max(1, to - from));
        }

        public static GreyRange Of(TiffPage page, byte[] bytes, string name)
        {
            var counts = new long[ushort.MaxValue + 1];
            TiffRows.Read(bytes, page, name, (_, row) =>
            {
                for (var i = 0; i < row.Length; i += 2)
                    counts[row[i] | (row[i + 1] << 8)]++;
            });
            return new(counts);
        }

        public static GreyRange Of(ushort[] samples)
        {
            var counts = new long[ushort.MaxValue + 1];
            foreach (var sample in samples)
                counts[sample]++;
            return new(counts);
        }

        public byte Shown(int sample) => (byte)Math.Clamp((sample - low) * slope, 0, 255);
    }
}
