using Holdfast.Amounts;

namespace Holdfast.Reports.Figures.Drawing;

/// <summary>The plan of one panel: first how much room its labels take, then, once its column's width is settled, where everything goes.</summary>
internal sealed class PanelPlan
{
    private const double StripGap = 7;
    private const double HeadingLine = 12;
    private const double TopLine = Lettering.Label * Lettering.Leading + 0.5;

    private readonly Panel panel;
    private readonly string letter;
    private readonly DecimalMark mark;
    private readonly AxisRange xs;
    private readonly AxisRange ys;
    private readonly AxisRange strip;
    private readonly AxisTicks yTicks;
    private readonly AxisTicks? stripTicks;
    private readonly IReadOnlyList<SetLine> yTitle;
    private readonly IReadOnlyList<SetLine> stripTitle;
    private readonly double plotHeight;
    private readonly double stripHeight;
    private readonly double textWidth;

    private AxisTicks xTicks;
    private IReadOnlyList<SetLine>[] xLabels = [];
    private IReadOnlyList<SetLine> xTitle = [];
    private IReadOnlyList<TopLabel> topLabels = [];

    public PanelPlan(Panel panel, string letter, double width, double plotHeight, DecimalMark mark)
    {
        this.panel = panel;
        this.letter = letter;
        this.mark = mark;
        this.plotHeight = plotHeight;
        CheckSeries(panel);
        (xs, ys) = (AxisRange.OfX(panel), AxisRange.OfY(panel));
        yTicks = AxisTicks.Of(panel.Y, ys, Math.Clamp((int)(plotHeight / 17), 5, 9), mark);
        yTitle = SetLine.Wrapped(panel.Y.Title, Lettering.Title, plotHeight + 6);
        stripTitle = [];
        if (panel.Residuals is { } residuals)
        {
            stripHeight = Math.Max(38, 0.27 * plotHeight);
            strip = AxisRange.OfResiduals(residuals);
            stripTicks = EndsOnly(AxisTicks.Of(residuals.Y, strip, 3, mark));
            stripTitle = SetLine.Wrapped(residuals.Y.Title, Lettering.Title, stripHeight + 4);
        }

        var ticks = yTicks.Major.Concat(stripTicks?.Major ?? []);
        var tickWidth = ticks.Select(t => SetLine.Of(t.Label, Lettering.Tick).Width).DefaultIfEmpty(0).Max();
        Left = TitleLines * AxisPainter.TitleLine + AxisPainter.TitleGap + tickWidth + AxisPainter.TickGap + Lettering.MajorTick;
        textWidth = EndLabel.TextWidth(width);
        xTicks = AxisTicks.Of(panel.X, xs, 8, mark);
        var overhang = panel.X.Scale == AxisScale.Named
            ? 2
            : 1 + xTicks.Major.Select(t => SetLine.Of(t.Label, Lettering.Tick).Width / 2).DefaultIfEmpty(0).Max();
        var labels = LabelsIn(new Clip(0, 0, 100, plotHeight));
        Right = Math.Max(overhang, EndLabel.Room(labels));
        LabelHeight = labels.Sum(l => l.Height);
    }

    /// <summary>Room left of the plot, in pt.</summary>
    public double Left { get; }

    /// <summary>Room right of the plot, in pt.</summary>
    public double Right { get; }

    /// <summary>Height that the labels right of the plot take together, in pt; the plot must not be lower.</summary>
    public double LabelHeight { get; }

    /// <summary>Room above the plot, in pt; known after <see cref="Fit"/>.</summary>
    public double Top { get; private set; }

    /// <summary>Room below the plot, strip included, in pt; known after <see cref="Fit"/>.</summary>
    public double Bottom { get; private set; }

    /// <summary>Settles the horizontal axis for a plot of a given width in pt.</summary>
    public void Fit(double plotWidth)
    {
        var most = Math.Clamp((int)(plotWidth / 25), 4, 9);
        do
        {
            xTicks = AxisTicks.Of(panel.X, xs, most, mark);
            xLabels = xTicks.Major.Select(t => Lines(t.Label, plotWidth)).ToArray();
        }
        while (--most >= 2 && panel.X.Scale != AxisScale.Named && Crowded(plotWidth));

        xTitle = SetLine.Wrapped(panel.X.Title, Lettering.Title, plotWidth + 20);
        topLabels = TopLabel.Of(panel, PlotArea.Of(panel.X, xs, panel.Y, ys, new Clip(0, 0, plotWidth, plotHeight)));
        Top = 6 + (letter.Length > 0 || panel.Heading is not null ? HeadingLine : 0) + TopLabel.Rows(topLabels) * TopLine;
        Bottom = (panel.Residuals is null ? 0 : StripGap + stripHeight)
            + AxisPainter.RoomBelow(xLabels.Select(l => l.Count).DefaultIfEmpty(1).Max(), xTitle.Count);
    }

