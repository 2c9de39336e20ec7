using Holdfast.Amounts;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Figures;

/// <summary>The table twin of a figure: every mark and bar with its numbers, for readers who do not see the picture or want its data.</summary>
public static class FigureTables
{
    /// <summary>A table for each panel that shows marks, bars or sticks, and for each residual strip.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="withScans">True to include every reading of spectra and patterns, as a data file wants.</param>
    public static IReadOnlyList<Table> Of(Figure figure, bool withScans = false)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var tables = new List<Table>();
        for (var i = 0; i < figure.Panels.Count; i++)
        {
            var panel = figure.Panels[i];
            var letter = figure.Panels.Count < 2 ? "" : "-" + (char)('a' + i);
            var name = figure.Title + (panel.Heading is { } heading ? ", " + heading.Plain : letter.Length > 0 ? ", " + (char)('a' + i) : "");
            Add(figure.Id + letter + "-table", name, panel, panel);
            if (panel.Residuals is { } strip)
                Add(figure.Id + letter + "-residuals-table", name + ": residuals", new Panel(panel.X, strip.Y, strip.Marks), panel);
        }

        return tables;

        void Add(string id, string caption, Panel panel, Panel named)
        {
            var rows = panel.Layers.OfType<SeriesLayer>().SelectMany(l => Rows(l, panel, named, withScans)).ToArray();
            if (rows.Length > 0)
                tables.Add(Trimmed(id, caption, panel, rows));
        }
    }

    // A plotted thing before columns that nothing fills are left out.
    private sealed record Plotted(string Series, string Id, Cell X, ErrorBar? XBar, Cell Y, ErrorBar? YBar, MarkState State = MarkState.Measured);

    private static IEnumerable<Plotted> Rows(SeriesLayer layer, Panel panel, Panel named, bool withScans)
    {
        var series = (layer.Label ?? SharedLabel(layer, named))?.Plain ?? "";
        return layer switch
        {
            Marks marks => marks.Points.Select(m => new Plotted(series, m.Id ?? "", X(m, panel), m.XBar, Y(m), m.YBar, m.State)),
            Bars bars => bars.Items.Select(b => Bar(series, b, panel)),
            Sticks sticks => sticks.Points.Select(p => new Plotted(series, "", new NumberCell(p.X), null, new NumberCell(p.Height), null)),
            Trace trace when withScans => trace.Points.Select(p => new Plotted(series, "", new NumberCell(p.X), null, new NumberCell(p.Y), null)),
            _ => [],
        };
    }

    // Marks without a label of their own, and residuals, take the one of their line or of their series.
    private static RichText? SharedLabel(SeriesLayer layer, Panel named)
        => named.Layers.OfType<SeriesLayer>().Where(l => l.Slot == layer.Slot && (l is ModelCurve or Marks) && l.Label is not null)
            .OrderBy(l => l is ModelCurve ? 0 : 1).FirstOrDefault()?.Label;

    private static Cell X(Mark mark, Panel panel) => mark.State switch
    {
        MarkState.BelowX => new CensoredCell(CensoredSide.Below, mark.X),
        MarkState.AboveX => new CensoredCell(CensoredSide.Above, mark.X),
        _ when panel.X.Scale == AxisScale.Named => Place(mark.X, panel),
        _ => new NumberCell(mark.X),
    };

    private static Cell Y(Mark mark) => mark.State switch
    {
        MarkState.BelowY => new CensoredCell(CensoredSide.Below, mark.Y),
        MarkState.AboveY => new CensoredCell(CensoredSide.Above, mark.Y),
        _ => new NumberCell(mark.Y),
    };

    // A bar stands at a named place, or over a class of values whose ends take the place of an error bar.
    private static Plotted Bar(string series, Bar bar, Panel panel)
    {
        var middle = (bar.From + bar.To) / 2;
        return panel.X.Scale == AxisScale.Named
            ? new(series, bar.Id ?? "", Place(middle, panel), null, new NumberCell(bar.Height), bar.YBar)
            : new(series, bar.Id ?? "", new NumberCell(middle), new ErrorBar(bar.From, bar.To), new NumberCell(bar.Height), bar.YBar);
    }

    private static TextCell Place(double value, Panel panel) => new(panel.X.Places[Math.Clamp((int)Math.Round(value) - 1, 0, panel.X.Places.Count - 1)]);

    private static Table Trimmed(string id, string caption, Panel panel, IReadOnlyList<Plotted> rows)
    {
        const string none = "–";
        var fields = new List<(bool Wanted, Column Column, Func<Plotted, Cell> Cell)>
        {
            (rows.Any(r => r.Series.Length > 0), new("series", "series"), r => r.Series),
            (rows.Any(r => r.Id.Length > 0), new("id", "vessel or standard") { NamesRows = true }, r => r.Id),
            (true, Of(panel.X, "x", ""), r => r.X),
            (rows.Any(r => r.XBar is not null), Of(panel.X, "x_low", "lower "), r => r.XBar is { } b ? new NumberCell(b.Low) : new MissingCell(none)),
            (rows.Any(r => r.XBar is not null), Of(panel.X, "x_high", "upper "), r => r.XBar is { } b ? new NumberCell(b.High) : new MissingCell(none)),
            (true, Of(panel.Y, "y", ""), r => r.Y),
            (rows.Any(r => r.YBar is not null), Of(panel.Y, "y_low", "lower "), r => r.YBar is { } b ? new NumberCell(b.Low) : new MissingCell(none)),
            (rows.Any(r => r.YBar is not null), Of(panel.Y, "y_high", "upper "), r => r.YBar is { } b ? new NumberCell(b.High) : new MissingCell(none)),
            (rows.Any(r => r.State == MarkState.LeftOut), new("remark", "remark"), r => r.State == MarkState.LeftOut ? "left out" : ""),
        };
        var wanted = fields.Where(f => f.Wanted).ToArray();
        return new(
            id,
            caption,
            wanted.Select(f => f.Column).ToArray(),
            rows.Select(r => new Row(wanted.Select(f => f.Cell(r)).ToArray()) { Struck = r.State == MarkState.Struck }).ToArray(),
            new SortedDictionary<string, string>(StringComparer.Ordinal) { [none] = "no error bar" });
    }

    private static Column Of(Axis axis, string name, string end)
        => new(name, RichText.Literal(end).With(RichText.Quantity(axis.Symbol, null))) { Unit = axis.Unit, Spoken = end + axis.Name };
}
