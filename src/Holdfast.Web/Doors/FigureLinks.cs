using System.Globalization;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;

namespace Holdfast.Web.Doors;

/// <summary>Where a figure is: its page, the parts of it, its files.</summary>
internal static class FigureLinks
{
    private static readonly string[] Kinds = ["svg", "pdf", "png"];
    private static readonly string[] Widths = ["85", "174"];

    /// <summary>The page of a figure.</summary>
    /// <param name="id">Name of the figure.</param>
    /// <param name="part">The part shown; null for the whole figure.</param>
    /// <param name="mark">The mark chosen; null for none.</param>
    public static string Page(string id, FigurePart? part = null, string? mark = null)
        => $"/findings/{id}" + Query(part is null ? null : "part=" + Uri.EscapeDataString(part.ToString()), mark is null ? null : "mark=" + Uri.EscapeDataString(mark));

    /// <summary>The small picture of a figure for an overview.</summary>
    /// <param name="id">Name of the figure.</param>
    /// <param name="entry">The entry of the study that it shows, so that a browser asks for a new one after a change.</param>
    public static string Small(string id, long entry) => string.Create(CultureInfo.InvariantCulture, $"/findings/small/{id}.svg?entry={entry}");

    /// <summary>What stands below a figure: its page, and the same figure as a file in both widths of a printed column.</summary>
    /// <param name="figure">The figure.</param>
    public static Node Of(Figure figure) => Html.Element(
        "p", [("class", "files")], [Html.Element("a", [("href", Page(figure.Id)), ("aria-label", $"Closer: {figure.Title}")], "closer"), .. Files(figure)]);

    /// <summary>Links to a figure, or a part of it, as files.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="part">The part shown; null for the whole figure.</param>
    public static IEnumerable<Node> Files(Figure figure, FigurePart? part = null)
        => Kinds.SelectMany(k => Widths, (kind, width) => (Node)Html.Element(
            "a",
            [
                ("href", $"/write-up/figures/{figure.Id}-{width}mm.{kind}" + Query(part is null ? null : "part=" + Uri.EscapeDataString(part.ToString()))), ("download", ""),
                ("aria-label", $"{kind} {width} mm: {figure.Title}"),
            ],
            $"{kind} {width} mm"));

    private static string Query(params string?[] parts)
    {
        var given = parts.OfType<string>().ToArray();
        return given.Length == 0 ? "" : "?" + string.Join('&', given);
    }
}
