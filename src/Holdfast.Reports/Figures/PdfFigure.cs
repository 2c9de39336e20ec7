using SkiaSharp;

namespace Holdfast.Reports.Figures;

/// <summary>A figure as a PDF of one page of exactly its size: lines stay lines, text stays text, the typeface is inside.</summary>
public static class PdfFigure
{
    // The page is rounded to this grid; nothing on it is a raster. A hundredth of a point.
    private const float GridDpi = 7200;

    /// <summary>The bytes of a file. They hold no date, so one figure gives one file.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its final size.</param>
    public static byte[] File(Figure figure, FigureFormat format)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var sheet = FigureLayout.Of(figure, format);
        var about = new SKDocumentPdfMetadata
        {
            Title = figure.Title,
            Subject = figure.Alt,
            Keywords = string.Join("; ", figure.MadeFrom),
            Creator = "Holdfast",
            Producer = "Holdfast",
            RasterDpi = GridDpi,
            EncodingQuality = 101,
        };
        using var faces = SkiaFaces.For(sheet);
        using var stream = new MemoryStream();
        using (var document = SKDocument.CreatePdf(stream, about))
        {
            var canvas = document.BeginPage((float)sheet.Width, (float)sheet.Height);
            new SkiaPainter(canvas, faces, outlines: false).Draw(sheet);
            document.EndPage();
            document.Close();
        }

        return stream.ToArray();
    }
}
