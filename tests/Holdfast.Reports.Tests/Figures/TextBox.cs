using Holdfast.Reports.Figures.Drawing;

namespace Holdfast.Reports.Tests.Figures;

/// <summary>Room a text takes on the sheet, from capital height to below the base line, in pt.</summary>
internal readonly record struct TextBox(double Left, double Top, double Right, double Bottom)
{
    public static TextBox Of(SheetText text)
    {
        var size = text.Line.Runs.Max(r => r.Size);
        var (start, end) = (text.Start, text.Start + text.Line.Width);
        var (above, below) = (0.72 * size, 0.21 * size);
        return text.Upwards
            ? new(text.X - above, text.Y - end, text.X + below, text.Y - start)
            : new(text.X + start, text.Y - above, text.X + end, text.Y + below);
    }

    public bool Meets(TextBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}
