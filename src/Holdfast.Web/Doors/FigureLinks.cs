using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;

namespace Holdfast.Web.Doors;

/// <summary>Where the files of a figure are.</summary>
internal static class FigureLinks
{
    private static readonly string[] Kinds = ["svg", "pdf", "png"];
    private static readonly string[] Widths = ["85", "174"];

    /// <summary>Links to the same figure as a file, in both widths of a printed column.</summary>
    /// <param name="figure">The figure.</param>
    public static Node Of(Figure figure) => Html.Element(
        "p",
        [("class", "files")],
        Kinds.SelectMany(k => Widths, (kind, width) => (Node)Html.Element(
            "a", [("href", $"/write-up/figures/{figure.Id}-{width}mm.{kind}"), ("download", "")], $"{kind} {width} mm")));
}
