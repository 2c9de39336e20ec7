using Holdfast.Reports.Figures.Drawing;

namespace Holdfast.Reports.Figures;

/// <summary>Lays a figure out, once, for every output: screen and file show the same picture because both draw the same sheet.</summary>
public static class FigureLayout
{
    private const double Edge = 1.5;
    private const double ColumnGap = 10;
    private const double RowGap = 8;

    /// <summary>The sheet of a figure.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its final size.</param>
    /// <exception cref="ArgumentException">A value is not a number, an error bar is upside down, bars do not stand on zero, or there is no panel.</exception>
    public static Sheet Of(Figure figure, FigureFormat format)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(format);
        if (figure.Panels.Count == 0)
            throw new ArgumentException($"Figure '{figure.Id}' has no panel.", nameof(figure));

        var width = format.WidthMm * Sheet.PointsPerMm;
        var columns = Math.Min(format.Columns ?? Columns(figure, format), figure.Panels.Count);
        var cell = (width - 2 * Edge - (columns - 1) * ColumnGap) / columns;
        var plotHeight = format.PlotHeightMm * Sheet.PointsPerMm ?? Math.Clamp(0.58 * cell, 100, 210);
        var plans = Plan(plotHeight);
        if (plans.Max(p => p.LabelHeight) > plotHeight)
        {
            plotHeight = plans.Max(p => p.LabelHeight);
            plans = Plan(plotHeight);
        }

        var rows = plans.Chunk(columns).ToArray();
        var lefts = Enumerable.Range(0, columns).Select(c => rows.Where(r => c < r.Length).Max(r => r[c].Left)).ToArray();
        var rights = Enumerable.Range(0, columns).Select(c => rows.Where(r => c < r.Length).Max(r => r[c].Right)).ToArray();

        var items = new List<SheetItem>();
        var plots = new List<PlotArea>();
        var top = Edge;
        foreach (var row in rows)
        {
            for (var c = 0; c < row.Length; c++)
                row[c].Fit(cell - lefts[c] - rights[c]);
            var plotTop = top + row.Max(p => p.Top);
            for (var c = 0; c < row.Length; c++)
            {
                var left = Edge + c * (cell + ColumnGap);
                var area = row[c].Area(left + lefts[c], left + cell - rights[c], plotTop);
                plots.Add(area);
                items.AddRange(row[c].Draw(left, top, area));
            }

            top = plotTop + plotHeight + row.Max(p => p.Bottom) + RowGap;
        }

        top -= RowGap;
        if (format.WithNotes)
            top = AddNotes(figure, items, width, top + RowGap);
        var height = top + Edge;
        items.Insert(0, new SheetPath(Outline.Box(0, 0, width, height)) { Fill = Tone.Paper });
        return new(format.WidthMm, height, items) { Plots = plots };

        PanelPlan[] Plan(double plot) => figure.Panels.Select((p, i) => new PanelPlan(p, Letter(figure, i), cell, plot, format.DecimalMark)).ToArray();
    }

    /// <summary>What the marks of one vessel or reading say, in words, as a figure shows them; none when it shows none.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its size.</param>
    /// <param name="id">Id of the marks.</param>
    public static IReadOnlyList<string> MarksOf(Figure figure, FigureFormat format, string id)
        => [.. Groups(Of(figure, format).Items).Where(g => g.Kind == GroupKind.Mark && g.Id == id).Select(g => g.Spoken).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<SheetGroup> Groups(IEnumerable<SheetItem> items)
        => items.OfType<SheetGroup>().SelectMany(g => Groups(g.Items).Prepend(g));

    private static double AddNotes(Figure figure, List<SheetItem> items, double width, double top)
    {
        const double line = Lettering.Note * Lettering.Leading;
        foreach (var set in figure.AllNotes.SelectMany(n => SetLine.Wrapped(n, Lettering.Note, width - 2 * Edge)))
        {
            items.Add(new SheetText(Edge, top + 0.8 * Lettering.Note, set));
            top += line;
        }

        return top;
    }

    // Three narrow panels fit a page side by side when no labels stand beside their plots.
    private static int Columns(Figure figure, FigureFormat format)
        => format.WidthMm < 120 ? 1 : figure.Panels.Count > 2 && !figure.Panels.Any(EndLabels.Stand) ? 3 : 2;

    private static string Letter(Figure figure, int index) => figure.Panels.Count < 2 ? "" : ((char)('a' + index)).ToString();
}
