using System.Buffers.Binary;
using SkiaSharp;

namespace Holdfast.Reports.Figures;

/// <summary>A figure as PNG: the light sheet at its true size, which the file states.</summary>
public static class PngFigure
{
    /// <summary>Dots per inch of a picture for print.</summary>
    public const int PrintDpi = 600;

    // An IHDR chunk ends at byte 33 of every PNG file (W3C PNG, 3rd ed., 5.2 and 11.2.1).
    private const int AfterHeader = 33;

    /// <summary>The bytes of a file.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its final size.</param>
    /// <param name="dpi">Dots per inch, 72 to 1200; without a unit name in files: they state dots per metre.</param>
    public static byte[] File(Figure figure, FigureFormat format, int dpi = PrintDpi)
    {
        if (dpi is < 72 or > 1200)
            throw new ArgumentOutOfRangeException(nameof(dpi), dpi, "A picture has 72 to 1200 dots per inch.");
        var sheet = FigureLayout.Of(figure, format);
        var (width, height) = ((int)Math.Round(sheet.WidthMm / 25.4 * dpi), (int)Math.Round(sheet.HeightMm / 25.4 * dpi));
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColor.Parse(Palette.Light(Tone.Paper)));
            canvas.Scale(dpi / 72f);
            using var faces = SkiaFaces.For(sheet);
            new SkiaPainter(canvas, faces, outlines: true).Draw(sheet);
        }

        using var opaque = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgb888x, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(opaque))
            canvas.DrawBitmap(bitmap, 0, 0);
        using var data = opaque.Encode(SKEncodedImageFormat.Png, 100);
        return WithSize(data.AsSpan(), dpi);
    }

    // The encoder leaves out how large a dot is; a pHYs chunk says so (W3C PNG, 3rd ed., 11.3.5.3), and word processors place the picture at its size.
    private static byte[] WithSize(ReadOnlySpan<byte> png, int dpi)
    {
        var perMetre = (uint)Math.Round(dpi / 0.0254);
        Span<byte> chunk = stackalloc byte[21];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk[4..]);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[8..], perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[12..], perMetre);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk[17..], Crc(chunk[4..17]));
        return [.. png[..AfterHeader], .. chunk, .. png[AfterHeader..]];
    }

    // CRC of PNG chunks: reflected polynomial EDB88320 (W3C PNG, 3rd ed., annex D).
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320u;
        }

        return ~crc;
    }
}
