using Holdfast.Claims;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>
/// One section of results, in one file: what an area of work found, as prose, figures and tables. Kinds are found by <see cref="Studies.Catalogue"/> and need a
/// constructor without parameters; the report prints them in the order of their places, and the bench shows the same text under Findings.
/// </summary>
internal interface IResultSection
{
    /// <summary>Place among the results: lower comes first.</summary>
    int Place { get; }

    /// <summary>The section; null when the study holds nothing for it.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="numbering">Sets figures, tables and references to trails.</param>
    Section? Of(Dossier dossier, Numbering numbering);

    /// <summary>What the chapter shows of it beside its figures and claims: one compact table, its equations; nothing where those say it all.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="numbering">Sets tables.</param>
    IEnumerable<Node> InChapter(Dossier dossier, Numbering numbering) => [];
}
