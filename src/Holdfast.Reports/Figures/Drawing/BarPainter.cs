namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Draws bars; each series has its own hatching, so that grey prints keep them apart.</summary>
internal static class BarPainter
{
    private const double HatchStep = 4;

    /// <summary>The bars of a layer as one group.</summary>
    public static IEnumerable<SheetItem> Draw(Bars bars, Panel panel, PlotArea area)
    {
        var tone = Palette.OfSlot(bars.Slot);
        var items = new List<SheetItem>();
        foreach (var bar in bars.Items)
        {
            if (area.Place(bar.From, bar.Height) is not { } corner || area.Place(bar.To, 0) is not { } foot)
                continue;
            var box = new Clip(
                Math.Max(Math.Min(corner.X, foot.X), area.Box.Left),
                Math.Max(corner.Y, area.Box.Top),
                Math.Min(Math.Max(corner.X, foot.X), area.Box.Right),
                foot.Y);
            if (box.Left >= box.Right)
                continue;
            var parts = new List<SheetItem>
            {
                new SheetPath(Outline.Box(box.Left, box.Top, box.Right, box.Bottom))
                {
                    Fill = tone,
                    FillOpacity = LayerPainter.BarCover,
                    Stroke = tone,
                    LineWidth = Lettering.BarLine,
                },
            };
            parts.AddRange(Hatching(bars.Slot, box).Select(h => new SheetPath(h) { Stroke = tone, LineWidth = Lettering.ThinLine }));
            var middle = (box.Left + box.Right) / 2;
            if (bar.YBar is { } reach)
                parts.AddRange(MarkPainter.Upright(middle, reach, area, Tone.Line));
            items.Add(new SheetGroup(GroupKind.Mark, MarkSpeech.Of(panel, bar), parts) { Id = bar.Id, Centre = (middle, (box.Top + box.Bottom) / 2) });
        }

        yield return new SheetGroup(GroupKind.Series, bars.Label?.Spoken ?? panel.Y.Name, items);
    }

    private static IEnumerable<IReadOnlyList<PathStep>> Hatching(int slot, Clip box)
    {
        var height = box.Bottom - box.Top;
        if (slot == 0)
            yield break;
        if (slot == 3)
        {
            for (var y = box.Bottom - HatchStep; y > box.Top; y -= HatchStep)
                yield return Outline.Line(box.Left, y, box.Right, y);
            yield break;
        }

        for (var x = box.Left - height + HatchStep; x < box.Right; x += HatchStep)
        {
            var stroke = slot == 1 ? box.Line([(x, box.Bottom), (x + height, box.Top)]) : box.Line([(x, box.Top), (x + height, box.Bottom)]);
            foreach (var piece in stroke)
                yield return Outline.Through(piece);
        }
    }
}
