using System.Collections.Immutable;
using Holdfast.Claims;

namespace Holdfast.Web.Live;

/// <summary>Which claims rest on what a page shows: those come first beside it.</summary>
internal static class PageClaims
{
    /// <summary>The claims of a page; empty where it shows nothing that a claim rests on.</summary>
    /// <param name="drawn">The study worked out.</param>
    /// <param name="path">Path of the page: "/findings/isotherm-iso-298", "/samples/ISO-20-1", "/runs/aas-run1".</param>
    public static ImmutableArray<Verdict> Of(Drawn drawn, string path)
    {
        var steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries).Select(Uri.UnescapeDataString).ToArray();
        return steps switch
        {
            ["findings", "section", var id] => Of(drawn, drawn.Results.FirstOrDefault(s => s.Id == id)),
            ["findings", "section", var id, var part] => Of(drawn, drawn.Results.SelectMany(s => s.Parts).FirstOrDefault(p => p.Id == $"{id}/{part}")),
            ["findings", var figure] => [.. drawn.Resting[figure]],
            ["samples", var code, ..] => [.. drawn.Dossier.Verdicts.Where(v => v.Data.Contains(code))],
            ["runs", var run] => [.. drawn.Dossier.Verdicts.Where(v => v.Claim.Words("run") == run)],
            _ => [],
        };
    }

    private static ImmutableArray<Verdict> Of(Drawn drawn, FoundSection? section) => section is null ? [] : [.. section.Figures.SelectMany(f => drawn.Resting[f])];
}
