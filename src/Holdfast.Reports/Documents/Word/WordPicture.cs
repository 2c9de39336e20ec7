using DocumentFormat.OpenXml.Drawing;
using DocumentFormat.OpenXml.Drawing.Wordprocessing;
using DocumentFormat.OpenXml.Office2019.Drawing.SVG;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Office;
using Pictures = DocumentFormat.OpenXml.Drawing.Pictures;

namespace Holdfast.Reports.Documents.Word;

/// <summary>A picture in a line of text: a raster that every program shows, and the vector that newer ones take instead; words for who does not see it.</summary>
internal static class WordPicture
{
    /// <summary>Dots per inch of the raster.</summary>
    public const int Dpi = 300;

    // ECMA-376 part 1, 20.1.2.1: English Metric Units, 36 000 to a millimetre.
    private const int EmuPerMm = 36000;
    private const string PictureKind = "http://schemas.openxmlformats.org/drawingml/2006/picture";
    private const string SvgExtension = "{96DAC541-7B7A-43D3-8B79-37D633B846F1}";

    /// <summary>The picture.</summary>
    /// <param name="figure">The figure, for its name and its alternative text.</param>
    /// <param name="number">Its number in the document, from 1.</param>
    /// <param name="raster">Id of the raster part.</param>
    /// <param name="vector">Id of the vector part.</param>
    /// <param name="widthMm">Width in mm.</param>
    /// <param name="heightMm">Height in mm.</param>
    public static Drawing Of(Figure figure, uint number, string raster, string vector, double widthMm, double heightMm)
    {
        var (width, height) = ((long)Math.Round(widthMm * EmuPerMm), (long)Math.Round(heightMm * EmuPerMm));
        var blip = new Blip(new BlipExtensionList(new BlipExtension(new SVGBlip { Embed = vector }) { Uri = SvgExtension })) { Embed = raster };
        var (name, words) = (OfficeZip.Sound(figure.Title), OfficeZip.Sound(figure.Alt));
        var picture = new Pictures.Picture(
            new Pictures.NonVisualPictureProperties(new Pictures.NonVisualDrawingProperties { Id = number, Name = name, Description = words }, new Pictures.NonVisualPictureDrawingProperties()),
            new Pictures.BlipFill(blip, new Stretch(new FillRectangle())),
            new Pictures.ShapeProperties(
                new Transform2D(new Offset { X = 0, Y = 0 }, new Extents { Cx = width, Cy = height }), new PresetGeometry(new AdjustValueList()) { Preset = ShapeTypeValues.Rectangle }));
        return new Drawing(new Inline(
            new Extent { Cx = width, Cy = height },
            new EffectExtent { LeftEdge = 0, TopEdge = 0, RightEdge = 0, BottomEdge = 0 },
            new DocProperties { Id = number, Name = name, Description = words },
            new Graphic(new GraphicData(picture) { Uri = PictureKind }))
        { DistanceFromTop = 0, DistanceFromBottom = 0, DistanceFromLeft = 0, DistanceFromRight = 0 });
    }
}
