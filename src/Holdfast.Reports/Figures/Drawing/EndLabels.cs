namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Which labels stand right of a plot: those of series, bands and of lines and zones across.</summary>
internal static class EndLabels
{
    /// <summary>The labels of a panel.</summary>
    public static IReadOnlyList<EndLabel> Of(Panel panel, PlotArea area, double textWidth)
    {
        var labels = new List<EndLabel>();
        foreach (var layer in panel.Layers)
        {
            var (text, sample) = layer switch
            {
                SeriesLayer { Label: { } label } series => (label, OfSeries(series, panel.Layers)),
                ReferenceLine { At: AxisName.Y } line => (line.Label, Across),
                SlopingLine line => (line.Label, Across),
                Zone { Along: AxisName.Y } zone => (zone.Label, new(Tone.Shade, Swatch: 1)),
                _ => (null, Across),
            };
            if (text is null || End(layer, area) is not { } end)
                continue;
            labels.Add(new(SetLine.Wrapped(text, Lettering.Label, textWidth), end.Y, sample, end.X >= area.Box.Right - 0.5));
        }

        return labels;
    }

    /// <summary>True when labels stand right of the plot of a panel.</summary>
    public static bool Stand(Panel panel)
        => panel.Layers.Any(l => l is SeriesLayer { Label: not null } or ReferenceLine { At: AxisName.Y } or SlopingLine or Zone { Along: AxisName.Y });

    private static Sample Across { get; } = new(Tone.Line, Line: Lettering.ReferenceDash, LineWidth: Lettering.BarLine);

    // A label speaks for its own layer, and for the unlabelled marks or line of the same series.
    private static Sample OfSeries(SeriesLayer layer, IReadOnlyList<Layer> all)
    {
        var tone = Palette.OfSlot(layer.Slot);
        var silent = all.OfType<SeriesLayer>().Where(l => l.Slot == layer.Slot && l.Label is null).ToArray();
        return layer switch
        {
            Marks => new(tone, layer.Slot, silent.Any(l => l is ModelCurve) ? Lettering.DashOf(layer.Slot) : null, Mark: true),
            ModelCurve => new(tone, layer.Slot, Lettering.DashOf(layer.Slot), Mark: silent.Any(l => l is Marks)),
            Band band => new(tone, layer.Slot, Swatch: LayerPainter.Cover(band)),
            Bars => new(tone, layer.Slot, Swatch: LayerPainter.BarCover),
            Sticks => new(tone, layer.Slot, [], Lettering.BarLine),
            _ => new(tone, layer.Slot, Lettering.DashOf(layer.Slot), Lettering.TraceLine),
        };
    }

    // The rightmost visible place of a layer; null when nothing of it is visible.
    private static (double X, double Y)? End(Layer layer, PlotArea area) => layer switch
    {
        Marks m => Rightmost(m.Points.Where(p => p.State != MarkState.Struck).Select(p => area.Visible(p.X, p.Y))),
        ModelCurve c => Rightmost(area.Line(c.Points).SelectMany(p => p).Select(Some)),
        Trace t => Rightmost(area.Line(t.Points).SelectMany(p => p).Select(Some)),
        Band b => Rightmost(new[] { b.Points.Select(p => (p.X, p.High)), b.Points.Select(p => (p.X, p.Low)) }
            .SelectMany(area.Line).SelectMany(p => p).Select(Some)),
        Bars b => b.Items.Select(i => area.Place(i.To, i.Height)).OrderBy(p => p?.Y).FirstOrDefault(),
        Sticks => (area.Box.Left, area.Box.Bottom - 4),
        SlopingLine s => Rightmost(area.Line(Places(s, area)).SelectMany(p => p).Select(Some)),
        ReferenceLine { At: AxisName.Y } r => area.Y.Place(r.Value) is { } y && area.Box.Holds(area.Box.Right, y) ? (area.Box.Right, y) : null,
        Zone { Along: AxisName.Y } z => area.Y.Place((z.From + z.To) / 2) is { } y && area.Box.Holds(area.Box.Right, y) ? (area.Box.Right, y) : null,
        _ => null,
    };

    /// <summary>Places along a sloping line, dense enough for a logarithmic axis.</summary>
    public static IEnumerable<(double X, double Y)> Places(SlopingLine line, PlotArea area)
        => Enumerable.Range(0, 101)
            .Select(i => area.X.Range.Low + (area.X.Range.High - area.X.Range.Low) * i / 100)
            .Select(x => (x, line.Intercept + line.Slope * x));

    private static (double X, double Y)? Some((double X, double Y) place) => place;

    // Several marks at the last place: their mean height.
    private static (double X, double Y)? Rightmost(IEnumerable<(double X, double Y)?> places)
    {
        var seen = places.OfType<(double X, double Y)>().ToArray();
        if (seen.Length == 0)
            return null;
        var last = seen.Max(p => p.X);
        return (last, seen.Where(p => p.X >= last - 0.01).Average(p => p.Y));
    }
}
