namespace Holdfast.Reports.Figures.Drawing;

/// <summary>
/// Draws marks with their error bars: filled when measured, hollow with an arrow when known only to lie beyond, hollow grey
/// when struck, hollow in its colour when left out.
/// </summary>
internal static class MarkPainter
{
    private const double Cap = 1.6;
    private const double Arrow = 11;
    private const double Head = 1.7;

    /// <summary>The marks of a layer as one group.</summary>
    public static SheetGroup Draw(Marks marks, Panel panel, PlotArea area)
    {
        var items = new List<SheetItem>();

        // Struck marks lie below, so that they never cover one that counts.
        foreach (var mark in marks.Points.OrderByDescending(m => m.State == MarkState.Struck))
        {
            if (area.Visible(mark.X, mark.Y) is not { } place)
                continue;
            items.Add(new SheetGroup(GroupKind.Mark, MarkSpeech.Of(panel, mark), Parts(mark, marks.Slot, place, area)) { Id = mark.Id, Centre = place });
        }

        return new(GroupKind.Series, marks.Label?.Spoken ?? panel.Y.Name, items);
    }

    /// <summary>An error bar along y with caps.</summary>
    public static IEnumerable<SheetItem> Upright(double x, ErrorBar bar, PlotArea area, Tone tone)
    {
        var low = area.Y.Place(bar.Low) ?? area.Box.Bottom;
        if (area.Y.Place(bar.High) is not { } high)
            yield break;
        foreach (var piece in area.Box.Line([(x, low), (x, high)]))
            yield return new SheetPath(Outline.Through(piece)) { Stroke = tone, LineWidth = Lettering.BarLine };
        foreach (var end in new[] { low, high }.Where(y => area.Box.Holds(x, y)))
            yield return new SheetPath(Outline.Line(x - Cap, end, x + Cap, end)) { Stroke = tone, LineWidth = Lettering.BarLine };
    }

    private static List<SheetItem> Parts(Mark mark, int slot, (double X, double Y) at, PlotArea area)
    {
        var tone = mark.State == MarkState.Struck ? Tone.Grey : Palette.OfSlot(slot);
        var parts = new List<SheetItem>();
        if (mark.XBar is { } along)
            parts.AddRange(Level(at.Y, along, area, tone));
        if (mark.YBar is { } upright)
            parts.AddRange(Upright(at.X, upright, area, tone));
        if (Direction(mark.State, area) is { } way)
            parts.AddRange(Pointer(at, way, tone));
        parts.Add(mark.State == MarkState.Measured
            ? LayerPainter.FilledMark(slot, at.X, at.Y)
            : new SheetPath(Outline.Mark(slot, at.X, at.Y)) { Fill = Tone.Paper, Stroke = tone, LineWidth = Lettering.BarLine });
        return parts;
    }

    private static IEnumerable<SheetItem> Level(double y, ErrorBar bar, PlotArea area, Tone tone)
    {
        var low = area.X.Place(bar.Low) ?? area.X.Start;
        if (area.X.Place(bar.High) is not { } high)
            yield break;
        foreach (var piece in area.Box.Line([(low, y), (high, y)]))
            yield return new SheetPath(Outline.Through(piece)) { Stroke = tone, LineWidth = Lettering.BarLine };
        foreach (var end in new[] { low, high }.Where(x => area.Box.Holds(x, y)))
            yield return new SheetPath(Outline.Line(end, y - Cap, end, y + Cap)) { Stroke = tone, LineWidth = Lettering.BarLine };
    }

    private static (double X, double Y)? Direction(MarkState state, PlotArea area)
    {
        double right = Math.Sign(area.X.End - area.X.Start), up = Math.Sign(area.Y.End - area.Y.Start);
        return state switch
        {
            MarkState.BelowX => (-right, 0),
            MarkState.AboveX => (right, 0),
            MarkState.BelowY => (0, -up),
            MarkState.AboveY => (0, up),
            _ => null,
        };
    }

    private static IEnumerable<SheetItem> Pointer((double X, double Y) at, (double X, double Y) way, Tone tone)
    {
        var (tipX, tipY) = (at.X + way.X * Arrow, at.Y + way.Y * Arrow);
        var (baseX, baseY) = (tipX - way.X * 2.6, tipY - way.Y * 2.6);
        yield return new SheetPath(Outline.Line(at.X, at.Y, baseX, baseY)) { Stroke = tone, LineWidth = Lettering.BarLine };
        var corners = new[] { (tipX, tipY), (baseX + way.Y * Head, baseY + way.X * Head), (baseX - way.Y * Head, baseY - way.X * Head) };
        yield return new SheetPath(Outline.Through(corners, closed: true)) { Fill = tone };
    }
}
