using Holdfast.Reports.Fonts;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>The typeface of documents, from this assembly: a machine needs no typeface of its own, and every machine sets the same page.</summary>
internal sealed class PdfFaces : IFontResolver
{
    private const string Family = "Liberation Sans";
    private static readonly Lock Gate = new();

    private readonly Dictionary<(double Size, bool Bold, bool Italic), XFont> fonts = [];

    /// <summary>Faces for one document.</summary>
    public PdfFaces()
    {
        // The library asks one resolver for the whole process.
        lock (Gate)
            GlobalFontSettings.FontResolver ??= this;
    }

    /// <summary>A face at a size.</summary>
    /// <param name="size">Size in pt.</param>
    /// <param name="bold">Bold or not.</param>
    /// <param name="italic">Slanted or not.</param>
    public XFont Font(double size, bool bold, bool italic)
    {
        if (!fonts.TryGetValue((size, bold, italic), out var font))
            fonts[(size, bold, italic)] = font = new(Family, size, (bold ? XFontStyleEx.Bold : XFontStyleEx.Regular) | (italic ? XFontStyleEx.Italic : XFontStyleEx.Regular), new(PdfFontEncoding.Unicode));
        return font;
    }

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new((isBold ? "b" : "r") + (isItalic ? "i" : "u"));

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => LiberationSans.Face(faceName[0] == 'b', faceName[1] == 'i').File.ToArray();
}
