using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies;

namespace Holdfast.Techniques.Micrographs;

/// <summary>What the beginning of a picture file says: how large its pages are, and how large it says that a pixel is. No pixel is read for it.</summary>
/// <param name="Format">"TIFF", "PNG" or "JPEG".</param>
/// <param name="Pages">Its pages, one or more.</param>
internal sealed record PictureHead(string Format, ImmutableArray<PicturePage> Pages)
{
    /// <summary>Most pixels of a picture that is opened: 128 million.</summary>
    public const long MostPixels = 1L << 27;

    /// <summary>Most pixels across or down.</summary>
    public const int LongestSide = 100_000;

    /// <summary>A pixel that is larger than this is of a printer or a screen, and says nothing of the sample, in nm: 72 to 1200 dots per inch are 353 to 21 µm.</summary>
    public const double LargestPixel = 20_000;

    /// <summary>The page that is measured on: the largest that is no reduced copy.</summary>
    public int Main => Pages.Index().OrderBy(p => p.Item.IsReduced).ThenByDescending(p => (long)p.Item.Width * p.Item.Height).First().Index;

    /// <summary>Reads the beginning of a file.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="name">Its name, for messages.</param>
    /// <exception cref="StudyException">Damaged or of a form that is not read (HF-406), or past a limit (HF-407).</exception>
    public static PictureHead Of(byte[] bytes, string name)
    {
        var head = FormatOf(bytes) switch
        {
            "TIFF" => new PictureHead("TIFF", TiffPage.All(bytes, name)),
            "PNG" => new PictureHead("PNG", [PngHead.Of(bytes, name)]),
            "JPEG" => new PictureHead("JPEG", [JpegHead.Of(bytes, name)]),
            _ => throw Damaged(name, "it is no TIFF, PNG or JPEG"),
        };
        foreach (var page in head.Pages)
            page.Require(name);
        return head;
    }

    /// <summary>The kind of picture that begins like this, or null.</summary>
    /// <param name="bytes">The first bytes of the file.</param>
    public static string? FormatOf(ReadOnlySpan<byte> bytes)
        => bytes.StartsWith("II*\0"u8) || bytes.StartsWith("MM\0*"u8) || bytes.StartsWith("II+\0"u8) || bytes.StartsWith("MM\0+"u8) ? "TIFF"
            : bytes.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? "PNG"
            : bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? "JPEG" : null;

    /// <summary>The refusal of a picture that does not hold together.</summary>
    /// <param name="name">The file.</param>
    /// <param name="what">What is wrong, in words.</param>
    public static StudyException Damaged(string name, string what) => new(Codes.Unreadable, $"{name} cannot be opened as a picture: {what}. Nothing is taken in from it. Export it again.");

    /// <summary>The refusal of a picture that is whole and of a form that is not read.</summary>
    /// <param name="name">The file.</param>
    /// <param name="what">What is not read, in words.</param>
    public static StudyException NotRead(string name, string what)
        => new(Codes.Unreadable, $"{name} is not opened: {what}. Save it as TIFF of 8 or 16 bits, grey or RGB, in strips, without compression or with LZW, deflate or PackBits; or as PNG.");
}

/// <summary>One page of a picture file.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Bits">Bits of one sample.</param>
/// <param name="Samples">Samples of one pixel: 1 grey, 3 colour, one more with transparency.</param>
/// <param name="Stated">Size of a pixel that the file states, or null.</param>
internal record PicturePage(int Width, int Height, int Bits, int Samples, StatedPixel? Stated)
{
    /// <summary>True for a reduced copy of another page.</summary>
    public bool IsReduced { get; init; }

    /// <summary>Bytes that its pixels are packed into.</summary>
    public long Packed { get; init; }

    /// <summary>Most pixels that one packed byte can hold.</summary>
    public double MostPerByte { get; init; }

    /// <summary>Refuses sizes that no picture has, or that the bytes of the file cannot hold, before anything is set aside for them.</summary>
    /// <param name="name">The file.</param>
    /// <exception cref="StudyException">Damaged (HF-406), or past a limit (HF-407).</exception>
    public void Require(string name)
    {
        if (Width < 1 || Height < 1)
            throw PictureHead.Damaged(name, "its width or height is 0");
        var pixels = (long)Width * Height;
        if (pixels > PictureHead.MostPixels || Math.Max(Width, Height) > PictureHead.LongestSide)
        {
            throw new StudyException(Codes.LimitExceeded, string.Create(CultureInfo.InvariantCulture,
                $"{name} says that it has {Width} × {Height} pixels; the limit is {PictureHead.MostPixels / 1_000_000} million, and {PictureHead.LongestSide} across or down, so nothing is kept. Cut it into parts."));
        }

        if (pixels > Packed * MostPerByte)
            throw PictureHead.Damaged(name, string.Create(CultureInfo.InvariantCulture, $"it says that it has {Width} × {Height} pixels, and holds only {Packed} bytes for them"));
    }
}

/// <summary>Size of a pixel that a file states.</summary>
/// <param name="Nanometres">Width of a pixel in nm.</param>
/// <param name="Written">As the file has it: "4000000 pixels per cm".</param>
internal sealed record StatedPixel(double Nanometres, string Written)
{
    /// <summary>From pixels per length, across and down; null where the file says nothing usable.</summary>
    /// <param name="across">Pixels per unit, across.</param>
    /// <param name="down">Pixels per unit, down.</param>
    /// <param name="unitNanometres">The unit in nm: 1e7 for a centimetre.</param>
    /// <param name="unit">Its name.</param>
    public static StatedPixel? Of(double across, double down, double unitNanometres, string unit)
    {
        const double square = 1e-3;
        if (!(across > 0) || !(down > 0) || !double.IsFinite(across) || !double.IsFinite(down) || Math.Abs(Math.Log(across / down)) > square)
            return null;
        return new(unitNanometres / across, $"{across.ToString("0.###", CultureInfo.InvariantCulture)} pixels per {unit}");
    }

    /// <summary>True for the resolution of a printer or a screen, which says nothing of the sample.</summary>
    public bool IsOfPrint => Nanometres > PictureHead.LargestPixel;
}
