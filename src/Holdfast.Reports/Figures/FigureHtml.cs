using Holdfast.Reports.Markup;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Figures;

/// <summary>A figure in a page: the picture, its caption with the notes, and its numbers behind "Show as table".</summary>
public static class FigureHtml
{
    /// <summary>The element.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="format">Its size.</param>
    /// <param name="heading">Put before the caption: "Figure 3."; empty for none.</param>
    /// <param name="options">How the picture is written; null for a page without links.</param>
    /// <param name="notes">What stands behind the caption; null for the figure's own notes.</param>
    public static Element Of(Figure figure, FigureFormat format, string heading = "", SvgOptions? options = null, IEnumerable<Node>? notes = null)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(format);
        var use = options ?? SvgOptions.Screen();
        var caption = figure.Caption.Runs.Count > 0 ? figure.Caption : (RichText)(figure.Title + ".");
        var text = new List<Node>();
        if (heading.Length > 0)
            text.AddRange([Html.Element("b", heading), " "]);
        text.AddRange(RichTextNodes.Of(caption));
        text.AddRange(notes ?? figure.AllNotes.SelectMany(n => (Node[])[" ", .. RichTextNodes.Of(n)]));

        var parts = new List<Node> { SvgFigure.Tree(figure, format, use), Html.Element("figcaption", text) };
        var tables = FigureTables.Of(figure);
        if (tables.Count > 0)
        {
            var twins = tables.Select(t => TableHtml.Of(t, format.DecimalMark, use.IdPrefix));
            parts.Add(Html.Element("details", [Html.Element("summary", "Show as table"), .. twins]));
        }

        return Html.Element("figure", [("class", "figure")], parts);
    }
}
