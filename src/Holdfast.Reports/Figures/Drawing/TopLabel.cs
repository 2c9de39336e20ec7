namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A label above the plot: of a line or a zone along the horizontal axis.</summary>
/// <param name="Line">The text.</param>
/// <param name="X">Its middle, in pt from the left of the plot.</param>
/// <param name="Row">Its row, from the bottom up.</param>
internal sealed record TopLabel(SetLine Line, double X, int Row)
{
    private const double Apart = 5;

    /// <summary>The labels of a panel, in as many rows as they need.</summary>
    public static IReadOnlyList<TopLabel> Of(Panel panel, PlotArea area)
    {
        var wanted = new List<(SetLine Line, double X)>();
        foreach (var layer in panel.Layers)
        {
            var (text, from, to) = layer switch
            {
                ReferenceLine { At: AxisName.X } line => (line.Label, line.Value, line.Value),
                Zone { Along: AxisName.X } zone => (zone.Label, Math.Max(zone.From, area.X.Range.Low), Math.Min(zone.To, area.X.Range.High)),
                _ => (null, 0, 0),
            };
            if (text is null || to < from || area.X.Place(from) is not { } start || area.X.Place(to) is not { } end)
                continue;
            var set = SetLine.Of(text, Lettering.Label);
            var middle = Math.Clamp((start + end) / 2, area.Box.Left, area.Box.Right);
            var half = Math.Min(set.Width, area.Box.Right - area.Box.Left) / 2;
            wanted.Add((set, Math.Clamp(middle, area.Box.Left + half - 8, area.Box.Right - half + 8)));
        }

        var rows = new List<double>();
        var labels = new List<TopLabel>();
        foreach (var (set, x) in wanted.OrderBy(w => w.X))
        {
            var row = rows.FindIndex(end => end + Apart <= x - set.Width / 2);
            if (row < 0)
            {
                row = rows.Count;
                rows.Add(0);
            }

            rows[row] = x + set.Width / 2;
            labels.Add(new(set, x, row));
        }

        return labels;
    }

    /// <summary>Number of rows.</summary>
    public static int Rows(IReadOnlyList<TopLabel> labels) => labels.Select(l => l.Row + 1).DefaultIfEmpty(0).Max();

    /// <summary>The labels above a plot.</summary>
    /// <param name="labels">The labels.</param>
    /// <param name="left">Left edge of the plot, in pt.</param>
    /// <param name="baseLine">Base line of the lowest row, in pt.</param>
    /// <param name="rowHeight">From one row to the next, in pt.</param>
    public static IEnumerable<SheetItem> Draw(IReadOnlyList<TopLabel> labels, double left, double baseLine, double rowHeight)
        => labels.Select(l => new SheetText(left + l.X, baseLine - l.Row * rowHeight, l.Line) { Anchor = TextAnchor.Middle });
}
