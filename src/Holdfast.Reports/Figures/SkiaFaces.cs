using Holdfast.Reports.Figures.Drawing;
using Holdfast.Reports.Fonts;
using SkiaSharp;

namespace Holdfast.Reports.Figures;

/// <summary>The faces that one sheet needs, each cut down to the letters it needs: a PDF then carries kilobytes of typeface, not megabytes.</summary>
internal sealed class SkiaFaces : IDisposable
{
    private readonly Dictionary<(bool Bold, bool Italic), SKTypeface> faces = [];

    private SkiaFaces()
    {
    }

    /// <summary>The faces of a sheet.</summary>
    public static SkiaFaces For(Sheet sheet)
    {
        var made = new SkiaFaces();
        var letters = sheet.Flat.OfType<SheetText>().SelectMany(t => t.Line.Runs, (t, r) => (Face: (t.Line.Bold, r.Italic), r.Text));
        foreach (var face in letters.GroupBy(l => l.Face, l => l.Text))
        {
            var characters = face.SelectMany(t => t.EnumerateRunes()).ToHashSet();
            using var data = SKData.CreateCopy(TypefaceSubset.Of(LiberationSans.Face(face.Key.Bold, face.Key.Italic), characters));
            made.faces[face.Key] = SKTypeface.FromData(data);
        }

        return made;
    }

    /// <summary>One of the faces.</summary>
    public SKTypeface Face(bool bold, bool italic) => faces[(bold, italic)];

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var face in faces.Values)
            face.Dispose();
    }
}
