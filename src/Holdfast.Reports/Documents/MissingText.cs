using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Why an uptake is missing, said where it is missing, with the place where that is mended.</summary>
internal static class MissingText
{
    /// <summary>A list of the causes, or null when no uptake is missing. A page leads to the place; a document names it, with the command.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="numbering">Tells a page from a document.</param>
    /// <param name="series">One series by its name, or null for the whole study.</param>
    public static Element? Of(Evidence evidence, Numbering numbering, string? series = null)
        => MissingResult.Of(evidence, series) is { IsEmpty: false } all
            ? Html.Element("ul", all.Select(m => (Node)Html.Element("li", m.Sentence + " ", numbering.IsPage ? Link(Remedy.Page(m)) : Remedy.Places(m))))
            : null;

    private static Element Link((string Words, string Address) place) => Html.Element("a", [("href", place.Address)], place.Words);
}
