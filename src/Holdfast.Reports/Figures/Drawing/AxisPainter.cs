namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Draws axes, ticks and their labels. Ticks stand outside, so that they never meet the data.</summary>
internal static class AxisPainter
{
    /// <summary>Gap between a tick and its label, in pt.</summary>
    public const double TickGap = 2;

    /// <summary>Gap between tick labels and the axis title, in pt.</summary>
    public const double TitleGap = 4;

    /// <summary>Height of a line of tick labels, in pt.</summary>
    public const double TickLine = Lettering.Tick * Lettering.Leading;

    /// <summary>Height of a line of an axis title, in pt.</summary>
    public const double TitleLine = Lettering.Title * Lettering.Leading;

    /// <summary>The two axis lines of a plot.</summary>
    public static SheetItem Lines(Clip box)
        => new SheetPath(Outline.Through([(box.Left, box.Top), (box.Left, box.Bottom), (box.Right, box.Bottom)]))
        {
            Stroke = Tone.Line,
            LineWidth = Lettering.AxisLine,
        };

    /// <summary>The vertical axis: ticks, labels, title reading upwards.</summary>
    /// <param name="ticks">Its ticks.</param>
    /// <param name="area">The plot.</param>
    /// <param name="title">Lines of its title.</param>
    /// <param name="titleX">Base line of the last title line, in pt.</param>
    public static IEnumerable<SheetItem> Vertical(AxisTicks ticks, PlotArea area, IReadOnlyList<SetLine> title, double titleX)
    {
        var left = area.Box.Left;
        foreach (var tick in ticks.Major)
        {
            var y = area.Y.Place(tick.Value)!.Value;
            yield return Stroke(left - Lettering.MajorTick, y, left, y);
            var set = SetLine.Of(tick.Label, Lettering.Tick);
            yield return new SheetText(left - Lettering.MajorTick - TickGap, y + Lettering.HalfCapital * Lettering.Tick, set) { Anchor = TextAnchor.End };
        }

        foreach (var value in ticks.Minor)
            yield return Stroke(left - Lettering.MinorTick, area.Y.Place(value)!.Value, left, area.Y.Place(value)!.Value);
        for (var i = 0; i < title.Count; i++)
        {
            var x = titleX - (title.Count - 1 - i) * TitleLine;
            yield return new SheetText(x, (area.Box.Top + area.Box.Bottom) / 2, title[i]) { Anchor = TextAnchor.Middle, Upwards = true };
        }
    }

    /// <summary>The horizontal axis: ticks and, unless a strip below carries them, labels and title.</summary>
    /// <param name="ticks">Its ticks.</param>
    /// <param name="area">The plot.</param>
    /// <param name="labels">Lines of each tick label; null for ticks alone.</param>
    /// <param name="title">Lines of the title.</param>
    public static IEnumerable<SheetItem> Horizontal(
        AxisTicks ticks, PlotArea area, IReadOnlyList<IReadOnlyList<SetLine>>? labels, IReadOnlyList<SetLine> title)
    {
        var bottom = area.Box.Bottom;
        foreach (var tick in ticks.Major)
            yield return Stroke(area.X.Place(tick.Value)!.Value, bottom, area.X.Place(tick.Value)!.Value, bottom + Lettering.MajorTick);
        foreach (var value in ticks.Minor)
            yield return Stroke(area.X.Place(value)!.Value, bottom, area.X.Place(value)!.Value, bottom + Lettering.MinorTick);
        if (labels is null)
            yield break;

        var first = bottom + Lettering.MajorTick + TickGap + 0.72 * Lettering.Tick;
        for (var i = 0; i < labels.Count; i++)
        {
            var middle = area.X.Place(ticks.Major[i].Value)!.Value;
            for (var line = 0; line < labels[i].Count; line++)
                yield return new SheetText(middle, first + line * TickLine, labels[i][line]) { Anchor = TextAnchor.Middle };
        }

        var below = first + (labels.Select(l => l.Count).DefaultIfEmpty(1).Max() - 1) * TickLine + TitleGap + 0.95 * Lettering.Title;
        for (var i = 0; i < title.Count; i++)
            yield return new SheetText((area.Box.Left + area.Box.Right) / 2, below + i * TitleLine, title[i]) { Anchor = TextAnchor.Middle };
    }

    /// <summary>Room below a plot for a horizontal axis, in pt.</summary>
    /// <param name="labelLines">Most lines of a tick label.</param>
    /// <param name="titleLines">Lines of the title.</param>
    public static double RoomBelow(int labelLines, int titleLines)
        => Lettering.MajorTick + TickGap + 0.72 * Lettering.Tick + (labelLines - 1) * TickLine + TitleGap + 0.95 * Lettering.Title
            + (titleLines - 1) * TitleLine + 0.3 * Lettering.Title;

    private static SheetPath Stroke(double x1, double y1, double x2, double y2)
        => new(Outline.Line(x1, y1, x2, y2)) { Stroke = Tone.Line, LineWidth = Lettering.ThinLine };
}
