namespace Holdfast.Reports.Figures.Drawing;

/// <summary>The short specimen beside a label: line, mark, swatch of the layer it names.</summary>
/// <param name="Tone">Tone of line, mark or swatch.</param>
/// <param name="Slot">Style of the mark and of hatching.</param>
/// <param name="Line">Dash of the line; null for no line.</param>
/// <param name="LineWidth">Width of the line in pt.</param>
/// <param name="Mark">True to show the mark.</param>
/// <param name="Swatch">Cover of a filled swatch, 0 to 1; null for none.</param>
internal sealed record Sample(
    Tone Tone, int Slot = 0, IReadOnlyList<double>? Line = null, double LineWidth = Lettering.CurveLine, bool Mark = false, double? Swatch = null)
{
    public const double Width = 13.5;

    /// <summary>The specimen with its left end and middle line at a place.</summary>
    public IEnumerable<SheetItem> Draw(double x, double y)
    {
        if (Swatch is { } cover)
        {
            yield return new SheetPath(Outline.Box(x + 2, y - 3, x + Width - 2, y + 3))
            {
                Fill = Tone,
                FillOpacity = cover,
                Stroke = Tone == Tone.Shade ? Tone.Grey : Tone,
            };
        }

        if (Line is { } dash)
            yield return new SheetPath(Outline.Line(x, y, x + Width, y)) { Stroke = Tone, LineWidth = LineWidth, Dash = dash };
        if (Mark)
            yield return LayerPainter.FilledMark(Slot, x + Width / 2, y);
    }
}
