using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Why an uptake is missing, said where it is missing, with the place where that is mended.</summary>
internal static class MissingText
{
    /// <summary>A list of the causes, or null when no uptake is missing.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="series">One series by its name, or null for the whole study.</param>
    public static Element? Of(Evidence evidence, string? series = null)
        => MissingResult.Of(evidence, series) is { IsEmpty: false } all ? Prose.List(all.Select(m => $"{m.Sentence} {Remedy.Places(m)}")) : null;
}
