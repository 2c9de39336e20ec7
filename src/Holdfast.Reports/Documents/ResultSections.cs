using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>The results of a study, section by section.</summary>
public static class ResultSections
{
    private static readonly Lazy<ImmutableArray<IResultSection>> Found = new(() =>
        [.. Catalogue.Of<IResultSection>().OrderBy(s => s.Place).ThenBy(s => s.GetType().Name, StringComparer.Ordinal)]);

    /// <summary>Every kind of section, in the order of the report.</summary>
    internal static ImmutableArray<IResultSection> Kinds => Found.Value;

    /// <summary>One section in a room of its own; one that falls stands as its finding.</summary>
    /// <param name="kind">The kind of section.</param>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="numbering">Sets figures, tables and references.</param>
    internal static Section? InRoom(IResultSection kind, Dossier dossier, Numbering numbering)
        => StudyReport.InRoom(kind.GetType().Name.Replace("Section", "", StringComparison.Ordinal), () => kind.Of(dossier, numbering));

    /// <summary>The sections for a page of their own that leads to trails and files, without numbers for figures and tables.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="page">Where the page leads to.</param>
    /// <returns>Address in the page, heading, content; none when the study holds nothing.</returns>
    public static ImmutableArray<(string Id, string Title, ImmutableArray<Node> Content)> OnPage(Dossier dossier, PageLinks page)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        ArgumentNullException.ThrowIfNull(page);
        return [.. Kinds.Select(k => InRoom(k, dossier, new Numbering(dossier, page))).OfType<Section>().Select(s => (s.Id, s.Title, s.Content.Select(Notation.Set).ToImmutableArray()))];
    }
}

/// <summary>Where a page of results leads to.</summary>
/// <param name="Trail">Page of a number's trail by its address ("q:V-12"), or null when there is none.</param>
/// <param name="Mark">Page behind the mark of a figure by the mark's id, or null when there is none.</param>
/// <param name="Files">What stands below a figure: its page and files.</param>
public sealed record PageLinks(Func<string, string?> Trail, Func<string, string?> Mark, Func<Figure, Node> Files);
