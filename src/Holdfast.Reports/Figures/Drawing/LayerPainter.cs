namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Draws the layers of a plot.</summary>
internal static class LayerPainter
{
    /// <summary>Cover of a bar's fill.</summary>
    public const double BarCover = 0.3;

    /// <summary>Cover of a band's fill.</summary>
    public static double Cover(Band band) => band.Pale ? 0.12 : 0.24;

    /// <summary>All layers, back to front: zones, bands, bars, lines across, scans, model lines, marks, texts.</summary>
    public static IEnumerable<SheetItem> Draw(Panel panel, PlotArea area)
        => panel.Layers.Select((layer, i) => (layer, i)).OrderBy(l => Depth(l.layer)).ThenBy(l => l.i).SelectMany(l => Draw(l.layer, panel, area));

    /// <summary>A filled mark with a hair of paper about it, so that marks on top of each other stay apart.</summary>
    public static SheetPath FilledMark(int slot, double x, double y)
        => new(Outline.Mark(slot, x, y)) { Fill = Palette.OfSlot(slot), Stroke = Tone.Paper, LineWidth = Lettering.ThinLine };

    private static int Depth(Layer layer) => layer switch
    {
        Zone => 0,
        Band { Pale: true } => 1,
        Band => 2,
        Bars => 3,
        Sticks => 4,
        ReferenceLine or SlopingLine => 5,
        Trace => 6,
        ModelCurve => 7,
        Marks => 8,
        _ => 9,
    };

    private static IEnumerable<SheetItem> Draw(Layer layer, Panel panel, PlotArea area) => layer switch
    {
        Zone zone => DrawZone(zone, area),
        Band band => DrawBand(band, area),
        Bars bars => BarPainter.Draw(bars, panel, area),
        Sticks sticks => sticks.Points.SelectMany(p => Lines(area.Line([(p.X, 0), (p.X, p.Height)]), Palette.OfSlot(sticks.Slot), Lettering.BarLine, [])),
        ReferenceLine line => DrawAcross(line, area),
        SlopingLine line => Lines(area.Line(EndLabels.Places(line, area)), Tone.Line, Lettering.BarLine, Lettering.ReferenceDash),
        Trace trace => Lines(Thinned(area.Line(trace.Points)), Palette.OfSlot(trace.Slot), Lettering.TraceLine, Lettering.DashOf(trace.Slot)),
        ModelCurve curve => DrawCurve(curve, area),
        Marks marks => [MarkPainter.Draw(marks, panel, area)],
        Annotation text => DrawText(text, area),
        _ => [],
    };

    private static IEnumerable<SheetItem> DrawZone(Zone zone, PlotArea area)
    {
        var map = zone.Along == AxisName.X ? area.X : area.Y;
        var (low, high) = (map.Place(Math.Max(zone.From, map.Range.Low)), map.Place(Math.Min(zone.To, map.Range.High)));
        if (zone.From >= map.Range.High || zone.To <= map.Range.Low || low is not { } from || high is not { } to)
            yield break;
        var box = zone.Along == AxisName.X
            ? Outline.Box(Math.Min(from, to), area.Box.Top, Math.Max(from, to), area.Box.Bottom)
            : Outline.Box(area.Box.Left, Math.Min(from, to), area.Box.Right, Math.Max(from, to));
        yield return new SheetPath(box) { Fill = Tone.Shade };
    }

    private static IEnumerable<SheetItem> DrawBand(Band band, PlotArea area)
    {
        // A logarithmic axis has no place for an edge at zero or below: the band then reaches the bottom of the plot.
        var above = band.Points.Where(p => area.X.Place(p.X) is not null && area.Y.Place(p.High) is not null).ToArray();
        var corners = above.Select(p => area.Place(p.X, p.High)!.Value)
            .Concat(above.Reverse().Select(p => area.Place(p.X, p.Low) ?? (area.X.Place(p.X)!.Value, area.Box.Bottom))).ToArray();
        var visible = area.Box.Area(corners);
        if (visible.Count > 2)
            yield return new SheetPath(Outline.Through(visible, closed: true)) { Fill = Palette.OfSlot(band.Slot), FillOpacity = Cover(band) };
    }

    private static IEnumerable<SheetItem> DrawAcross(ReferenceLine line, PlotArea area)
    {
        var map = line.At == AxisName.X ? area.X : area.Y;
        if (map.Place(line.Value) is not { } at || line.Value < map.Range.Low || line.Value > map.Range.High)
            yield break;
        var box = area.Box;
        var steps = line.At == AxisName.X ? Outline.Line(at, box.Top, at, box.Bottom) : Outline.Line(box.Left, at, box.Right, at);
        yield return new SheetPath(steps) { Stroke = Tone.Line, LineWidth = Lettering.BarLine, Dash = Lettering.ReferenceDash };
    }

    private static IEnumerable<SheetItem> DrawCurve(ModelCurve curve, PlotArea area)
    {
        var tone = Palette.OfSlot(curve.Slot);
        var before = Upto(curve.Points, curve.FittedFrom);
        var after = Upto(curve.Points.Reverse(), curve.FittedTo, rising: false).Reverse();
        var inside = curve.Points.Where(p => p.X >= curve.FittedFrom && p.X <= curve.FittedTo);
        return Lines(area.Line(before), tone, Lettering.BarLine, Lettering.BeyondDash)
            .Concat(Lines(area.Line(after), tone, Lettering.BarLine, Lettering.BeyondDash))
            .Concat(Lines(area.Line(inside), tone, Lettering.CurveLine, Lettering.DashOf(curve.Slot)));
    }

    // The points outside the fitted range and the first one inside, so that both parts of the line meet.
    private static IEnumerable<(double X, double Y)> Upto(IEnumerable<(double X, double Y)> points, double limit, bool rising = true)
    {
        foreach (var point in points)
        {
            yield return point;
            if (rising ? point.X >= limit : point.X <= limit)
                yield break;
        }
    }

    private static IEnumerable<SheetItem> DrawText(Annotation text, PlotArea area)
    {
        if (area.Visible(text.X, text.Y) is { } place)
            yield return new SheetText(place.X, place.Y - 5, SetLine.Of(text.Text, Lettering.Label)) { Anchor = TextAnchor.Middle };
    }

    private static IEnumerable<SheetItem> Lines(
        IEnumerable<IReadOnlyList<(double X, double Y)>> pieces, Tone tone, double width, IReadOnlyList<double> dash)
        => pieces.Select(p => new SheetPath(Outline.Through(p)) { Stroke = tone, LineWidth = width, Dash = dash, Round = true });

    // A scan has more readings than a sheet has columns: keep first, lowest, highest and last of each fifth of a point, in their order.
    private static IEnumerable<IReadOnlyList<(double X, double Y)>> Thinned(IEnumerable<IReadOnlyList<(double X, double Y)>> pieces)
    {
        foreach (var piece in pieces)
        {
            var kept = new List<(double X, double Y)>();
            for (var start = 0; start < piece.Count;)
            {
                var end = start;
                int low = start, high = start;
                while (end < piece.Count && Math.Floor(piece[end].X * 5) == Math.Floor(piece[start].X * 5))
                {
                    low = piece[end].Y < piece[low].Y ? end : low;
                    high = piece[end].Y > piece[high].Y ? end : high;
                    end++;
                }

                foreach (var i in new SortedSet<int> { start, low, high, end - 1 })
                    kept.Add(piece[i]);
                start = end;
            }

            yield return kept;
        }
    }
}
