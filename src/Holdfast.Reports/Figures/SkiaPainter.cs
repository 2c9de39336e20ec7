using Holdfast.Reports.Figures.Drawing;
using SkiaSharp;

namespace Holdfast.Reports.Figures;

/// <summary>Draws a sheet on a canvas whose unit is the point, in the colours of the light sheet.</summary>
/// <param name="canvas">The canvas.</param>
/// <param name="faces">The typefaces.</param>
/// <param name="outlines">
/// True to draw letters as their outlines, taken from the typeface in its own grid: a picture then does not depend on how the machine renders
/// small type. False to keep text as text.
/// </param>
internal sealed class SkiaPainter(SKCanvas canvas, SkiaFaces faces, bool outlines)
{
    /// <summary>Draws all items.</summary>
    public void Draw(Sheet sheet)
    {
        foreach (var item in sheet.Flat)
        {
            if (item is SheetPath path)
                Draw(path);
            else if (item is SheetText text)
                Draw(text);
        }
    }

    private void Draw(SheetPath path)
    {
        using var shape = new SKPath();
        foreach (var s in path.Steps)
        {
            switch (s.Verb)
            {
                case PathVerb.Move:
                    shape.MoveTo((float)s.X, (float)s.Y);
                    break;
                case PathVerb.Line:
                    shape.LineTo((float)s.X, (float)s.Y);
                    break;
                case PathVerb.Curve:
                    shape.CubicTo((float)s.X1, (float)s.Y1, (float)s.X2, (float)s.Y2, (float)s.X, (float)s.Y);
                    break;
                case PathVerb.Close:
                    shape.Close();
                    break;
            }
        }

        if (path.Fill is { } fill)
        {
            using var paint = Paint(fill, path.FillOpacity);
            canvas.DrawPath(shape, paint);
        }

        if (path.Stroke is not { } stroke)
            return;
        using var line = Paint(stroke, 1);
        using var dashes = path.Dash.Count == 0 ? null : Dashed(shape, path.Dash);
        line.Style = SKPaintStyle.Stroke;
        line.StrokeWidth = (float)path.LineWidth;
        line.StrokeJoin = path.Round ? SKStrokeJoin.Round : SKStrokeJoin.Miter;
        canvas.DrawPath(dashes ?? shape, line);
    }

    // The dashes as pieces of the line. Left to the canvas, a PDF would hold the outline of every dash, corner by corner: ten times the size for a scan.
    private static SKPath Dashed(SKPath line, IReadOnlyList<double> lengths)
    {
        var pieces = new SKPath();
        using var measure = new SKPathMeasure(line);
        do
        {
            var at = 0f;
            for (var i = 0; at < measure.Length; i++)
            {
                var end = at + (float)lengths[i % lengths.Count];
                if (i % 2 == 0)
                    measure.GetSegment(at, Math.Min(end, measure.Length), pieces, startWithMoveTo: true);
                at = end;
            }
        }
        while (measure.NextContour());
        return pieces;
    }

    private void Draw(SheetText text)
    {
        using var paint = Paint(text.Tone, 1);
        canvas.Save();
        canvas.Translate((float)text.X, (float)text.Y);
        if (text.Upwards)
            canvas.RotateDegrees(-90);
        foreach (var run in text.Line.Runs)
        {
            var face = faces.Face(text.Line.Bold, run.Italic);
            var (x, y) = ((float)(text.Start + run.X), (float)run.Drop);
            using var font = new SKFont(face, outlines ? face.UnitsPerEm : (float)run.Size)
            {
                Subpixel = true,
                LinearMetrics = true,
                Hinting = SKFontHinting.None,
            };
            if (!outlines)
            {
                canvas.DrawText(run.Text, x, y, font, paint);
                continue;
            }

            using var letters = font.GetTextPath(run.Text, new SKPoint(0, 0));
            canvas.Save();
            canvas.Translate(x, y);
            canvas.Scale((float)(run.Size / face.UnitsPerEm));
            canvas.DrawPath(letters, paint);
            canvas.Restore();
        }

        canvas.Restore();
    }

    private static SKPaint Paint(Tone tone, double cover)
    {
        var colour = SKColor.Parse(Palette.Light(tone));
        return new() { IsAntialias = true, Color = colour.WithAlpha((byte)Math.Round(255 * cover)) };
    }
}