    /// <summary>Where the panel plots.</summary>
    /// <param name="plotLeft">Left edge of its plot, in pt.</param>
    /// <param name="plotRight">Right edge of its plot, in pt.</param>
    /// <param name="plotTop">Top edge of its plot, in pt.</param>
    public PlotArea Area(double plotLeft, double plotRight, double plotTop)
        => PlotArea.Of(panel.X, xs, panel.Y, ys, new Clip(plotLeft, plotTop, plotRight, plotTop + plotHeight));

    /// <summary>Draws the panel.</summary>
    /// <param name="left">Left edge of its column, in pt.</param>
    /// <param name="top">Top edge of its row, in pt.</param>
    /// <param name="area">Where it plots.</param>
    public IEnumerable<SheetItem> Draw(double left, double top, PlotArea area)
    {
        var box = area.Box;
        var (plotLeft, plotRight, plotTop) = (box.Left, box.Right, box.Top);
        var items = new List<SheetItem>();
        if (letter.Length > 0)
            items.Add(new SheetText(left, top + 9, SetLine.Of(letter, Lettering.Letter, bold: true)));
        if (panel.Heading is { } heading)
            items.Add(new SheetText(plotLeft, top + 9, SetLine.Of(heading, Lettering.Title)));

        var back = LayerPainter.Draw(panel, area).ToArray();
        items.AddRange(back.TakeWhile(i => i is SheetPath { Fill: Tone.Shade }));
        items.Add(AxisPainter.Lines(box));
        items.AddRange(back.SkipWhile(i => i is SheetPath { Fill: Tone.Shade }));
        items.AddRange(AxisPainter.Vertical(yTicks, area, yTitle, TitleBase(plotLeft)));
        items.AddRange(TopLabel.Draw(topLabels, plotLeft, plotTop - 4, TopLine));
        items.AddRange(EndLabel.Draw(LabelsIn(box), box));
        if (panel.Residuals is { } residuals)
        {
            items.AddRange(AxisPainter.Horizontal(xTicks, area, null, []));
            items.AddRange(DrawStrip(residuals, plotLeft, plotRight, box.Bottom + StripGap));
        }
        else
        {
            items.AddRange(AxisPainter.Horizontal(xTicks, area, xLabels, xTitle));
        }

        return items;
    }

    private List<SheetItem> DrawStrip(Residuals residuals, double left, double right, double top)
    {
        var box = new Clip(left, top, right, top + stripHeight);
        var area = PlotArea.Of(panel.X, xs, residuals.Y, strip, box);
        var below = new Panel(panel.X, residuals.Y, residuals.Marks);
        var zero = area.Y.Place(0)!.Value;
        var items = new List<SheetItem>
        {
            AxisPainter.Lines(box),
            new SheetPath(Outline.Line(left, zero, right, zero)) { Stroke = Tone.Grey },
        };
        items.AddRange(LayerPainter.Draw(below, area));
        items.AddRange(AxisPainter.Vertical(stripTicks!, area, stripTitle, TitleBase(left)));
        items.AddRange(AxisPainter.Horizontal(xTicks, area, xLabels, xTitle));
        return items;
    }

    private int TitleLines => Math.Max(yTitle.Count, stripTitle.Count);

    private double TitleBase(double plotLeft) => plotLeft - Left + TitleLines * AxisPainter.TitleLine - 0.25 * Lettering.Title;

    private IReadOnlyList<EndLabel> LabelsIn(Clip box) => EndLabels.Of(panel, PlotArea.Of(panel.X, xs, panel.Y, ys, box), textWidth);

    private IReadOnlyList<SetLine> Lines(RichText label, double plotWidth)
        => panel.X.Scale == AxisScale.Named
            ? SetLine.Wrapped(label, Lettering.Tick, plotWidth / panel.X.Places.Count - 4)
            : [SetLine.Of(label, Lettering.Tick)];

    private bool Crowded(double plotWidth)
    {
        var map = AxisMap.Of(panel.X, xs, 0, plotWidth);
        for (var i = 1; i < xLabels.Length; i++)
        {
            var apart = Math.Abs(map.Place(xTicks.Major[i].Value)!.Value - map.Place(xTicks.Major[i - 1].Value)!.Value);
            if (apart < (xLabels[i][0].Width + xLabels[i - 1][0].Width) / 2 + 6)
                return true;
        }

        return false;
    }

    // A strip is low: zero and the outermost ticks are enough.
    private static AxisTicks EndsOnly(AxisTicks ticks)
    {
        var kept = ticks.Major.Where(t => t.Value == 0 || t == ticks.Major[0] || t == ticks.Major[^1]).ToArray();
        return new(kept, ticks.Major.Except(kept).Select(t => t.Value).ToArray());
    }

    private static void CheckSeries(Panel panel)
    {
        foreach (var mark in panel.AllMarks)
        {
            foreach (var bar in new[] { mark.XBar, mark.YBar })
            {
                if (bar is { } b && !(b.Low <= b.High))
                    throw new ArgumentException($"The error bar of mark '{mark.Id}' has its lower end above its upper end.", nameof(panel));
            }
        }
    }
}
